"""Box, studs, walls, openings: what they weigh and where the inside ends."""

from boxwright.disciplines.frame.findings import findings
from boxwright.disciplines.frame.parts import Facet, Section
from boxwright.disciplines.frame.sheets import sheets
from boxwright.disciplines.frame.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="frame", title="Box, studs, walls, openings", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
