"""Items of the exhaust -> Items: their sheets and cards."""
