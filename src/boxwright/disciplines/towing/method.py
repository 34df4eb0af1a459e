"""Formulas of towing: none yet."""
