"""Claim: a table that is not sound is refused with words that name the fault and its place.

``broken/`` holds a sample of each fault; its first line names the words the message must hold.
"""

from pathlib import Path

import pytest

from heatledger.catalog.loader import CatalogError, load_table, table_from

BROKEN = sorted((Path(__file__).parent / "broken").glob("*.yaml"))


@pytest.mark.parametrize("path", BROKEN, ids=lambda path: path.stem)
def test_a_broken_table_is_refused_in_words(path):
    text = path.read_text("utf-8")
    words = text.partition("\n")[0].removeprefix("# ").split(" | ")
    with pytest.raises(CatalogError) as refused:
        table_from(text, path.stem)
    for each in words:
        assert each in str(refused.value)
    assert path.stem in str(refused.value)


def test_there_is_a_sample_of_each_fault():
    assert len(BROKEN) >= 18


def test_no_such_table():
    with pytest.raises(CatalogError, match="no table called 'doorz'"):
        load_table("doorz")
    with pytest.raises(CatalogError, match="no table called"):
        load_table("../ledger/sources")


def test_all_faults_are_named_at_once():
    text = """
title: two faults
source: HOF-ch17
standing: SEEN
units: {u_value: W/(m²·K)}
bounds: {u_value: [0.1, 8]}
rows:
  a: {name: A, u_value: 90}
  b: {u_value: wide}
"""
    with pytest.raises(CatalogError) as refused:
        table_from(text, "both")
    message = str(refused.value)
    for words in ("row 1 (a)", "outside 0.1 to 8", "row 2 (b)", "no 'name'", "'wide', not a number"):
        assert words in message
