"""Five thousand edits over three jobs in one process, and whether its memory grows.

python benchmarks/soak_app.py [number of edits]
"""

from __future__ import annotations

import random
import sys
from time import perf_counter

import psutil
from app_client import Client, Tab, app_with_house

EDITS, EVERY, WARM = 5000, 250, 1000
MOST_MEGABYTES, MOST_GROWTH = 250.0, 1.0
"""Megabytes of the process at its largest, and for a thousand edits once it is warm."""
SHEETS = ("house", "heat-loss", "emitters", "piping", "boiler-room", "controls", "startup", "papers")
VALUES = {
    "site/outdoor": ("-2 °F", "0 °F", "3 °F", "5 °F"),
    "plant/supply": ("170 °F", "165 °F", "160 °F", "175 °F"),
    "readings/supply": ("150 °F", "148 °F", "155 °F", "soup"),
    "air/changes": ("0.5 ACH", "0.4 ACH", "0.6 ACH", "a lot"),
    "name": ("Twenty rooms", "House on the hill", "House by the pond", "House"),
}
WORKINGS = ("house/loss", "house/supply", "plant/load")


def main(edits: int = EDITS) -> int:
    """Run the edits, print memory as it goes, then how it grew; 1 when it is too large or grew too much."""
    process, dice = psutil.Process(), random.Random(5)
    points: list[tuple[int, float]] = []
    with app_with_house() as (client, house):
        demos = [each.id for each in client.app.state.book.jobs() if each.id != house][:2]
        tabs = [Tab(client, each, "heat-loss") for each in (house, *demos)]
        began = perf_counter()
        for number in range(1, edits + 1):
            tabs = [one(client, each, dice) if at == number % len(tabs) else each
                    for at, each in enumerate(tabs)]  # fmt: skip
            if number % EVERY == 0:
                megabytes = process.memory_info().rss / 1e6
                points.append((number, megabytes))
                rate = number / (perf_counter() - began)
                print(f"{number:6} edits  {megabytes:6.1f} MB  {rate:5.1f} a second", flush=True)
    return told(points)


def one(client: Client, tab: Tab, dice: random.Random) -> Tab:
    """One edit, now and then with what a person does beside it; the tab that is open then."""
    if dice.random() < 0.1:
        tab = Tab(client, tab.job, dice.choice(SHEETS))
    if dice.random() < 0.08:
        client.get(f"/jobs/{tab.job}/what-if")
        client.get(
            f"/jobs/{tab.job}/trial?sheet={tab.sheet}&token={tab.token}&path=plant/supply"
            f"&value={dice.randrange(120, 180)}%20%C2%B0F", True,
        )  # fmt: skip
    if dice.random() < 0.15:
        tab.working(dice.choice(WORKINGS))
    if dice.random() < 0.1 and 'data-undo="yes"' in tab.opened.text:
        tab.move("undo")
        return tab if not tab.waits else followed(tab)
    path = dice.choice(list(VALUES))
    tab.edit(path, dice.choice(VALUES[path]))
    return followed(tab) if tab.waits else tab


def followed(tab: Tab) -> Tab:
    """The tab with what follows an edit."""
    tab.after()
    return tab


def told(points: list[tuple[int, float]]) -> int:
    """Print the growth by least squares once warm, and whether both bounds hold."""
    warm = [each for each in points if each[0] >= WARM] or points
    largest = max(megabytes for _, megabytes in points)
    growth = 1000 * slope(warm)
    print(f"largest {largest:.1f} MB of {MOST_MEGABYTES:.0f}; growth {growth:+.2f} MB for a thousand edits "
          f"after the first {WARM}")  # fmt: skip
    return 0 if largest <= MOST_MEGABYTES and growth <= MOST_GROWTH else 1


def slope(points: list[tuple[int, float]]) -> float:
    """By how much the second grows for one of the first, by least squares."""
    if len(points) < 2:
        return 0.0
    middle = [sum(each[i] for each in points) / len(points) for i in (0, 1)]
    over = sum((x - middle[0]) * (y - middle[1]) for x, y in points)
    return over / sum((x - middle[0]) ** 2 for x, _ in points)


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:2])))
