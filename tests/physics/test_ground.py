"""Claim: losses to the ground keep the laws of their model. Computed cases and laws."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from heatledger.ledger.units import UNITS
from heatledger.physics.envelope import heat_loss, loss_to_space
from heatledger.physics.ground import (
    below_grade_floor_u,
    below_grade_wall_height,
    below_grade_wall_u,
    characteristic_width,
    equivalent_thickness,
    ground_design_temperature,
    slab_edge_loss,
    slab_u,
)

SOIL = st.floats(0.5, 3.5)
R = st.floats(0.1, 8.0)
DEPTH = st.floats(0.1, 3.0)


def test_a_wall_insulated_half_way():
    """Computed: a strip at a time, and their mean by height."""
    upper = below_grade_wall_u(soil=1.4, r_value=0.26 + 1.76, top=0.0, bottom=1.2)
    lower = below_grade_wall_u(soil=1.4, r_value=0.26, top=1.2, bottom=2.4)
    assert upper == pytest.approx(0.3793424, abs=1e-7)
    assert lower == pytest.approx(0.4521386, abs=1e-7)
    assert (upper + lower) / 2 == pytest.approx(0.4157405, abs=1e-7)


def test_a_basement():
    """Computed: 8 by 10 m, 1.8 m down, bare."""
    ground = ground_design_temperature(mean_ground=283.15, amplitude=10.0)
    wall = below_grade_wall_u(soil=1.4, r_value=0.259, top=0.0, bottom=1.8)
    floor = below_grade_floor_u(soil=1.4, r_value=0.259, width=8.0, depth=1.8)
    assert (wall, floor) == (pytest.approx(1.076694, abs=1e-6), pytest.approx(0.1779433, abs=1e-7))
    parts = [
        loss_to_space(area=area, u_value=u, indoor=293.15, beyond=ground)
        for area, u in ((64.8, wall), (80.0, floor))
    ]
    assert parts == [pytest.approx(1395.40, abs=0.01), pytest.approx(284.71, abs=0.01)]
    assert heat_loss(parts=parts) == pytest.approx(1680.10, abs=0.01)


@pytest.mark.parametrize(("depth", "wall"), [(1, 0.432), (4, 0.235), (8, 0.157)])
def test_the_formula_holds_in_inch_pound_units(depth, wall):
    """Computed: the same formula fed with feet and R in h·ft²·°F/Btu."""
    assert below_grade_wall_u(soil=0.8, r_value=1.47, top=0.0, bottom=depth) == pytest.approx(wall, abs=5e-4)


@pytest.mark.parametrize(
    ("depth", "width", "r", "u"),
    [(0.6, 6, 0.259, 0.3129), (1.2, 8, 1.139, 0.1703), (1.8, 10, 2.019, 0.1185), (2.4, 6, 2.899, 0.1174)],
)
def test_insulated_deep_floors(depth, width, r, u):
    """Computed: insulation in the R-value of the floor."""
    assert below_grade_floor_u(soil=1.4, r_value=r, width=width, depth=depth) == pytest.approx(u, abs=5e-5)


@given(soil=SOIL, r=R, top=st.floats(0.0, 1.0), first=DEPTH, second=DEPTH)
def test_cutting_a_wall_into_strips_changes_nothing(soil, r, top, first, second):
    edges = (top, top + first, top + first + second)
    strips = [
        below_grade_wall_u(soil=soil, r_value=r, top=a, bottom=b) * below_grade_wall_height(top=a, bottom=b)
        for a, b in ((edges[0], edges[1]), (edges[1], edges[2]))
    ]
    whole = below_grade_wall_u(soil=soil, r_value=r, top=edges[0], bottom=edges[2])
    assert sum(strips) == pytest.approx(whole * (first + second), rel=1e-9)


@given(soil=SOIL, r=R, depth=DEPTH, deeper=st.floats(0.05, 2.0), more=st.floats(0.05, 5.0))
def test_deeper_or_better_insulated_loses_less(soil, r, depth, deeper, more):
    u = below_grade_wall_u(soil=soil, r_value=r, top=0.0, bottom=depth)
    assert below_grade_wall_u(soil=soil, r_value=r, top=0.0, bottom=depth + deeper) < u < 1 / r
    assert below_grade_wall_u(soil=soil, r_value=r + more, top=0.0, bottom=depth) < u
    floor = below_grade_floor_u(soil=soil, r_value=r, width=6.0, depth=depth)
    assert below_grade_floor_u(soil=soil, r_value=r, width=6.0, depth=depth + deeper) < floor
    assert below_grade_floor_u(soil=soil, r_value=r, width=6.0 + deeper, depth=depth) < floor


@pytest.mark.parametrize(("f_factor", "loss"), [(0.73, 6949.6), (0.54, 5140.8)])
def test_a_slab_by_its_edge(f_factor, loss):
    """Computed: 28 by 40 ft, 70 °F of difference."""
    got = slab_edge_loss(
        f_factor=UNITS["Btu/(h·ft·°F)"].to_si(f_factor), edge=UNITS["ft"].to_si(136),
        indoor=UNITS["°F"].to_si(70, absolute=True), outdoor=UNITS["°F"].to_si(0, absolute=True),
    )  # fmt: skip
    assert UNITS["Btu/h"].from_si(got) == pytest.approx(loss, abs=0.01)


@pytest.mark.parametrize(
    ("floor", "thickness", "u"), [(0.0, 0.72, 0.8214247), (1.0, 2.72, 0.4348801), (2.5, 5.72, 0.2580275)]
)
def test_a_slab_on_ground(floor, thickness, u):
    """Computed: 10 by 8 m; the last one is on the branch of well insulated slabs."""
    width = characteristic_width(area=80.0, perimeter=36.0)
    assert width == pytest.approx(4.444444, abs=1e-6)
    found = equivalent_thickness(wall=0.3, soil=2.0, film_inside=0.17, floor=floor, film_outside=0.04)
    assert found == pytest.approx(thickness)
    assert slab_u(soil=2.0, width=width, thickness=found) == pytest.approx(u, abs=1e-7)


@given(soil=SOIL, width=st.floats(1.0, 20.0), thickness=st.floats(0.1, 30.0), more=st.floats(0.01, 5.0))
def test_a_thicker_slab_loses_less(soil, width, thickness, more):
    # The two branches meet with a step of 0.7 % at most, so the law holds within each of them.
    assume((thickness < width) == (thickness + more < width))
    u = slab_u(soil=soil, width=width, thickness=thickness)
    assert slab_u(soil=soil, width=width, thickness=thickness + more) < u


@given(soil=SOIL, width=st.floats(1.0, 20.0))
def test_the_branches_of_the_slab_nearly_meet(soil, width):
    below = slab_u(soil=soil, width=width, thickness=width * (1 - 1e-9))
    assert slab_u(soil=soil, width=width, thickness=width) == pytest.approx(below, rel=0.007)
