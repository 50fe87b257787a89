"""Sheet House: rooms by level, the table of the picked room, the first room step by step."""

from __future__ import annotations

import re
from urllib.parse import quote

import pytest
from fastapi.testclient import TestClient

from heatledger.job.edits import set_entry
from heatledger.job.load import read_job
from heatledger.web.drawing import drawn, fragment
from heatledger.web.house_view import picked_of, stories
from heatledger.web.sheets import house
from tests.web.page_of import by_id, demo, made_page, wrong_entry

SWAP = {"HX-Request": "true"}
BEGUN = "format: 1\nunits: US\nname: New house\nsite: {outdoor: 0 °F, indoor: 70 °F, elevation: 300 ft}\n"


def left_of(page: object, id: str) -> str:
    """One fragment of the left page as markup."""
    return str(fragment(by_id(house.left(page))[id], page))  # type: ignore[arg-type]


def begin(client: TestClient, text: str) -> str:
    """A job of a text in the book; its id."""
    book = client.app.state.book  # type: ignore[attr-defined]
    job = read_job(text)
    return str(book.add_job(text, job.name, job.address, "Begun", "J. Ondry").job_id)


def job_of(client: TestClient, id: str) -> object:
    """The job as its head revision says it."""
    return read_job(client.app.state.book.head(id).text)  # type: ignore[attr-defined]


def test_rooms_stand_by_level_with_area_and_loss() -> None:
    page = made_page(demo())
    assert [(each.name, len(each.rooms)) for each in stories(page)] == [
        ("Ground floor", 5),
        ("Upper floor", 4),
    ]
    html = left_of(page, "house-rooms")
    for id, room in demo().rooms.items():
        assert room.name in html
        assert f'value="rooms/{id}/floor_area"' in html and f'value="rooms/{id}/loss"' in html
    assert "5,121" in html


def test_the_first_room_is_picked_until_another_is() -> None:
    page = made_page(demo())
    assert picked_of(page).home == "rooms/living"
    assert picked_of(made_page(demo(), picked="rooms/study/surfaces/floor")).home == "rooms/study"
    assert picked_of(made_page(demo(), picked="unheated/attic")).home == "unheated/attic"
    assert picked_of(made_page(demo(), picked="rooms/nowhere")).space is not None


def test_the_table_of_a_room_has_its_tape_and_every_figure_opens() -> None:
    page = made_page(demo(), picked="rooms/living")
    html = left_of(page, "house-table")
    for path in ("surfaces/south-wall/length", "surfaces/south-wall/openings/w1/size", "surfaces/floor/size"):
        assert f'data-entry="rooms/living/{path}"' in html
    # The air of the whole house is not typed in the table of one room.
    assert 'data-entry="air/changes"' not in html and "#entry=rooms/living/air/changes" in html
    losses = [
        path for path in page.house.results if re.fullmatch(r"rooms/living/(surfaces/.+|air)/loss", path)
    ]
    assert len(losses) == 7
    assert all(f'value="{path}"' in html for path in [*losses, "rooms/living/loss"])
    assert html.count("dbl") == 1 and "rounded parts" in html


def test_an_unheated_space_shows_what_it_conducts_and_its_temperature() -> None:
    page = made_page(demo(), picked="unheated/basement")
    html = left_of(page, "house-table")
    assert 'value="unheated/basement/surfaces/wall-below-grade/conductance"' in html
    assert 'value="unheated/basement/temperature"' in html
    assert 'data-entry="unheated/basement/surfaces/wall-below-grade/bottom"' in html
    lead = by_id(house.right(page))["lead"]
    assert "without heat of its own" in fragment(lead, page)


def test_the_right_page_leads_with_the_loss_of_the_room_by_cause() -> None:
    page = made_page(demo(), picked="rooms/living")
    html = str(fragment(by_id(house.right(page))["lead"], page))
    for cause in ("walls", "windows", "floor", "air"):
        assert f'value="rooms/living/causes/{cause}/loss"' in html
    assert "doors" not in html.lower() and "<svg" in html and "likely" in html


@pytest.mark.parametrize("units", ["us", "metric", "canadian"])
@pytest.mark.parametrize("view", ["", "built", "around", "job", "walls", "windows", "covers"])
@pytest.mark.parametrize("picked", ["", "rooms/kitchen", "constructions/old-window", "plant"])
def test_every_way_to_look_is_drawn_with_ids_that_stand_once(units: str, view: str, picked: str) -> None:
    page = made_page(demo(), units, view=view, picked=picked)
    html = "".join(drawn(page).values())
    ids = re.findall(r'\sid="([^"]+)"', html)
    assert len(set(ids)) == len(ids), sorted(each for each in set(ids) if ids.count(each) > 1)
    assert " style=" not in html and "None" not in html


