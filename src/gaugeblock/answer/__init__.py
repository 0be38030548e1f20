"""What every answer shares: the sheet, its checks and cautions, how it is printed, what a domain brings."""
