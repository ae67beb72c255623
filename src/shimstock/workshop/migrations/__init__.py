"""The steps that took the workshop's tables from their first shape to today's."""
