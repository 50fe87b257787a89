"""What the tests of the job share: the demo texts, a small sound job, and the broken samples."""

from __future__ import annotations

from importlib import resources
from pathlib import Path

from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.job.model import Job
from heatledger.job.parsing import tree_of
from heatledger.job.text import plain

BROKEN = Path(__file__).parent / "broken"
EXAMPLES = ("ferrow-house", "lerch-cottage")

SMALL = """\
format: 1
units: US
site: {outdoor: 0 °F, indoor: 70 °F, elevation: 40 ft}
constructions:
  wall: {kind: wall, u_value: U-0.09}
  window: {kind: window, u_value: U-0.35}
levels:
  ground: {wall_height: 9 ft, ceiling_height: 8 ft}
air: {changes: 0.5 ACH}
rooms:
  kitchen:
    level: ground
    size: 12' × 11'
    surfaces:
      north-wall:
        construction: wall
        length: 12'
        beyond: outdoors
        openings:
          w1: {construction: window, size: 2' × 4'}
      inner-wall: {construction: wall, area: 99 ft2, beyond: rooms/hall}
  hall:
    level: ground
    floor_area: 100 ft2
"""


def example(name: str) -> str:
    """Text of a job that travels with the package."""
    return resources.files("heatledger.examples").joinpath(f"{name}.yaml").read_text("utf-8")


def small(*changes: tuple[str, str], add: str = "") -> Job:
    """The small sound job with texts replaced and lines added."""
    text = SMALL
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return read_job(text + add)


def codes(errors: JobErrors) -> list[str]:
    """The codes of everything that is wrong."""
    return [each.code for each in errors.errors]


def sample_index() -> dict[str, dict[str, object]]:
    """Code, and what-ifs to lay, of each broken sample by its file name."""
    return plain(tree_of((BROKEN / "index.yaml").read_text("utf-8")))  # type: ignore[no-any-return]
