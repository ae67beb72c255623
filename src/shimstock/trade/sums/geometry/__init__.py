"""Circles through measured points and how round a bore or shaft is."""
