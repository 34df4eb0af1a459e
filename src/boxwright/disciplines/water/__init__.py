"""Tanks, pipes, drains: what is in the tanks weighs something."""

from boxwright.disciplines.water.findings import findings
from boxwright.disciplines.water.parts import Facet, Section
from boxwright.disciplines.water.sheets import sheets
from boxwright.disciplines.water.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="water", title="Tanks, pipes, drains", judges=False)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