def test_the_names_of_rooms_are_never_markup() -> None:
    job = read_job(set_entry(demo().source.text, "rooms/living/name", "<script>alert(1)</script>"))
    for view in ("", "walls"):
        html = "".join(drawn(made_page(job, picked="rooms/living", view=view)).values())
        assert "<script" not in html and "&lt;script&gt;alert(1)" in html


def test_what_is_missing_is_said_with_a_way_to_its_entry() -> None:
    page = made_page(read_job(BEGUN.replace("outdoor: 0 °F, ", "")))
    html = left_of(page, "house-mend")
    assert "Heat loss needs the outdoor" in html and "pick=site#entry=site/outdoor" in html
    assert left_of(made_page(demo()), "house-mend").count("<li") == 0


def test_entries_to_mend_are_counted_and_linked() -> None:
    path = "rooms/living/surfaces/south-wall/length"
    page = made_page(demo(), wrong=wrong_entry(path, "12 apples", "“apples” is no unit."))
    html = left_of(page, "house-mend")
    assert "1 entry to mend" in html and f"#entry={path}" in html and "is no unit" in html
    table = left_of(page, "house-table")
    assert 'value="12 apples"' in table and "is still used" in table


def test_an_empty_job_invites_to_type_two_sides(client: TestClient) -> None:
    id = begin(client, BEGUN)
    html = client.get(f"/jobs/{id}/house").text
    assert 'name="one"' in html and 'name="other"' in html and "its two sides" in html


def test_the_first_room_grows_step_by_step(client: TestClient) -> None:
    id = begin(client, BEGUN)

    def make(**given: str) -> str:
        answer = client.post(f"/jobs/{id}/make", data={"sheet": "house", **given}, headers=SWAP)
        assert answer.status_code == 200, answer.text
        return answer.text

    make(what="room", name="Den", one="14' 6\"", other="13'", ceiling_height="8", wall_height="9")
    room = job_of(client, id).rooms["den"]  # type: ignore[attr-defined]
    assert float(room.level.ceiling_height) == pytest.approx(8 * 0.3048)
    page = client.get(f"/jobs/{id}/house?view=walls").text
    assert page.count("14′ 6″") >= 2 and 'name="north"' in page
    make(
        what="walls", path="rooms/den", north="yes", west="yes", construction="catalog/frame-wall-2x4-r-11",
        **{"north-length": "14′ 6″", "west-length": "13′", "north-beyond": "outdoors"},
    )  # fmt: skip
    room = job_of(client, id).rooms["den"]  # type: ignore[attr-defined]
    assert list(room.surfaces) == ["north-wall", "west-wall"]
    windows = re.findall(r'value="(catalog/[^"]+)"', client.get(f"/jobs/{id}/house?view=windows").text)
    make(what="windows", path="rooms/den", **{"north-wall-window": "3' × 4'", "north-wall-count": "2",
                                             "window-construction": windows[0]})  # fmt: skip
    make(what="covers", path="rooms/den", ceiling="outdoors",
         **{"ceiling-construction": _row(client, id, "ceiling")})  # fmt: skip
    room = job_of(client, id).rooms["den"]  # type: ignore[attr-defined]
    opening = room.surfaces["north-wall"].openings["window"]
    assert float(opening.count) == 2 and room.surfaces["ceiling"].beyond.kind == "outdoors"
    assert float(room.length) == pytest.approx(14.5 * 0.3048)


def _row(client: TestClient, id: str, kind: str) -> str:
    html = client.get(f"/jobs/{id}/house?view=covers").text
    part = html.partition(f'id="{kind}-construction"')[2]
    found = re.search(r'value="(catalog/[^"]+)"', part)
    assert found
    return found[1]


