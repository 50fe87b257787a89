"""The guide of errors has one section for each code, with a line that gives it and one that does not."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from heatledger.job.errors import CODES, JobError
from heatledger.job.parsing import tree_of

GUIDE = Path(__file__).parents[2] / "docs" / "look-up" / "errors.md"
TEXT = GUIDE.read_text("utf-8")
SECTIONS = {
    each.group(1): each.group(2) for each in re.finditer(r"^### (\S+)\n(.*?)(?=^##|\Z)", TEXT, re.M | re.S)
}
BLOCK = re.compile(r"^(Wrong|Right):\n\n```(yaml|text)\n(.*?)\n```$", re.M | re.S)


def test_the_guide_has_the_codes_and_no_others() -> None:
    assert re.findall(r"^### (\S+)$", TEXT, re.M) == list(CODES)


@pytest.mark.parametrize("code", CODES)
def test_each_section_has_its_meaning_and_two_examples(code: str) -> None:
    section = SECTIONS[code]
    assert section.strip().startswith(CODES[code])
    blocks = BLOCK.findall(section)
    assert [each[0] for each in blocks] == ["Wrong", "Right"]
    assert blocks[0][2] != blocks[1][2]
    if blocks[1][1] == "yaml":
        assert tree_of(blocks[1][2]).entries


def test_a_code_outside_the_list_is_refused() -> None:
    with pytest.raises(KeyError, match="not in the list"):
        JobError("no-such-code", "", 0, "words")
