"""Formulas of power: none yet."""
