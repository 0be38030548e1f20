"""A run of exhaust: how it grows, what each hanger carries, what its fixed point takes, what gap is left."""
