"""Sparks: dwell and gap, coils, magnetos, and their timing."""
