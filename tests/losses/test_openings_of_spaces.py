"""Windows and doors of an unheated space stand under the surface they are in, as those of a room do."""

from __future__ import annotations

import pytest

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.steps.design import design
from heatledger.steps.spaces import every
from tests.job.samples import codes, example

DOOR = "unheated/garage/surfaces/walls/openings/door"
CONCRETE = {"construction": "bare-concrete", "area": "600 ft2", "beyond": "outdoors"}


def with_door() -> Job:
    door = {"construction": "garage-door", "size": "3' × 7'"}
    return read_job(example("ferrow-house")).with_changes([{"add": DOOR, "to": door}])


def test_an_opening_is_found_under_its_surface() -> None:
    done = design(with_door())
    assert float(done[f"{DOOR}/conductance"]) > 0
    walls = done.losses.unheated["garage"].surfaces["walls"]
    assert set(walls.openings) == {"overhead-door", "door"}
    assert done.names.title(done[f"{DOOR}/conductance"]) == "Conductance, Garage, Walls, Door"


def test_a_surface_named_like_an_opening_is_not_lost() -> None:
    """Under any name the same wall gives the same garage."""
    found = [
        design(with_door().with_changes([{"add": f"unheated/garage/surfaces/{id}", "to": CONCRETE}]))
        for id in ("walls-door", "other")
    ]
    one, two = (each.losses.unheated["garage"] for each in found)
    assert float(one.temperature) == float(two.temperature)
    assert len(every(one.surfaces.values())) == len(every(two.surfaces.values()))


def test_openings_take_part_in_the_balance() -> None:
    without = with_door().with_changes([{"remove": DOOR}])
    garages = [design(each).losses.unheated["garage"] for each in (without, with_door())]
    assert float(garages[1].temperature) != float(garages[0].temperature)
    before, after = (sum(float(one.conductance) for one in every(each.surfaces.values())) for each in garages)
    # 21 ft² pass U-0.90 in place of U-0.40; 1 Btu/(h·°F) is 0.527528 W/K.
    assert after - before == pytest.approx(21 * (0.90 - 0.40) * 0.527528, rel=1e-5)


@pytest.mark.parametrize("id", ["wall-below-grade", "floor"])
def test_the_ground_takes_no_window(id: str) -> None:
    window = {"construction": "old-window", "size": "2' × 1'"}
    change = {"add": f"unheated/basement/surfaces/{id}/openings/w", "to": window}
    with pytest.raises(JobErrors) as caught:
        read_job(example("ferrow-house")).with_changes([change])
    assert codes(caught.value) == ["opening-below-grade"]
    assert "above grade" in caught.value.errors[0].mend
