"""Ways out, alarms, extinguisher, stored fuel."""

from boxwright.disciplines.safety.findings import findings
from boxwright.disciplines.safety.parts import Facet, Section
from boxwright.disciplines.safety.sheets import sheets
from boxwright.disciplines.safety.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="safety", title="Ways out, alarms, extinguisher, stored fuel", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
