"""First use: an empty book invites, and each of the four ways begins a job that can be worked out."""

from __future__ import annotations

import pytest
from fastapi.testclient import TestClient

from heatledger.book.records import Revision
from heatledger.job.load import read_job
from heatledger.ledger.presets import PRESETS
from heatledger.steps.design import design
from heatledger.studies.crude import crude_estimate
from heatledger.web.new_job import from_boiler, from_room

BOILER = {
    "way": "replacement", "name": "Old Mill", "outdoor": "2", "indoor": "70", "area": "1460", "round": "109",
    "high": "17' 6\"", "ceiling": "730", "windows": "19", "window": "2' 8\" × 4' 8\"", "doors": "2",
    "door": "3 × 6.67", "is-wall": "frame-wall-2x4-empty", "elevation": "600", "fuel": "oil",
    "used": "1,090 gal", "days": "6750", "base": "65", "season": "74", "other": "0 Btu", "burns": "oil",
    "kind": "non-condensing", "input": "175000", "output": "140000", "relief": "30", "rise": "18",
    "emitter-1": "column-3-38",
    "count-1": "90", "where-1": "All radiators",
}  # fmt: skip
METRIC_BOILER = BOILER | {
    "elevation": "183",
    "outdoor": "-16.7", "indoor": "21.1", "area": "135.6", "round": "33.2", "high": "5.33", "ceiling": "67.8",
    "window": "0.81 × 1.42", "door": "0.91 × 2.03", "used": "4126 L", "days": "3750", "base": "18.3",
    "input": "51286", "output": "41029", "relief": "206.8", "rise": "5.5",
}  # fmt: skip


def begin(client: TestClient, **typed: object) -> Revision:
    """Post the form and give the job's first revision."""
    answer = client.post("/new-job", data=typed, follow_redirects=False)
    assert answer.status_code == 303, answer.text
    id = answer.headers["location"].split("/")[2]
    assert client.get(answer.headers["location"]).status_code == 200
    return client.app.state.book.head(id)  # type: ignore[attr-defined]


def test_an_empty_book_invites(empty_client: TestClient) -> None:
    page = empty_client.get("/").text
    for way in ("numbers", "room", "replacement", "demo"):
        assert f"/new-job?way={way}" in page
        assert empty_client.get(f"/new-job?way={way}").status_code == 200


@pytest.mark.parametrize(
    ("units", "typed"),
    [
        ("us", ("1800", "5", "70")),
        ("metric", ("167.2", "-15", "21.1")),
        ("canadian", ("1800", "-15", "21.1")),
    ],
)
def test_three_numbers_read_bare_give_the_same_crude_estimate(
    empty_client: TestClient, units: str, typed: tuple[str, str, str]
) -> None:
    empty_client.cookies.set("units", units)
    area, outdoor, indoor = typed
    made = begin(empty_client, way="numbers", name="Mill", area=area, outdoor=outdoor, indoor=indoor)
    job = read_job(made.text)
    assert job.units is PRESETS[units] and job.name == "Mill"
    estimate = crude_estimate(job)
    assert estimate is not None
    assert float(estimate.figure) == pytest.approx(10_286, rel=0.01)


def test_every_fault_of_a_form_is_said_at_once_and_nothing_is_lost(empty_client: TestClient) -> None:
    page = empty_client.post(
        "/new-job", data={"way": "numbers", "name": "<i>", "area": "big", "outdoor": "5 foot", "indoor": ""}
    )
    assert page.status_code == 422
    for key in ("area", "outdoor", "indoor"):
        assert f'id="fault-{key}"' in page.text
    assert 'value="big"' in page.text and 'value="5 foot"' in page.text and 'value="&lt;i&gt;"' in page.text
    assert not empty_client.app.state.book.jobs()  # type: ignore[attr-defined]


def test_a_first_room_has_its_outside_walls(empty_client: TestClient) -> None:
    made = begin(
        empty_client, way="room", room="Den: 1", along="12' 6\"", across="10", side=["north", "west"],
        attic="yes", outdoor="0", indoor="70", elevation="300",
    )  # fmt: skip
    job = read_job(made.text)
    house = design(job)
    assert job.rooms["den-1"].name == "Den: 1"
    assert float(house["house/floor_area"]) == pytest.approx(3.81 * 3.048)
    walls = "rooms/den-1/surfaces"
    assert float(house[f"{walls}/north-wall/length"]) == pytest.approx(3.81)
    assert float(house[f"{walls}/west-wall/length"]) == pytest.approx(3.048)
    assert set(job.rooms["den-1"].surfaces) == {"north-wall", "west-wall", "ceiling"}
    assert float(house.losses.house.loss) > 0


def test_a_room_says_which_side_cannot_be_read() -> None:
    made = from_room({"room": "Den", "along": "long", "across": "10"}, PRESETS["us"], ["north"], False)
    assert made.job is None and "long" in made.faults["along"]


@pytest.mark.parametrize(("units", "typed"), [("us", BOILER), ("metric", METRIC_BOILER)])
def test_a_boiler_to_be_replaced_is_worked_out_from_both_sides(
    empty_client: TestClient, units: str, typed: dict[str, str]
) -> None:
    empty_client.cookies.set("units", units)
    made = begin(empty_client, **typed)
    house = design(read_job(made.text))
    assert float(house.losses.house.loss) == pytest.approx(15_600, rel=0.1)
    bill = house.bills.bills["winter"]
    assert float(bill.like_for_like) == pytest.approx(float(house.losses.house.loss), rel=0.25)
    assert float(house["plant/output"]) == pytest.approx(41_030, rel=0.01)
    assert float(house["house/lowest_supply"]) > 310
    assert "# The plate of the old boiler" in made.text
    assert "efficiency: {is: 74 %, known: assumed}" in made.text


def test_a_boiler_form_may_stay_empty() -> None:
    for units in PRESETS.values():
        made = from_boiler({}, units)
        assert made.job is not None and made.faults == {}
        assert made.job.units is units and "bills" not in made.job.raw


def test_a_fuel_that_goes_by_volume_or_by_heat_is_told_by_its_unit() -> None:
    for used, key in (("900 therms", "energy"), ("800 gal", "volume"), ("98,000 ft3", "gas")):
        fuel = "oil" if key == "volume" else "natural gas"
        made = from_boiler({"fuel": fuel, "used": used}, PRESETS["us"])
        assert made.job is not None, made.faults
        assert made.job.raw["bills"]["winter"][key] == used


def test_a_demo_is_copied_and_an_unknown_one_refused(empty_client: TestClient) -> None:
    made = begin(empty_client, way="demo", demo="tamm-street")
    assert read_job(made.text).name == "Tamm Street, new boiler"
    assert empty_client.post("/new-job", data={"way": "demo", "demo": "../x"}).status_code == 422
