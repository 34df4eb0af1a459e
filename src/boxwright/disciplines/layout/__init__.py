"""Where things are: clearances, swings, folds, reach, the way out."""

from boxwright.disciplines.layout.findings import findings
from boxwright.disciplines.layout.parts import Facet, Section
from boxwright.disciplines.layout.result import Result
from boxwright.disciplines.layout.sheets import sheets
from boxwright.disciplines.layout.solve import Offers, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="layout", title="Where things are: clearances, swings, folds, reach, the way out", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
