"""Formulas of stages: none yet."""
