"""The fuzz profile: commands, jobs, faults, kills, damaged tables and packets, with the counts printed."""
