"""What the section shows is what the walls, floors and ceilings of the job look onto."""

from __future__ import annotations

from heatledger.drawings.house_section import Layer, Stack
from heatledger.drawings.house_view import drawn_spaces, house_view
from heatledger.ledger.presets import METRIC, US
from heatledger.papers.front import conditions
from heatledger.papers.groups import addresses
from tests.papers.demo_papers import designed, house

HEAD = """
format: 1
name: Stack of rooms
units: US
site:
  {outdoor: 0 °F, indoor: 70 °F, elevation: 100 ft, ground_temperature: 50 °F, ground_amplitude: 20 °F,
   soil_conductivity: 0.8 Btu/(h·ft·°F)}
constructions:
  wall: {kind: wall, u_value: U-0.08}
  roof: {kind: ceiling, u_value: U-0.04}
  deck: {kind: floor, u_value: U-0.05}
  edge: {kind: slab edge, f_factor: 0.7 Btu/(h·ft·°F)}
  buried: {kind: below-grade wall, r_value: R-5}
  dirt: {kind: below-grade floor, r_value: R-2}
air: {changes: 0.4 ACH}
"""
LEVELS = "levels: {low: {name: Low floor}, high: {name: High floor}}\n"
OUTSIDE = "w: {construction: wall, area: 160 ft2, beyond: outdoors}"
ROOF = "c: {construction: roof, area: 100 ft2, beyond: outdoors}"
GROUND = """w: {construction: buried, length: 20 ft, top: 0 ft, bottom: 6 ft, beyond: ground},
      f: {construction: dirt, width: 20 ft, depth: 6 ft, beyond: ground}"""


def room(id: str, level: str, *surfaces: str, indoor: str = "70 °F") -> str:
    held = ",\n      ".join(surfaces)
    return f"""
  {id}:
    {{level: {level}, floor_area: 100 ft2, ceiling_height: 8 ft, indoor: {indoor}, surfaces: {{
      {held}}}}}"""


def job(*rooms: str, unheated: str = "", levels: str = LEVELS) -> str:
    return f"{HEAD}{levels}{unheated}rooms:{''.join(rooms)}\n"


def view(text: str) -> Stack:
    return house_view(designed(text), US)


def space(id: str, *, ground: bool = False, walls: bool = False, height: str = "8 ft", name: str = "") -> str:
    surfaces = [GROUND] * ground + ["o: {construction: wall, area: 200 ft2, beyond: outdoors}"] * walls
    return f"""unheated:
  {id}:
    {{name: {name or id.title()}, floor_area: 100 ft2, ceiling_height: {height}, air: {{changes: 1 ACH}},
     surfaces: {{{", ".join(surfaces)}}}}}
"""


def over(id: str) -> str:
    return f"f: {{construction: deck, area: 100 ft2, beyond: unheated/{id}}}"


def test_rooms_between_walls_of_earth_are_drawn_below_grade() -> None:
    seen = view(job(room("den", "low", GROUND), room("hall", "high", OUTSIDE, ROOF)))
    assert [(each.called, each.buried) for each in seen.layers] == [
        ("High floor", False),
        ("Low floor", True),
    ]
    assert seen.base == ""


def test_a_strip_of_wall_above_the_earth_does_not_lift_the_basement_out_of_it() -> None:
    strip = "s: {construction: wall, area: 30 ft2, beyond: outdoors}"
    low, high = (
        view(job(room("den", "low", GROUND, wall), room("hall", "high", OUTSIDE, ROOF))).layers[-1]
        for wall in (strip, strip.replace("30 ft2", "300 ft2"))
    )
    assert low.buried
    assert not high.buried


def test_each_level_says_the_temperatures_of_its_own_rooms() -> None:
    text = job(
        room("den", "low", OUTSIDE, "e: {construction: edge, length: 20 ft, beyond: outdoors}"),
        room("bed", "high", OUTSIDE, ROOF, indoor="64.4 °F"),
        room("bath", "high", OUTSIDE, ROOF, indoor="75.2 °F"),
    )
    assert [each.text for each in view(text).layers] == ["64.4 to 75.2 °F", "70 °F"]
    assert house_view(designed(text), METRIC).layers[0].text == "18 to 24 °C"
    assert view(text).base == "slab"


