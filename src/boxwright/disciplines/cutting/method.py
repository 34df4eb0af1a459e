"""Formulas of cutting: none yet."""
