"""What every sheet is made of; writers turn it into files and add nothing."""

from boxwright.drawing.mark import Arc, Dimension, Leader, Line, Mark, Shape, Symbol, Text
from boxwright.drawing.sheet import TO_TICK, Grid, Sheet, View

__all__ = ["TO_TICK", "Arc", "Dimension", "Grid", "Leader", "Line", "Mark", "Shape", "Sheet", "Symbol", "Text", "View"]
