"""What hides what, many rooms as one, what was decided, and the order on paper."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from heatledger.job.model import Decision
from heatledger.ledger.findings import Decided, Finding, Weight
from heatledger.steps.review.house import House
from heatledger.steps.review.kinds import KINDS

MOST_ROOMS = 3
"""One kind of finding in more rooms than this is said once, with a list."""

PLACES = (
    "hall", "stair", "story", "stories", "storey", "floor", "level", "landing", "basement", "cellar", "attic",
    "corridor", "sleeping", "bedroom", "upstairs", "downstairs", "room",
)  # fmt: skip
"""Words for places in a house, one of which stands in an answer that says where."""

OF_THE_LOSS = frozenset(
    (
        "loss-coefficient-high",
        "loss-coefficient-low",
        "room-out-of-line",
        "air-and-glass-not-leading",
        "air-change-guessed",
        "mostly-guesses",
        "one-entry-swings",
        "expectation-missed",
        "future-work-changes-load",
        "neighbor-may-shut-down",
        "room-warmed-by-others",
        "glass-frosts",
        "surface-cold-inside",
        "space-freezes",
        "floor-over-cold-space",
        "ground-out-of-line",
    )
)
"""Findings on what comes out, which a wrong entry makes by itself."""

OF_THE_EMITTERS = frozenset(
    (
        "emitter-without-load",
        "room-left-cold",
        "room-driven-hot",
        "supply-beyond-reach",
        "one-room-sets-supply",
        "baseboard-past-free-wall",
    )
)
"""Findings on what rooms get of their emitters, which follow a wrong loss."""

FOLDS: dict[str, frozenset[str]] = {
    "degrees-crossed": OF_THE_LOSS | OF_THE_EMITTERS,
    "feet-meters-crossed": OF_THE_LOSS
    | OF_THE_EMITTERS
    | {"tall-room-layers", "rim-joist-left-out", "wall-lower-than-ceiling", "wall-height-out-of-line"},
    "indoor-out-of-range": frozenset(
        ("indoor-below-minimum", "room-out-of-line", "room-warmed-by-others", "partition-not-given")
    ),
    "blower-door-figure-as-natural": frozenset(
        (
            "air-and-glass-not-leading",
            "loss-coefficient-high",
            "air-change-guessed",
            "one-entry-swings",
            "expectation-missed",
            "mostly-guesses",
        )
    ),
    "air-change-guessed": frozenset(("air-and-glass-not-leading", "loss-coefficient-high")),
    "label-r-as-whole-wall": frozenset(("room-out-of-line", "bills-disagree")),
    "old-wall-new-r": frozenset(("room-out-of-line", "one-entry-swings", "bills-disagree")),
    "space-closed-in": frozenset(("room-out-of-line", "room-warmed-by-others", "entry-not-used")),
    "no-rooms-yet": frozenset(("entry-not-used",)),
    "room-without-outside": frozenset(("room-warmed-by-others", "room-out-of-line", "no-window-in-room")),
    "mostly-guesses": frozenset(("one-entry-swings",)),
    "wall-longer-than-room": frozenset(("room-out-of-line", "room-walled-all-around", "edge-past-walls")),
    "ceiling-larger-than-room": frozenset(("room-out-of-line",)),
    "room-very-long": frozenset(("room-out-of-line",)),
    "wall-height-out-of-line": frozenset(("room-out-of-line", "loss-coefficient-high")),
    "better-than-any-table": frozenset(("center-glass-u",)),
    "half-range-over-value": frozenset(("one-entry-swings",)),
    "bare-ceiling-to-outdoors": frozenset(("surface-cold-inside",)),
    "inner-room-large": frozenset(("room-without-outside", "room-warmed-by-others", "no-window-in-room")),
    "no-window-in-house": frozenset(("no-window-in-room", "air-and-glass-not-leading")),
    "loop-drop-large": frozenset(("room-left-cold", "room-driven-hot", "first-of-loop-takes-all")),
    "iron-sized-for-steam": frozenset(("room-left-cold",)),
    "baseboard-past-free-wall": frozenset(("room-left-cold", "one-room-sets-supply")),
    "length-past-room": frozenset(("room-driven-hot", "cabinet-length-as-fin", "one-room-sets-supply")),
    "supply-beyond-reach": frozenset(("one-room-sets-supply", "room-left-cold")),
    "header-too-small": frozenset(("pumps-in-duel",)),
    "head-past-belief": frozenset(("zone-valve-takes-much", "run-too-long", "pipe-rubs-much")),
    "pump-too-big": frozenset(
        ("pipe-too-fast", "twenty-degree-habit", "valve-closes-with-bang", "one-zone-alone-fast")
    ),
    "pump-toward-tank": frozenset(("top-of-house-dry",)),
    "nothing-to-balance-with": frozenset(("loops-unequal-no-valves",)),
    "boiler-too-big": frozenset(("sized-from-old-boiler", "boiler-cycles-fast", "micro-zone")),
    "too-many-zones": frozenset(("micro-zone",)),
    "no-reset": frozenset(("condensing-never-condenses",)),
    "reset-left-as-shipped": frozenset(("condensing-never-condenses",)),
}
"""Causes, and the findings that are folded under each where they stand at the same place."""


def folded(found: list[Finding], house: House) -> list[Finding]:
    """The findings without those that another explains.

    Those that carry a caution are never folded, nor what must be fixed under something that need not be:
    the papers would lose their mark of a draft.
    """
    reach = {id(each): reach_of(each.where, house) for each in found}
    under: dict[int, list[str]] = {}
    hidden: set[int] = set()
    for cause in found:
        for each in found:
            same = each.id in FOLDS.get(cause.id, ()) and not each.caution and each is not cause
            lighter = each.weight is Weight.MUST_FIX and cause.weight is not Weight.MUST_FIX
            if same and not lighter and reach[id(each)] <= reach[id(cause)]:
                hidden.add(id(each))
                under.setdefault(id(cause), []).append(each.id)
    return [
        replace(each, explains=tuple(dict.fromkeys(under.get(id(each), ()))))
        for each in found
        if id(each) not in hidden
    ]


def reach_of(where: str, house: House) -> frozenset[str]:
    """The rooms and spaces a place touches; for a place of the whole house all of them.

    Plant, controls, bills and readings are of the whole house.
    """
    steps = where.split("/")
    everything = frozenset(path for path, _ in house.spaces)
    if len(steps) < 2:
        return everything
    home, id = steps[0], steps[1]
    if home in ("emitters", "circuits", "zones") or (steps[:2] == ["plant", "circulators"] and steps[2:]):
        return frozenset(f"rooms/{each}" for each in _heated_by(steps, house)) or everything
    if home in ("rooms", "unheated"):
        own = {f"{home}/{id}"}
        if home == "unheated" and id in house.job.unheated:
            beyond = (each.beyond for each in house.job.unheated[id].surfaces.values())
            own |= {f"rooms/{each.id}" for each in beyond if each.kind == "room"}
        return frozenset(own)
    if home == "levels":
        return frozenset(
            path for path, space in house.spaces if space.level is not None and space.level.id == id
        )
    if home == "constructions":
        return frozenset(
            path
            for path, space in house.spaces
            if any(
                id in (each.construction.id, *(one.construction.id for one in each.openings.values()))
                for each in space.surfaces.values()
            )
        )
    return everything


def _heated_by(steps: list[str], house: House) -> Iterator[str]:
    """Rooms of an emitter, of a circuit, of a zone, or of what a circulator drives."""
    system = house.job.system
    home, id = steps[0], steps[2 if steps[0] == "plant" else 1]
    if home == "emitters":
        yield from (each.room for each in (system.emitters.get(id),) if each is not None)
    if home == "zones" and id in system.zones and system.zones[id].thermostat:
        yield system.zones[id].thermostat
    for each in system.circuits.values():
        own = {"circuits": each.id, "zones": each.zone, "plant": each.circulator}.get(home)
        if own == id:
            yield from (system.emitters[one].room for one in each.runs if one in system.emitters)


def decided(found: list[Finding], house: House) -> list[Finding]:
    """The findings, marked where the job decides on them; one with a caution needs a name too.

    What life hangs on stays open while it is so: the decision is shown beside it and settles nothing.
    """
    decisions = house.job.decisions
    made = []
    for each in found:
        one = decisions.get(f"{each.id}@{each.where}") or decisions.get(each.id)
        if one is not None and (one.by or not each.caution):
            open_for = _open_for(each, one, house)
            if open_for:
                who = f" by {one.by}" if one.by else ""
                each = replace(each, what=f"{each.what} Answered{who}: {one.text}. {open_for}")
            else:
                each = replace(each, decided=Decided(one.text, one.because, one.by))
        made.append(each)
    return made


def _open_for(each: Finding, one: Decision, house: House) -> str:
    """Why a decision does not settle a finding; empty where it does."""
    kind = KINDS[each.id]
    if each.weight is Weight.MUST_FIX and not kind.settled_by_words:
        return "It stands all the same until what is written in the job is otherwise."
    said = f" {one.text} {one.because} ".casefold()
    names = (each.name for some in (house.job.rooms, house.job.levels) for each in some.values())
    if kind.says_where and not any(each.casefold() in said for each in (*PLACES, *names)):
        return "It stands until the answer says where."
    return ""


def gathered(found: list[Finding], house: House) -> list[Finding]:
    """One finding with a list, where one kind stands in more than three rooms, emitters, circuits or runs."""
    groups: dict[tuple[str, str, Weight, bool], list[Finding]] = {}
    for each in found:
        home = _home(each.where, house)
        if home:
            groups.setdefault((each.id, home, each.weight, each.decided is not None), []).append(each)
    gone: set[int] = set()
    swapped: dict[int, Finding] = {}
    for (_, home, _, _), some in groups.items():
        things = list(dict.fromkeys(_thing(each.where) for each in some))
        if len(things) > MOST_ROOMS:
            swapped[id(some[0])] = _one_of(some, [_name(each, home, house) for each in things[1:]])
            gone |= {id(each) for each in some[1:]}
    return [swapped.get(id(each), each) for each in found if id(each) not in gone]


def _thing(where: str) -> str:
    """The room, emitter, circuit or run that a place belongs to."""
    steps = where.split("/")
    return "/".join(steps[:4] if steps[2:3] == ["runs"] else steps[:2])


def _home(where: str, house: House) -> str:
    """What kind of thing a place belongs to, where such things are told together; else empty."""
    steps = where.split("/")
    if steps[0] == "circuits" and steps[2:3] == ["runs"] and steps[3:]:
        return "runs"
    system = house.job.system
    homes = {
        "rooms": set(house.job.rooms),
        "emitters": set(system.emitters),
        "circuits": set(system.circuits),
    }
    return steps[0] if steps[1:] and steps[1] in homes.get(steps[0], ()) else ""


def _name(thing: str, home: str, house: House) -> str:
    """What people call a room, an emitter or a circuit, or the emitter that a run leads to."""
    id, system = thing.rpartition("/")[2], house.job.system
    if home in ("emitters", "runs"):
        return system.emitters[id].name if id in system.emitters else id
    return (house.job.rooms if home == "rooms" else system.circuits)[id].name


def _one_of(some: list[Finding], others: list[str]) -> Finding:
    first = some[0]
    names = f"{', '.join(others[:-1])} and {others[-1]}"
    mends = []
    for i, mend in enumerate(first.mends):
        alike = [each.mends[i] for each in some if i < len(each.mends)]
        changes = {repr(change): change for each in alike for change in each.changes}
        words = mend.words
        if any(each.words != words for each in alike):
            words = f"{words.rstrip('.')}; the others likewise, each by its own figure."
        mends.append(replace(mend, words=words, changes=tuple(changes.values())))
    explains = tuple(dict.fromkeys(id for each in some for id in each.explains))
    return replace(
        first, what=f"{first.what} The same holds for {names}.", mends=tuple(mends), explains=explains
    )


def ordered(found: list[Finding]) -> list[Finding]:
    """Must fix first, then in the order of the trade."""
    places = {id: i for i, id in enumerate(KINDS)}
    return sorted(found, key=lambda each: (each.weight is not Weight.MUST_FIX, places[each.id]))
