"""The two ends of a change-over: the load state of the road and that of the night, and how things lie then."""

from __future__ import annotations

from boxwright.disciplines.layout.bodies import Pose
from boxwright.disciplines.layout.ways import is_room
from boxwright.finding import Use
from boxwright.model.load import LoadState
from boxwright.records import dataclass
from boxwright.rig.rig import Rig


@dataclass(frozen=True, slots=True)
class End:
    """One end of a change-over: the word that was asked for, its load state, and how things lie then."""

    word: str
    load: LoadState
    use: Use

    @property
    def pose(self) -> Pose:
        """Return how things lie at this end."""
        return "night" if self.use == "sleep" else "travel"


def ends_of(rig: Rig, load: str = "") -> tuple[End | None, End | None]:
    """Return the road and the night: each in the load state named where it is judged for that.

    Left out: the first night; of the states for the road that which has all the night needs and the least besides.
    """
    cargo = [item.name for item in rig.parts if item.words.kind == "cargo"]
    nights = [one for one in rig.loads if "sleep" in one.uses]
    night = next((one for one in nights if one.name == load), next(iter(nights), None))
    roads = [one for one in rig.loads if "tow" in one.uses]
    wanted = {name for name in cargo if night is not None and night.carries(name)}

    def apart(one: LoadState) -> tuple[int, int]:
        carried = {name for name in cargo if one.carries(name)}
        return len(wanted - carried), len(carried - wanted)

    road = next((one for one in roads if one.name == load), min(roads, key=apart, default=None))
    return (
        End("travel", road, "tow") if road is not None else None,
        End("night", night, "sleep") if night is not None else None,
    )


def has_room(rig: Rig) -> bool:
    """Return whether all faces of the room are known, so that anything can be carried through it."""
    return rig.layout.room is not None and is_room(rig.layout.room)
