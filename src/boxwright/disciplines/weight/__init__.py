"""Weight: what the trailer weighs, where its weight sits, and what coupling, axles and wheels carry."""

from boxwright.disciplines.weight.findings import findings
from boxwright.disciplines.weight.parts import Facet, Section
from boxwright.disciplines.weight.sheets import sheets
from boxwright.disciplines.weight.solve import Offers, Result, offers, solve
from boxwright.model.chapter import Chapter

CHAPTER = Chapter(word="weight", title="Weight and balance", judges=True)

__all__ = ["CHAPTER", "Facet", "Offers", "Result", "Section", "findings", "offers", "sheets", "solve"]
