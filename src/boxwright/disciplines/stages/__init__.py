"""Order of work, steps, shakedown, cost. Not built yet."""

from boxwright.disciplines.stages.findings import findings
from boxwright.disciplines.stages.parts import Facet, Section
from boxwright.disciplines.stages.sheets import sheets
from boxwright.disciplines.stages.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="stages", title="Order of work, steps, shakedown, cost", judges=False)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
