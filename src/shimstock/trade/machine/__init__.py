"""The book of a kind of machine, and the one real machine made to it."""
