"""How warm a thing gets beside a hot one, and what it stands: a line past an exhaust, or an exhaust past a line."""
