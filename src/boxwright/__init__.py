"""Boxwright: one plain text file for a whole camper trailer, and the computing for all of it together."""

__version__ = "0.1.0"

HOW_TO_ADD = """type in Boxwright's own folder: pipx install --force ".[book,solid,year]\""""
"""How an extra that is not installed is added; it comes from no index, so its name alone would find another's."""
