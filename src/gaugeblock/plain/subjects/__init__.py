"""What a line is about that rules alone have, wing by wing."""
