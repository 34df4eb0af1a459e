"""Sheets and sticks, cut list. Not built yet."""

from boxwright.disciplines.cutting.findings import findings
from boxwright.disciplines.cutting.parts import Facet, Section
from boxwright.disciplines.cutting.sheets import sheets
from boxwright.disciplines.cutting.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="cutting", title="Sheets and sticks, cut list", judges=False)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
