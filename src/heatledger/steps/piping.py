"""A piece of piping at its design flow: its tube, and the head that the tube and its valve cost."""

from __future__ import annotations

from collections.abc import Iterable

from heatledger.job.system_model import Fittings, Pipe, Tube
from heatledger.ledger.dimensions import (
    BORE,
    Bore,
    FlowCoefficient,
    Friction,
    Head,
    Length,
    Ratio,
    ReynoldsNumber,
    Velocity,
    VolumeFlow,
    WaterVolume,
)
from heatledger.ledger.figures import Figure, missing
from heatledger.ledger.results import result
from heatledger.physics.fittings import fittings_length, fittings_total, tube_length, valve_head
from heatledger.physics.friction import head_total, pipe_head, tube_volume
from heatledger.steps.rubbing import Water
from heatledger.steps.tubes import SizeLimits, chosen_tube, lengths_of_fittings


@result
class PipeHead:
    """A piece of piping: what it is, and what its water does at the design flow.

    ``length`` is that of its tube; ``emitter_length`` that of the finned tube in it, where the emitter is
    a piece of the loop. ``valve`` is the flow coefficient of what stands in it. ``balancing`` is the
    setting of its balancing valve that gives it the design flow; None where it has none or needs none.
    """

    tube: str
    flow: VolumeFlow
    length: Length
    emitter_length: Length | None
    fittings_length: Length
    bore: Bore
    relative_roughness: Ratio
    velocity: Velocity
    reynolds: ReynoldsNumber
    friction_factor: Ratio
    friction: Friction
    pipe_head: Head
    valve: FlowCoefficient | None
    valve_head: Head | None
    head: Head
    volume: WaterVolume
    balancing: FlowCoefficient | None = None
    actual_flow: VolumeFlow | None = None
    actual_velocity: Velocity | None = None


def laid(
    pipe: Pipe, path: str, family: str, flow: Figure, water: Water, limits: SizeLimits,
    emitter_length: Figure | None = None, may_be_none: bool = False,
) -> PipeHead:  # fmt: skip
    """A piece of piping at its design flow; its tube is chosen from a family where the job leaves it open.

    A common piece without a length and without fittings is none: it has no tube, and its length is that of
    no pieces.
    """
    tube = pipe.tube or chosen_tube(pipe.family or family, flow, water.viscosity, limits)
    none = may_be_none and pipe.length.is_missing and not pipe.fittings
    length = tube_length(lengths=[]) if none else pipe.length
    fittings = _fittings(pipe, tube)
    if tube is None:
        bore = rough_ = missing(BORE, f"{path}/tube", "tube")
        name = ""
    else:
        bore, rough_, name = tube.bore, tube.roughness, "" if none else tube.name
    rough = water.rough(rough_, bore)
    rubs = water.rubbing(flow, bore, rough)
    whole = length if emitter_length is None else tube_length(lengths=[length, emitter_length])
    along = pipe_head(friction=rubs.friction, length=whole, fittings_length=fittings)
    through = None if pipe.valve is None else valve_head(flow=flow, flow_coefficient=pipe.valve)
    return PipeHead(
        tube=name, flow=flow, length=length, emitter_length=emitter_length, fittings_length=fittings,
        bore=bore, relative_roughness=rough, velocity=rubs.velocity, reynolds=rubs.reynolds,
        friction_factor=rubs.factor, friction=rubs.friction, pipe_head=along, valve=pipe.valve,
        valve_head=through, head=together([along, through]), volume=tube_volume(bore=bore, length=length),
    )  # fmt: skip


def head_at(piece: PipeHead, flow: Figure, water: Water) -> Figure:
    """Head that a laid piece costs at another flow, with its balancing valve as set."""
    friction_there = water.rubbing(flow, piece.bore, piece.relative_roughness).friction
    whole = piece.pipe_head.inputs[1]  # the length it was worked out with, the emitter's in it
    along = pipe_head(friction=friction_there, length=whole, fittings_length=piece.fittings_length)
    valves = [each for each in (piece.valve, piece.balancing) if each is not None]
    return together([along, *(valve_head(flow=flow, flow_coefficient=each) for each in valves)])


def together(heads: Iterable[Figure | None]) -> Figure:
    """The head of pieces in series; one that stands alone is its own sum."""
    there = [each for each in heads if each is not None]
    return there[0] if len(there) == 1 else head_total(heads=there)


def _fittings(pipe: Pipe, tube: Tube | None) -> Figure:
    """The length of tube that all fittings of a piece resist as much as."""
    lengths = [_length_of(key, each, tube) for key, each in pipe.fittings.items()]
    return lengths[0] if len(lengths) == 1 else fittings_total(lengths=lengths)


def _length_of(key: str, each: Fittings, tube: Tube | None) -> Figure:
    """Fittings of one kind; where the job leaves the tube open, their length is that for the tube found."""
    one = each.equivalent_length
    if one.is_missing and tube is not None:
        one = lengths_of_fittings(tube).get(key, one)
    return fittings_length(count=each.count, equivalent_length=one)
