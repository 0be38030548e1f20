"""The audit: what is published, what was read, what is habit, what disagrees. Over refdata, or over one packet."""
