"""From what is seen, heard and measured to what is wrong, and the next check worth its minutes."""
