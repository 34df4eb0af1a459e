"""Ratings, tyres, brakes, coupling: may this trailer be towed, behind what, and where."""

from boxwright.disciplines.towing.findings import findings
from boxwright.disciplines.towing.parts import Facet, Section
from boxwright.disciplines.towing.sheets import sheets
from boxwright.disciplines.towing.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="towing", title="Ratings, tyres, brakes, coupling", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
