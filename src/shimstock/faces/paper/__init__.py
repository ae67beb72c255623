"""The workshop on paper: the record of a machine as PDF."""
