"""Heat, insulation, heater."""

from boxwright.disciplines.heat.findings import findings
from boxwright.disciplines.heat.parts import Facet, Section
from boxwright.disciplines.heat.sheets import sheets
from boxwright.disciplines.heat.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="heat", title="Heat, insulation, heater", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
