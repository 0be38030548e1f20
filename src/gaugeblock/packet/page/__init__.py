"""The page: packet.html of what is shown of a packet. Every value in a slot is escaped; none of it is a script."""
