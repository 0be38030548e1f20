"""The shop book: the same program in a browser, where a page asks and Python answers."""
