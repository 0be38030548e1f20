def physics_faults(tables): return []
