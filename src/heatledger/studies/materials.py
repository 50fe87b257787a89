"""What a crew must have on site: tube by size with its pieces, and fittings by kind, from the design."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import ceil

from heatledger.job.system_model import HOME_RUN, Fittings, Pipe
from heatledger.ledger.dimensions import RATIO
from heatledger.ledger.figures import Figure
from heatledger.ledger.sources import JUDGMENT, PRACTICE, cite
from heatledger.ledger.units import UNITS
from heatledger.physics.fittings import tube_length
from heatledger.physics.materials import length_to_buy
from heatledger.steps.design import Design
from heatledger.steps.piping import PipeHead
from heatledger.steps.usual import usual

WASTE = cite("", "tube lost in cutting, bends and mistakes", JUDGMENT)
PACKS = cite("", "lengths in which tube is sold; the supplier's own hold", PRACTICE)
_FT, _M = UNITS["ft"].to_si(1.0), 1.0
# Coils and straight lengths as tube is commonly sold, in meters: inch sizes, then metric sizes.
_COILS = (
    tuple(each * _FT for each in (100, 300, 500, 1000)),
    tuple(each * _M for each in (50, 100, 200, 500)),
)
_COPPER = ((10 * _FT, 20 * _FT), (3 * _M, 5 * _M))
_STEEL = ((21 * _FT,), (6 * _M,))


@dataclass(frozen=True)
class Cut:
    """A piece of tube in place: whose it is, what it is, and its length as laid."""

    owner: str
    what: str
    length: Figure


@dataclass(frozen=True)
class Packs:
    """How tube is sold: ``count`` coils or straight lengths of ``length`` meters each."""

    kind: str
    length: float
    count: int
    fits: bool = True
    """Whether every piece of a coil comes out of one coil, without a joint."""


@dataclass
class TubeLot:
    """All tube of one size: its pieces, their sum, and what to buy."""

    tube: str
    cuts: list[Cut] = field(default_factory=list)

    def add_up(self) -> None:
        """The sum of the pieces, the length with waste, and the packs that give it."""
        waste = usual("material/waste", "share of tube lost in cutting", "10 %", RATIO, WASTE)
        self.length = tube_length(lengths=[each.length for each in self.cuts])
        self.to_buy = length_to_buy(length=self.length, waste=waste)
        self.packs = packs_of(self.tube, [float(each.length) * (1 + float(waste)) for each in self.cuts])

    length: Figure = field(init=False)
    to_buy: Figure = field(init=False)
    packs: Packs | None = field(init=False, default=None)


@dataclass(frozen=True)
class FittingLot:
    """Fittings of one kind on one size of tube."""

    name: str
    tube: str
    count: int


def tube_lots(design: Design) -> list[TubeLot]:
    """Tube by size, in the order in which the sizes are met; none while nothing is piped."""
    lots: dict[str, TubeLot] = {}
    for head, _, owner, what in _pieces(design):
        if float(head.length) != 0.0:
            lots.setdefault(head.tube, TubeLot(head.tube)).cuts.append(Cut(owner, what, head.length))
    for lot in lots.values():
        lot.add_up()
    return list(lots.values())


def fitting_lots(design: Design) -> list[FittingLot]:
    """Fittings by tube and kind."""
    counts: dict[tuple[str, str], float] = {}
    for head, pipe, _, _ in _pieces(design):
        for each in _fittings(pipe):
            key = (head.tube, each.name)
            counts[key] = counts.get(key, 0.0) + float(each.count)
    return [FittingLot(name, tube, round(count)) for (tube, name), count in counts.items() if count >= 1]


def _fittings(pipe: Pipe | None) -> list[Fittings]:
    given = pipe.fittings.values() if pipe is not None else ()
    return [each for each in given if not each.count.is_missing]


def _pieces(design: Design) -> Iterator[tuple[PipeHead, Pipe | None, str, str]]:
    """Every piece of piping: what was found, what was given, whose it is, and what it is."""
    found = getattr(design, "circuits", None)
    if found is None:
        return
    system = design.job.system
    if found.plant.mains is not None:
        yield found.plant.mains, system.plant.mains, "Boiler room", "Mains"
    for id, circuit in found.circuits.items():
        given = system.circuits[id]
        yield circuit.common, given.common, circuit.name, "Common piping"
        both = ", supply and return" if given.kind == HOME_RUN else ""
        for emitter, run in circuit.runs.items():
            name = getattr(system.emitters.get(emitter), "name", emitter)
            yield run, given.runs.get(emitter), circuit.name, f"{name}{both}"


def packs_of(tube: str, pieces: list[float]) -> Packs | None:
    """The packs that give these pieces (meters, waste put on) with the least left over.

    No piece of a coil has a joint where that can be; straight lengths are joined. None where the tube is of
    no kind that is known here, or a length is missing.
    """
    words = tube.lower()
    metric = " in " not in f"{words} "
    if any(each != each for each in pieces):
        return None
    if "copper" in words or "steel" in words:
        lengths = (_COPPER if "copper" in words else _STEEL)[metric]
        counted = [(each, ceil(sum(pieces) / each - 1e-9)) for each in lengths]
        length, count = min(counted, key=lambda each: (each[0] * each[1], each[1]))
        return Packs("length", length, count)
    if "pex" not in words:
        return None
    coils = _COILS[metric]
    whole = [each for each in coils if max(pieces) <= each + 1e-9]
    if not whole:
        return Packs("coil", coils[-1], ceil(sum(pieces) / coils[-1] - 1e-9), fits=False)
    tried = [(each, _coils(pieces, each)) for each in whole]
    length, count = min(tried, key=lambda each: (each[0] * each[1], each[1]))
    return Packs("coil", length, count)


def _coils(pieces: list[float], length: float) -> int:
    """How many coils of one length the pieces are cut from, each laid in the first that has room."""
    left: list[float] = []
    for piece in sorted(pieces, reverse=True):
        for i, room in enumerate(left):
            if piece <= room + 1e-9:
                left[i] = room - piece
                break
        else:
            left.append(length - piece)
    return len(left)
