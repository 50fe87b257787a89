"""What-ifs are written into a job, and adopted: the job then is what it was with them laid over it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from heatledger.job.edit_what_ifs import add_what_if, adopt_what_ifs, adopted_name
from heatledger.job.edits import EditError
from heatledger.job.errors import JobErrors
from heatledger.job.load import read_job
from heatledger.steps.design import design
from tests.job.samples import SMALL, SYSTEM, example

FERROW = example("ferrow-house")


def test_a_what_if_is_written_at_the_end() -> None:
    changes = [{"set": "constructions/wall/u_value", "to": {"is": "U-0.05", "known": "from plans"}}]
    text, id = add_what_if(SMALL, "Thick walls", changes)
    assert id == "thick-walls"
    assert text.startswith(SMALL)
    under = read_job(text).with_what_ifs(id)
    assert under.constructions["wall"].u_value is not None
    assert under.constructions["wall"].u_value.origin.typed == "U-0.05"
    more, second = add_what_if(text, "Thick walls", [{"remove": "rooms/hall"}, {"remove": "rooms/kitchen"}])
    assert (second, more.startswith(text)) == ("thick-walls-2", True)
    room = {"name": "Den", "level": "ground", "size": "9' × 9'", "surfaces": {"w": {"construction": "wall"}}}
    last, _ = add_what_if(FERROW, "Den: added", [{"add": "rooms/den", "to": room}])
    assert read_job(last).what_ifs["den-added"].changes[0].kind == "add"


@pytest.mark.parametrize("changes", [[], [{"to": "1"}], [{"set": "air/changes"}], [{"set": "a", "add": "b"}]])
def test_a_change_that_says_nothing_is_refused(changes: list[dict[str, str]]) -> None:
    with pytest.raises(EditError):
        add_what_if(SMALL, "X", changes)


def same_figures(text: str, ids: tuple[str, ...]) -> str:
    """The text with the what-ifs adopted, once its design is that of the job with them laid over it."""
    adopted = adopt_what_ifs(text, ids)
    under = design(read_job(text).with_what_ifs(*ids))
    now = design(read_job(adopted))
    assert {key: repr(float(each)) for key, each in now.figures.items()} == {
        key: repr(float(each)) for key, each in under.figures.items()
    }
    assert not set(ids) & set(read_job(adopted).what_ifs)
    return adopted


@given(st.sampled_from(["ferrow-house", "lerch-cottage", "tamm-street"]), st.data())
@settings(max_examples=10, deadline=None)
def test_adopted_what_ifs_give_the_figures_they_gave(name: str, data: st.DataObject) -> None:
    text = example(name)
    ids = data.draw(st.lists(st.sampled_from(sorted(read_job(text).what_ifs)), min_size=1, unique=True))
    adopted = same_figures(text, tuple(ids))
    left = [row for row in text.splitlines() if row.lstrip().startswith("#")]
    assert [row for row in adopted.splitlines() if row.lstrip().startswith("#")] == left


WALL = "rooms/kitchen/surfaces/north-wall"
CHANGES = [
    [{"set": f"{WALL}/length", "to": "13 ft"}],
    [{"set": f"{WALL}/area", "to": "90 ft2"}],
    [{"set": "constructions/wall", "to": {"kind": "wall", "r_value": "R-20"}}],
    [{"set": "constructions/wall/r_value", "to": "R-20"}],
    [{"set": WALL, "to": {"construction": "wall", "size": "12' × 9'", "beyond": "outdoors"}}],
    [{"set": "rooms/kitchen/air", "to": {"changes": "1 ACH"}}],
    [{"remove": f"{WALL}/openings/w1"}],
    [{"remove": "emitters/hall-iron"}, {"remove": "circuits/spokes/runs/hall-iron"}],
    [{"add": "rooms/den", "to": {"level": "ground", "size": "9' × 9'", "surfaces": {
        "w": {"construction": "wall", "length": "9 ft", "beyond": "outdoors"}}}}],
    [{"set": "plant/boiler/efficiency", "to": {"is": "90 %", "known": "from plans"}}],
    [{"set": "plant/tank", "to": {"volume": "2 gal"}}],
    [{"set": "site/outdoor", "to": "-9 °F"}, {"set": "site/ground_temperature", "to": "50 °F"}],
    [{"set": "rooms/hall/size", "to": "10' × 10'"}],
    [{"add": "rooms/hall/surfaces/end", "to": {
        "construction": "wall", "length": "4 ft", "beyond": "outdoors"}}],
]  # fmt: skip


@pytest.mark.parametrize("changes", CHANGES, ids=range(len(CHANGES)))
@pytest.mark.parametrize("form", ["plain", "windows"])
def test_every_kind_of_change_is_adopted(changes: list[dict[str, object]], form: str) -> None:
    text, id = add_what_if(SMALL + SYSTEM + "# the end\n", "Try", changes)
    if form == "windows":
        text = "\ufeff" + text.replace("\n", "\r\n")
    adopted = same_figures(text, (id,))
    assert "# the end" in adopted
    assert adopted.startswith("\ufeff") is (form == "windows")
    assert (adopted.count("\r\n") == adopted.count("\n")) is (form == "windows")


def test_several_go_together_or_are_refused() -> None:
    text, first = add_what_if(SMALL, "Cold", [{"set": "site/indoor", "to": "65 °F"}])
    text, second = add_what_if(text, "Warm", [{"set": "site/indoor", "to": "75 °F"}])
    with pytest.raises(JobErrors):
        adopt_what_ifs(text, (first, second))
    with pytest.raises(JobErrors):
        adopt_what_ifs(text, ("none",))
    kept = adopt_what_ifs(text, (second,))
    assert list(read_job(kept).what_ifs) == [first]
    assert adopted_name(read_job(text), (first, second)) == "What-ifs adopted: Cold, Warm"
    assert adopted_name(read_job(text), (first,)) == "What-if adopted: Cold"
