"""Readings to verdicts and remedies: what was measured, what it means, what to do about it."""
