"""Rig text to `Rig` and back: the only place that reads and writes rig files."""
