"""Formulas of safety: none yet."""
