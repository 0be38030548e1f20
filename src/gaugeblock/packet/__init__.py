"""The packet of one build: Sheets -> packet.md, packet.html, packet.json. Same job and data, same bytes."""