def test_a_form_that_cannot_be_read_keeps_nothing_and_says_all(client: TestClient) -> None:
    id = begin(client, BEGUN)
    given = {"what": "room", "name": "Den", "one": "14 apples", "other": "13'", "ceiling_height": "8 pears"}
    answer = client.post(f"/jobs/{id}/make", data=given, headers=SWAP)
    assert answer.status_code == 422
    assert "apples" in answer.text and "pears" in answer.text and "Nothing was kept" in answer.text
    assert not job_of(client, id).rooms  # type: ignore[attr-defined]
    assert client.app.state.book.wrong(id) == []  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("given", "there"),
    [
        ({"what": "thing", "path": "rooms", "name": "Box room", "f:level": "ground", "f:size": "6 × 7"},
         "rooms/box-room/size"),
        ({"what": "thing", "path": "rooms/living/surfaces", "name": "Bay", "f:construction": "wall-2x4",
          "f:beyond": "outdoors", "f:length": "4 ft x 8 ft"}, "rooms/living/surfaces/bay/size"),
        ({"what": "thing", "path": "neighbors", "name": "Next door", "f:temperature": "60 F"},
         "neighbors/next-door/temperature"),
        ({"what": "thing", "path": "what-ifs", "name": "Warmer", "f:set": "site/indoor", "f:to": "72 °F"},
         "what-ifs/warmer/changes/0/to"),
        ({"what": "thing", "path": "expectations", "name": "By hand", "f:of": "house/loss",
          "f:about": "36,000 Btu/h", "f:because": "a pencil"}, "expectations/by-hand/about"),
        ({"what": "value", "path": "circuits/upper/fittings", "key": "coupling", "value": "3"},
         "circuits/upper/fittings/coupling"),
        ({"what": "value", "path": "ranges", "key": "area/told", "value": "9 %"}, "ranges/area/told"),
        ({"what": "change", "path": "what-ifs/low-e/changes", "key": "set", "at": "site/indoor",
          "value": "68 °F"},
         "what-ifs/low-e/changes/1/to"),
        ({"what": "catalog", "path": "constructions", "row": "frame-wall-2x4-r-13", "name": "New wall"},
         "constructions/new-wall/catalog"),
    ],
)  # fmt: skip
def test_small_forms_make_things(client: TestClient, given: dict[str, str], there: str) -> None:
    from heatledger.job.text import walk

    before = client.app.state.book.head("ferrow-house")  # type: ignore[attr-defined]
    answer = client.post("/jobs/ferrow-house/make", data=given | {"rev": str(before.number)}, headers=SWAP)
    assert answer.status_code == 200, answer.text
    after = job_of(client, "ferrow-house")
    assert walk(after.source.base, there) is not None  # type: ignore[attr-defined]
    assert client.app.state.book.head("ferrow-house").number == before.number + 1  # type: ignore[attr-defined]


def test_a_decision_on_one_place_is_kept_and_can_be_taken_back(client: TestClient) -> None:
    key = "kitchen-short@rooms/kitchen"
    given = {"what": "thing", "path": "decisions", "key": key, "f:is": "leave it", "f:because": "rarely used",
             "f:by": "J. Ondry"}  # fmt: skip
    assert client.post("/jobs/ferrow-house/make", data=given, headers=SWAP).status_code == 200
    assert key in job_of(client, "ferrow-house").decisions  # type: ignore[attr-defined]
    page = client.get(f"/jobs/ferrow-house/house?pick={quote(f'decisions/{key}')}").text
    assert 'value="leave it"' in page
    rev = client.app.state.book.head("ferrow-house").number  # type: ignore[attr-defined]
    gone = {"do": "remove", "path": f"decisions/{key}", "rev": str(rev)}
    client.post("/jobs/ferrow-house/edit", data=gone, headers=SWAP)
    assert key not in job_of(client, "ferrow-house").decisions  # type: ignore[attr-defined]


def test_a_thing_without_a_name_is_asked_for_one(client: TestClient) -> None:
    answer = client.post("/jobs/ferrow-house/make", data={"what": "thing", "path": "rooms"}, headers=SWAP)
    assert answer.status_code == 422 and "has no name" in answer.text


def test_what_more_is_said_of_an_entry_comes_with_its_values(client: TestClient) -> None:
    html = client.get("/jobs/ferrow-house/known?path=constructions/old-window/u_value").text
    assert 'data-how="because" value="sash label"' in html and 'data-how="within"' in html


@pytest.mark.parametrize(
    ("of", "path", "one", "other"),
    [("tube", "", "copper-m-3/4", "frame-wall-2x4-r-11"),
     ("catalog", "constructions/wall-2x4/catalog", "frame-wall-2x4-r-11", "copper-m-3/4"),
     ("catalog", "emitters/living-base/catalog", "fin-tube-plain", "frame-wall-2x4-r-11"),
     ("through", "plant/mains/through", "unheated/basement", "rooms/living"),
     ("of", "expectations/x/of", "house/loss", "site/outdoor"), ("set", "", "site/outdoor", "house/loss")],
)  # fmt: skip
def test_fields_offer_what_fits(client: TestClient, of: str, path: str, one: str, other: str) -> None:
    html = client.get(f"/jobs/ferrow-house/offers?of={of}&path={path}").text
    assert f'value="{one}"' in html and f'value="{other}"' not in html
