"""Boxwright: one plain text file for a whole camper trailer, and the computing for all of it together."""

__version__ = "0.1.0"
