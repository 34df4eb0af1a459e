"""12 V, mains, solar, wire and fuse. Not built yet."""

from boxwright.disciplines.power.findings import findings
from boxwright.disciplines.power.parts import Facet, Section
from boxwright.disciplines.power.sheets import sheets
from boxwright.disciplines.power.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="power", title="12 V, mains, solar, wire and fuse", judges=False)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
