"""Formulas of structure: none yet."""
