"""What the trade knows: pure functions of plain values, with no database and no network."""
