"""Ventilation, moisture, condensation."""

from boxwright.disciplines.air.findings import findings
from boxwright.disciplines.air.parts import Facet, Section
from boxwright.disciplines.air.sheets import sheets
from boxwright.disciplines.air.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="air", title="Ventilation, moisture, condensation", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
