"""Claim: loss below grade follows HOF-ch18; witness: its tables of walls and floors."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.ground import below_grade_floor_u, below_grade_wall_u
from tests.published.checks import check

SOIL, BARE = 1.4, 0.259
WALLS = {
    0.3: (2.468, 0.769, 0.458, 0.326),
    0.6: (1.898, 0.689, 0.427, 0.310),
    0.9: (1.571, 0.628, 0.401, 0.296),
    1.2: (1.353, 0.579, 0.379, 0.283),
    1.5: (1.195, 0.539, 0.360, 0.272),
    1.8: (1.075, 0.505, 0.343, 0.262),
    2.1: (0.980, 0.476, 0.328, 0.252),
    2.4: (0.902, 0.450, 0.315, 0.244),
}
FLOORS = {
    0.3: (0.370, 0.335, 0.307, 0.283),
    0.6: (0.310, 0.283, 0.261, 0.242),
    0.9: (0.271, 0.249, 0.230, 0.215),
    1.2: (0.242, 0.224, 0.208, 0.195),
    1.5: (0.220, 0.204, 0.190, 0.179),
    1.8: (0.202, 0.188, 0.176, 0.166),
    2.1: (0.187, 0.175, 0.164, 0.155),
}


def test_walls():
    got = [
        below_grade_wall_u(soil=SOIL, r_value=BARE + added, top=0.0, bottom=depth)
        for depth in WALLS
        for added in (0.0, 0.88, 1.76, 2.64)
    ]
    check(
        claim="U-values of walls below grade, by depth and insulation", source="HOF-ch18", place="Table 22",
        standing=SEEN, unit="W/(m²·K)", expected=[each for row in WALLS.values() for each in row], got=got,
        tolerance=0.0065, why="the bare column fits R 0.26, where R 0.259 is printed",
    )  # fmt: skip


def test_floors():
    got = [
        below_grade_floor_u(soil=SOIL, r_value=BARE, width=width, depth=depth)
        for depth in FLOORS
        for width in (6.0, 7.0, 8.0, 9.0)
    ]
    check(
        claim="U-values of floors below grade, by depth and width", source="HOF-ch18", place="Table 23",
        standing=SEEN, unit="W/(m²·K)", expected=[each for row in FLOORS.values() for each in row], got=got,
        tolerance=0.0035, why="the table fits a conductivity of 1.385 W/(m·K), where 1.4 is printed",
    )  # fmt: skip
