"""Formulas of layout: none yet."""
