"""Formulas of heat: none yet."""
