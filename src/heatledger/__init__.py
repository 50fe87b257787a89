"""Heatledger: room by room heat loss that opens to the tape measure.

A job goes in, a design comes out, and every number of it can show its working::

    from heatledger import load_job, design, working, show, US

    house = design(load_job("kiln-lane.yaml"))
    print(working(house["rooms/kitchen/loss"], US, deep=True))

The names below are the whole public face; each is loaded when it is first used, so importing the
package costs next to nothing. ``docs/look-up/library.md`` shows every one of them at work.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from heatledger.job.errors import JobErrors
    from heatledger.job.load import load_job
    from heatledger.ledger.as_text import working
    from heatledger.ledger.figures import Figure
    from heatledger.ledger.findings import Finding
    from heatledger.ledger.presets import CANADIAN, METRIC, US
    from heatledger.ledger.show import show
    from heatledger.papers.write import write_papers
    from heatledger.steps.design import Design, design
    from heatledger.studies.uncertainty import band

__version__ = "0.1.0"

_HOMES = {
    "CANADIAN": "heatledger.ledger.presets",
    "Design": "heatledger.steps.design",
    "Figure": "heatledger.ledger.figures",
    "Finding": "heatledger.ledger.findings",
    "JobErrors": "heatledger.job.errors",
    "METRIC": "heatledger.ledger.presets",
    "US": "heatledger.ledger.presets",
    "band": "heatledger.studies.uncertainty",
    "design": "heatledger.steps.design",
    "load_job": "heatledger.job.load",
    "show": "heatledger.ledger.show",
    "working": "heatledger.ledger.as_text",
    "write_papers": "heatledger.papers.write",
}

__all__ = [
    "CANADIAN",
    "METRIC",
    "US",
    "Design",
    "Figure",
    "Finding",
    "JobErrors",
    "band",
    "design",
    "load_job",
    "show",
    "working",
    "write_papers",
]


def __getattr__(name: str) -> object:
    """Load a public name from its module the first time it is asked for."""
    home = _HOMES.get(name)
    if home is None:
        raise AttributeError(f"heatledger has no {name!r}; it has {', '.join(__all__)}")
    value: object = getattr(import_module(home), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    """The public names, whether loaded yet or not."""
    return sorted([*globals(), *__all__])
