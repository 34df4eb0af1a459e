"""Formulas of air: none yet."""
