"""Formulas of layout: how far boxes are in each other or apart, and when one that turns on a hinge meets another."""

from boxwright.disciplines.layout.method.boxes import distance, overlap, slab_height
from boxwright.disciplines.layout.method.turning import first_meeting, left_beside_leaf, turned_apart

__all__ = ["distance", "first_meeting", "left_beside_leaf", "overlap", "slab_height", "turned_apart"]
