"""The whole workshop as one file that may travel, and back from it."""
