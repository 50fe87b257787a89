"""Claim: the heat through surfaces keeps its laws, and a whole house adds up. Computed cases and laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.air import air_loss_by_hand
from heatledger.physics.envelope import (
    areas_total,
    conductance,
    heat_loss,
    house_coefficient,
    loss_per_area,
    net_area,
    opening_area,
    rectangle_area,
    share,
    temperature_difference,
    transmission_loss,
    u_from_r,
)
from heatledger.physics.ground import edge_conductance, slab_edge_loss

AREA, U = st.floats(0.1, 300.0), st.floats(0.02, 7.0)
INDOOR, OUTDOOR = st.floats(285.0, 300.0), st.floats(220.0, 284.0)


def si(value, unit, absolute=False):
    return UNITS[unit].to_si(value, absolute)


ENDS = {"indoor": si(70, "°F", True), "outdoor": si(0, "°F", True)}
# Floor ft², exposed wall ft, window ft², door ft²; loss in Btu/h.
ROOMS = {
    "living": (320, 36, 48, 20, 7093.80),
    "kitchen": (320, 36, 30, 20, 6568.38),
    "bed 1": (240, 32, 24, 0, 5111.12),
    "bed 2": (240, 32, 24, 0, 5111.12),
}


def room_loss(floor, wall, window, door):
    gross = rectangle_area(width=si(wall, "ft"), height=si(8, "ft"))
    openings = areas_total(areas=[si(window, "ft²"), si(door, "ft²")])
    surfaces = [
        (net_area(gross=gross, openings=openings), 0.083),
        (si(window, "ft²"), 0.50),
        (si(door, "ft²"), 0.35),
        (si(floor, "ft²"), 0.030),
    ]
    through = [transmission_loss(area=area, u_value=si(u, "Btu/(h·ft²·°F)"), **ENDS) for area, u in surfaces]
    slab = slab_edge_loss(f_factor=si(0.54, "Btu/(h·ft·°F)"), edge=si(wall, "ft"), **ENDS)
    air = air_loss_by_hand(volume=si(floor * 8, "ft³"), changes=si(0.5, "ACH"), **ENDS)
    return heat_loss(parts=[*through, slab, air])


def test_a_house_room_by_room():
    """Computed: one story on a slab, four rooms."""
    losses = [room_loss(*row[:4]) for row in ROOMS.values()]
    assert [UNITS["Btu/h"].from_si(each) for each in losses] == [
        pytest.approx(row[4], abs=0.01) for row in ROOMS.values()
    ]
    house = heat_loss(parts=losses)
    assert UNITS["Btu/h"].from_si(house) == pytest.approx(23884.42, abs=0.01)
    per_degree = house_coefficient(loss=house, **ENDS)
    assert UNITS["Btu/(h·°F)"].from_si(per_degree) == pytest.approx(341.206, abs=1e-3)
    flux = loss_per_area(loss=house, floor_area=si(1120, "ft²"))
    assert UNITS["Btu/(h·ft²)"].from_si(flux) == pytest.approx(21.325, abs=1e-3)
    assert sum(share(part=each, whole=house) for each in losses) == pytest.approx(1.0)


def test_one_wall():
    """Computed: 10 by 8 ft, R-22, 70 and 43 °F."""
    loss = transmission_loss(
        area=rectangle_area(width=si(10, "ft"), height=si(8, "ft")),
        u_value=u_from_r(r_value=si(22, "h·ft²·°F/Btu")),
        indoor=si(70, "°F", True), outdoor=si(43, "°F", True),
    )  # fmt: skip
    assert UNITS["Btu/h"].from_si(loss) == pytest.approx(98.18, abs=0.01)


@given(area=AREA, u=U, indoor=INDOOR, outdoor=OUTDOOR, cut=st.floats(0.01, 0.99))
def test_splitting_a_wall_changes_nothing(area, u, indoor, outdoor, cut):
    whole = transmission_loss(area=area, u_value=u, indoor=indoor, outdoor=outdoor)
    halves = [
        transmission_loss(area=area * each, u_value=u, indoor=indoor, outdoor=outdoor)
        for each in (cut, 1 - cut)
    ]
    assert heat_loss(parts=halves) == pytest.approx(whole)


@given(area=AREA, u=U, indoor=INDOOR, outdoor=OUTDOOR, more=st.floats(1.001, 2.0))
def test_more_of_anything_loses_more(area, u, indoor, outdoor, more):
    loss = transmission_loss(area=area, u_value=u, indoor=indoor, outdoor=outdoor)
    assert loss > 0
    assert transmission_loss(area=area * more, u_value=u, indoor=indoor, outdoor=outdoor) > loss
    assert transmission_loss(area=area, u_value=u * more, indoor=indoor, outdoor=outdoor) > loss
    assert transmission_loss(area=area, u_value=u, indoor=indoor, outdoor=outdoor - more) > loss
    difference = temperature_difference(indoor=indoor, outdoor=outdoor)
    assert loss == pytest.approx(conductance(area=area, u_value=u) * difference)


@given(f=st.floats(0.2, 4.0), edge=st.floats(0.0, 80.0), indoor=INDOOR, outdoor=OUTDOOR)
def test_an_edge_loses_its_conductance_times_the_difference(f, edge, indoor, outdoor):
    loss = slab_edge_loss(f_factor=f, edge=edge, indoor=indoor, outdoor=outdoor)
    assert loss == pytest.approx(edge_conductance(f_factor=f, edge=edge) * (indoor - outdoor))


@given(gross=st.floats(10.0, 100.0), area=st.floats(0.1, 2.0), count=st.integers(0, 5))
def test_wall_and_openings_make_up_the_gross_area(gross, area, count):
    openings = opening_area(area=area, count=count)
    assert areas_total(areas=[net_area(gross=gross, openings=openings), openings]) == pytest.approx(gross)


def test_no_parts_lose_nothing():
    assert heat_loss(parts=[]) == 0
    assert areas_total(areas=[]) == 0
