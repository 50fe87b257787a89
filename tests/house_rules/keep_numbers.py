"""Keep the results of the demo jobs, so that none of them moves without a word to the reader.

    python tests/house_rules/keep_numbers.py "words of the changelog's numbers entry"

writes ``demo_numbers.json`` anew. When a result moved, the words must stand in a **numbers** entry of
``CHANGELOG.md`` that names the job.
"""

from __future__ import annotations

import json
import re
import sys
from pathlib import Path

from heatledger import design, load_job

ROOT = Path(__file__).resolve().parents[2]
KEPT = Path(__file__).with_name("demo_numbers.json")
SMALLEST_MOVE_W = 0.05
"""What moves less than this is rounding of another order of the same sums."""

Results = dict[str, float]


def now() -> dict[str, Results]:
    """Watts of the house and of every room, by the name of the demo job."""
    found = {}
    for path in sorted((ROOT / "src" / "heatledger" / "examples").glob("*.yaml")):
        job = load_job(path)
        house = design(job)
        paths = ["house/loss", *(f"rooms/{each}/loss" for each in job.rooms)]
        found[job.name] = {each: round(float(house[each]), 2) for each in paths}
    return found


def kept() -> dict[str, Results]:
    """The results as they were kept."""
    return dict(json.loads(KEPT.read_text(encoding="utf-8"))["watts"]) if KEPT.exists() else {}


def moved(before: dict[str, Results], after: dict[str, Results]) -> list[str]:
    """Names of the jobs whose results differ, are new or are gone."""

    def same(old: Results | None, new: Results | None) -> bool:
        if old is None or new is None or set(old) != set(new):
            return False
        return all(abs(old[each] - new[each]) <= SMALLEST_MOVE_W for each in old)

    return [name for name in sorted({*before, *after}) if not same(before.get(name), after.get(name))]


def numbers_entries(changelog: str) -> list[str]:
    """The changelog's entries of the kind numbers, each on one line."""
    entries = re.findall(r"^- \*\*numbers\*\* (.*?)(?=^- |^#|\Z)", changelog, re.MULTILINE | re.DOTALL)
    return [" ".join(each.split()) for each in entries]


def names_them(note: str, jobs: list[str], entries: list[str]) -> bool:
    """True when one entry holds the note and names every job."""
    return bool(note.strip()) and any(note in each and all(job in each for job in jobs) for each in entries)


def main(note: str = "") -> int:
    """Write what is kept; 1 when a result moved and the changelog does not say so."""
    after = now()
    jobs = moved(kept(), after)
    entries = numbers_entries((ROOT / "CHANGELOG.md").read_text(encoding="utf-8"))
    if jobs and not names_them(note, jobs, entries):
        print(f"These moved: {', '.join(jobs)}. Say so in a **numbers** entry of CHANGELOG.md that names")
        print("them, then give some words of that entry as the argument.")
        return 1
    if jobs:
        text = json.dumps({"note": note, "jobs": jobs, "watts": after}, indent=1, ensure_ascii=False)
        KEPT.write_text(text + "\n", encoding="utf-8", newline="\n")
    print(f"kept anew: {', '.join(jobs)}" if jobs else "nothing moved")
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:2]))
