"""The workshop's acts, typed at a terminal."""
