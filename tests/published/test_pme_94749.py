"""Claim: a buffer tank keeps a burner on as long as PME-94749 works out."""

from heatledger.ledger.sources import SEEN
from heatledger.physics.firing import buffer_volume
from tests.published.checks import check, into, si


def test_buffer():
    got = buffer_volume(
        time=si(10, "min"), least_output=si(48_000, "Btu/h"), load=si(2_000, "Btu/h"), rise=si(20, "°F")
    )
    check(
        claim="Buffer for 10 minutes at 48,000 Btu/h with 2,000 taken, 20 °F", source="PME-94749",
        place="formula and figures of a towel bar, worked out", standing=SEEN, unit="gal",
        expected=46, got=into(got, "gal"),
        tolerance=0.46, why="1 %: the article rounds 8.33 × 60 to 500",
    )  # fmt: skip
