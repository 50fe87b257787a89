"""Claim: the loss of the basement in NESEA-GR, 120 ft of perimeter at 0.36 Btu/(h·ft·°F)."""

import pytest

from heatledger.job.load import read_job
from heatledger.ledger.sources import SEEN
from heatledger.physics.energy import season_heat
from heatledger.physics.ground import edge_conductance, slab_edge_loss
from heatledger.steps.design import design
from tests.published.checks import at, check, into, si

EDGE = {"f_factor": si(0.36, "Btu/(h·ft·°F)"), "edge": si(120, "ft")}


def test_per_degree():
    check(
        claim="Loss per degree of the perimeter", source="NESEA-GR", place="basement example", standing=SEEN,
        unit="Btu/(h·°F)", expected=43, got=into(edge_conductance(**EDGE), "Btu/(h·°F)"), tolerance=0.5,
        why="half a unit of the last digit printed",
    )  # fmt: skip


def test_season():
    heat = season_heat(coefficient=si(43, "Btu/(h·°F)"), degree_days=si(5650, "°F"))
    check(
        claim="Loss of the perimeter over 5,650 degree days", source="NESEA-GR", place="basement example",
        standing=SEEN, unit="million Btu", expected=5.83, got=into(heat, "Btu") / 1e6, tolerance=0.01,
        why="from the rounded 43, as the source does",
    )  # fmt: skip


def test_we_compute_and_do_not_copy():
    """The page prints 2924 Btu/h, its rounded 43 times the indoor 68 °F; the difference is 63 °F."""
    loss = slab_edge_loss(**EDGE, indoor=at(68, "°F"), outdoor=at(5, "°F"))
    assert into(loss, "Btu/h") == pytest.approx(2721.6, abs=1)


def test_the_basement_from_the_text_of_a_job():
    done = design(
        read_job(
            "format: 1\nunits: US\ninvented: yes\n"
            "site: {outdoor: 5 °F, indoor: 68 °F, elevation: 0 ft}\nair: {changes: 0 ACH}\n"
            "constructions: {edge: {kind: slab edge, f_factor: 0.36 Btu/(h·ft·°F)}}\n"
            "levels: {down: {wall_height: 8 ft, ceiling_height: 7 ft}}\n"
            "rooms: {basement: {level: down, floor_area: 900 ft2, surfaces: {"
            "edge: {construction: edge, length: 120 ft}}}}\n"
        )
    )
    check(
        claim="Loss per degree of a basement, from the text of a job", source="NESEA-GR",
        place="basement example", standing=SEEN, unit="Btu/(h·°F)", expected=43,
        got=into(done["house/coefficient"], "Btu/(h·°F)"), tolerance=0.5,
        why="half a unit of the last digit printed",
    )  # fmt: skip
    assert into(done["house/loss"], "Btu/h") == pytest.approx(2721.6, abs=1)
