"""Limits of size and what a hole and a shaft make together."""
