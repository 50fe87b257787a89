"""The papers of the two demo houses, and small jobs that are hard to set."""

from __future__ import annotations

from functools import cache
from importlib import resources

from heatledger.job.load import read_job
from heatledger.ledger.findings import Decided, Finding, Mend, NotChecked, Weight
from heatledger.ledger.presets import PRESETS
from heatledger.ledger.sources import JUDGMENT, PRACTICE, cite
from heatledger.papers.addresses import Addresses
from heatledger.papers.from_design import heat_loss_paper
from heatledger.papers.groups import addresses
from heatledger.papers.heat_loss_data import HeatLossPaper
from heatledger.steps.design import Design, design
from heatledger.studies.parts import parts_of_house

HOUSES = ("ferrow-house", "lerch-cottage")

ONE_ROOM = """
format: 1
name: Garden room
units: US
site: {outdoor: 5 °F, indoor: 70 °F, elevation: 900 ft}
constructions:
  wall: {name: Wall, kind: wall, u_value: U-0.06}
  roof: {name: Roof, kind: ceiling, u_value: U-0.03}
air: {changes: 0.4 ACH}
levels: {ground: {name: Ground floor}}
rooms:
  den:
    name: Den
    level: ground
    floor_area: 200 ft2
    ceiling_height: 8 ft
    surfaces:
      wall: {construction: wall, area: 320 ft2, beyond: outdoors}
      roof: {construction: roof, area: 200 ft2, beyond: outdoors}
"""

WALL_LEFT_OUT = "Two walls are entered and three have an outside face on the plan."


def text_of(house: str) -> str:
    return resources.files("heatledger").joinpath("examples", f"{house}.yaml").read_text("utf-8")


def designed(text: str, name: str = "job") -> Design:
    """The design of a job; what a reviewer would say is left to each test."""
    made = design(read_job(text, f"{name}.yaml"))
    vars(made)["findings"], vars(made)["not_checked"] = [], []
    return made


@cache
def house(name: str) -> Design:
    return designed(text_of(name), name)


@cache
def paper(name: str, units: str = "us") -> HeatLossPaper:
    return heat_loss_paper(house(name), PRESETS[units])


@cache
def addressed(name: str, units: str) -> Addresses:
    made = house(name)
    return addresses(made, PRESETS[units], parts_of_house(made))


def with_findings(made: Design, decided: bool = False) -> HeatLossPaper:
    """The paper of a design on which something must be fixed, unless that is decided."""
    settled = Decided("left as it is", "it adjoins a heated room", "J. Ondry") if decided else None
    room, found = next(iter(made.losses.rooms.items()))
    vars(made)["findings"] = [
        Finding(
            "missing-side", f"rooms/{room}", WALL_LEFT_OUT, "A wall of 99 ft² would add about 650 Btu/h.",
            (Mend("enter the third wall"), Mend("say that it adjoins a heated room")),
            cite("", "every side of a room is accounted for", JUDGMENT), Weight.MUST_FIX,
            caution="Local code decides.", decided=settled,
        ),
        Finding(
            "high-loss", f"rooms/{room}", "It loses much for its floor.", found.loss, (),
            cite("", "older houses", PRACTICE), Weight.DECIDE,
        ),
        Finding(
            "ground", "site", "The ground temperature is told, not looked up.", "It moves little.",
            (Mend("look it up"),), cite("", "by its weight", JUDGMENT), Weight.NOTE,
        ),
    ]  # fmt: skip
    vars(made)["not_checked"] = [NotChecked("fan-test", "air", "a fan test")]
    return heat_loss_paper(made, made.job.units)
