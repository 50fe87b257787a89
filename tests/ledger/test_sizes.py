"""Sizes of pipe and tube are names: one spelling for each, and no lengths."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from heatledger.ledger.notation import NotationError
from heatledger.ledger.sizes import SizeKind, read_size
from tests.ledger.refusing import CODES


@pytest.mark.parametrize(("texts", "name", "kind"), [
    ("1 1/4\"|1-1/4\"|1¼\"|1 1/4 in|1 1/4 in.|1.25 in|NPS 1 1/4|1 1/4|5/4 in|1-1/4 inch|1 1/4″|"
     "1 4/16 in", "1 1/4 in", SizeKind.INCH),
    ("3/4 in|3/4\"|¾ in|3/4|0.75 in|6/8\"", "3/4 in", SizeKind.INCH),
    ("2 in|2\"|NPS 2|2.0 in", "2 in", SizeKind.INCH),
    ("DN 25|DN25|dn 25|DN-25", "DN 25", SizeKind.DN),
    ("16x2 mm|16 x 2 mm|16×2|16 × 2.0 mm|16 mm x 2 mm", "16x2 mm", SizeKind.WALL),
    ("20x2.25 mm|20x2.25mm", "20x2.25 mm", SizeKind.WALL),
    ("22 mm|22mm|⌀22 mm|OD 22 mm", "22 mm", SizeKind.OUTSIDE),
])  # fmt: skip
def test_sizes(texts, name, kind):
    for text in texts.split("|"):
        size = read_size(text)
        assert (size.name, size.kind, str(size)) == (name, kind, name)
    assert read_size(name) == read_size(texts.split("|")[0])


@pytest.mark.parametrize(("text", "code", "offers"), [
    ("25", "two-readings", ("25 in", "DN 25", "25 mm")), ("2", "two-readings", ("2 in", "2 mm")),
    ("DN 24", "not-a-size", ("DN 25", "DN 20")),
    ("DN 99999999", "not-a-size", ("DN 300", "DN 250")), ("3/4 ft", "not-a-size", ()),
    ("banana", "not-a-size", ()), ("0 in", "not-a-size", ()),
    ("16x9", "not-a-size", ()), ("1/3 in", "not-a-size", ()), ("-1 in", "not-a-size", ()),
    ("", "empty", ()), ("0x10", "not-a-size", ()),
    ("D 25", "not-a-size", ("DN 25", "any")), ("1,5 in", "not-a-size", ()), ("0 mm", "not-a-size", ()),
    ("999 in", "not-a-size", ()),
])  # fmt: skip
def test_what_is_no_size(text, code, offers):
    with pytest.raises(NotationError) as caught:
        read_size(text)
    assert caught.value.code == code
    if "any" in offers:
        assert caught.value.offers[0] == offers[0]
    else:
        assert caught.value.offers == offers
    for offer in caught.value.offers:
        assert read_size(offer).name


@given(st.text('0123456789/ ."inDNxm½', max_size=10))
def test_a_size_read_once_keeps_its_name(text):
    try:
        size = read_size(text)
    except NotationError as error:
        refused = error
    else:
        assert read_size(size.name) == size
        return
    assert refused.code in CODES
    assert all(read_size(offer).name for offer in refused.offers)
