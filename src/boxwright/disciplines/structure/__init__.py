"""Roof load, bed hinge, tie-downs. Not built yet."""

from boxwright.disciplines.structure.findings import findings
from boxwright.disciplines.structure.parts import Facet, Section
from boxwright.disciplines.structure.sheets import sheets
from boxwright.disciplines.structure.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="structure", title="Roof load, bed hinge, tie-downs", judges=False)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
