"""Formulas of layout: how far boxes are in each other or apart, and when one that turns on a hinge meets another."""

from boxwright.disciplines.layout.method.boxes import distance, overlap, slab_height
from boxwright.disciplines.layout.method.turning import first_meeting, turned_apart

__all__ = ["distance", "first_meeting", "overlap", "slab_height", "turned_apart"]
