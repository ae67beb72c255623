"""Joins the house: settings, the shed's folder, and the checks at start-up."""
