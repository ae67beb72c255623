"""A workshop book that computes, for people who bring worn farm tractors back to working order."""

__version__ = "0.1.0"
