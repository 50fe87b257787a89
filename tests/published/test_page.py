"""Claim: ``docs/checks.md`` says what the checks of this folder assert, and there are enough of them."""

import pytest

from heatledger.ledger.sources import Standing
from tests.published.checks import PAGE, PUBLISHED, check, page, run_all


def test_the_page_is_up_to_date(request):
    wanted = page(run_all())
    if request.config.getoption("--write-checks", default=False):
        PAGE.parent.mkdir(exist_ok=True)
        PAGE.write_text(wanted, "utf-8", newline="\n")
    assert PAGE.read_text("utf-8") == wanted, "run: pytest tests/published --write-checks"


def test_there_are_enough_checks_and_each_source_is_used():
    records = run_all()
    assert len(records) >= 40
    assert {each.source for each in records} == set(PUBLISHED)
    claims = [each.claim for each in records]
    assert len(set(claims)) == len(claims), "two checks make one claim"
    counted = {Standing.SEEN, Standing.SECOND_HAND, Standing.MEMORY}
    assert {each.standing for each in records} <= counted, "what we derived ourselves is no published check"


def test_a_check_fails_when_it_should():
    about = {"claim": "none", "source": "HOF-ch17", "place": "none", "standing": Standing.SEEN, "why": "none"}
    with pytest.raises(AssertionError, match=r"we have 1\.2"):
        check(expected=1.0, got=1.2, tolerance=0.1, **about)
    with pytest.raises(AssertionError, match="entries are missing"):
        check(expected=[1.0, 2.0], got=[1.0], tolerance=0.1, **about)
    with pytest.raises(AssertionError, match="reason"):
        check(expected=1.0, got=1.0, tolerance=0.1, **{**about, "why": ""})
    check(expected=[1.0, 2.0], got=[1.05, 2.0], tolerance=0.1, **about)
