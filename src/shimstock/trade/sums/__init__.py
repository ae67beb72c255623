"""The sums of the trade, a family a folder, a quantity a file."""