def test_levels_written_from_the_top_are_drawn_as_they_stand() -> None:
    levels = "levels: {high: {name: High floor}, low: {name: Low floor}}\n"
    edge = "e: {construction: edge, length: 20 ft, beyond: outdoors}"
    seen = view(job(room("bed", "high", OUTSIDE, ROOF), room("den", "low", OUTSIDE, edge), levels=levels))
    assert [each.called for each in seen.layers] == ["High floor", "Low floor"]


def test_a_basement_is_drawn_whatever_its_name() -> None:
    seen = view(job(room("den", "low", OUTSIDE, ROOF, over("store")), unheated=space("store", ground=True)))
    below = seen.layers[-1]
    assert (below.called, below.heated, below.low, below.buried) == ("Store", False, False, True)
    assert below.text.endswith("°F")


def test_a_low_space_with_walls_to_outdoors_stands_above_the_ground() -> None:
    under = space("void", walls=True, height="2.5 ft")
    below = view(job(room("den", "low", OUTSIDE, over("void")), unheated=under)).layers[-1]
    assert (below.low, below.buried) == (True, False)


def test_a_low_space_of_which_no_side_is_said_lies_in_the_ground() -> None:
    under = space("void", height="3 ft")
    below = view(job(room("den", "low", OUTSIDE, over("void")), unheated=under)).layers[-1]
    assert (below.low, below.buried) == (True, True)


def test_a_garage_under_the_floor_is_a_full_story_and_one_beside_is_left_out() -> None:
    under = space("garage", walls=True)
    made = designed(job(room("den", "low", OUTSIDE, over("garage")), unheated=under))
    assert house_view(made, US).layers[-1] == Layer(
        house_view(made, US).layers[-1].text, "Garage", heated=False
    )
    beside = "g: {construction: wall, area: 80 ft2, beyond: unheated/garage}"
    made = designed(job(room("den", "low", OUTSIDE, beside), unheated=under))
    assert [each.called for each in house_view(made, US).layers] == ["Low floor"]
    assert drawn_spaces(made) == set()
    notes = {each.name: each.note for each in conditions(made, addresses(made, US, []))}
    assert notes["Garage"] == "heat balance, not drawn"


def test_an_attic_is_one_that_a_ceiling_looks_onto() -> None:
    up = "c: {construction: roof, area: 100 ft2, beyond: unheated/top}"
    made = designed(job(room("den", "low", OUTSIDE, up), unheated=space("top", walls=True)))
    assert house_view(made, US).attic_text.endswith("°F")
    assert drawn_spaces(made) == {"top"}
    apart = designed(job(room("den", "low", OUTSIDE, ROOF), unheated=space("attic", walls=True)))
    assert house_view(apart, US).attic_text == ""


def test_a_floor_over_outdoors_stands_on_piers_and_one_not_said_on_nothing() -> None:
    deck = "f: {construction: deck, area: 100 ft2, beyond: outdoors}"
    assert view(job(room("den", "low", OUTSIDE, deck))).base == "piers"
    assert view(job(room("den", "low", OUTSIDE))).base == ""


def test_what_is_not_given_is_not_drawn_as_a_number() -> None:
    seen = view(job(room("den", "low", OUTSIDE)).replace("outdoor: 0 °F, indoor: 70 °F, ", ""))
    assert seen.outdoors == "not given"
    assert seen.layers[0].text == "70 °F"


def test_the_demo_house_stands_over_its_basement_under_its_attic() -> None:
    seen = house_view(house("ferrow-house"), US)
    assert [each.called for each in seen.layers] == ["Upper floor", "Ground floor", "Basement"]
    assert seen.layers[-1].buried
    assert seen.attic_text
    assert drawn_spaces(house("ferrow-house")) == {"basement", "attic"}
