"""Findings on what the job says beside the house: expectations, what-ifs, decisions, limits."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan

from heatledger.job.errors import JobErrors
from heatledger.ledger import dimensions as d
from heatledger.ledger.findings import Finding, Mend, NotChecked, Weight
from heatledger.ledger.sources import JUDGMENT, SEEN, cite
from heatledger.steps.review.kinds import KINDS, Limit, Look, finding, set_to

Found = Iterator[Finding | NotChecked]
BY_HAND = frozenset({"decision-without-finding", "code-not-named"})
"""Kinds that are found from the others, after all of them were run."""


@finding(
    "expectation-missed",
    Weight.NOTE,
    cite("", "the designer's own expectation", JUDGMENT),
    fires="A figure is further from what the job expects of it than the job allows.",
    why="one of the entries moved it, or the expectation was wrong",
    mend="Find the entry that moved it, or rewrite the expectation.",
)
def _expectation_missed(look: Look) -> Found:
    for id, each in look.house.job.expectations.items():
        path = f"expectations/{id}"
        figure = look.figure(each.of)
        if figure is None or isnan(figure) or isnan(each.about) or isnan(each.within):
            words = f"a figure at {each.of}" if figure is None else ""
            yield look.wants(path, figure, words=words)
            continue
        if figure.dimension is not each.about.dimension:
            yield look.wants(
                path, words=f"an expectation of the kind {figure.dimension.name}, as {each.of} is"
            )
            continue
        allowed = float(each.within) * (abs(float(each.about)) if each.within.dimension is d.RATIO else 1.0)
        if abs(float(figure) - float(each.about)) > allowed * (1 + 1e-9):
            to = look.text(float(figure), figure.dimension)
            why = f", by {each.because}" if each.because else ""
            yield look.found(
                path,
                f"{look.say(each.about)} was expected for {look.design.names.title(figure)}{why}; it is "
                f"{look.say(figure)}.",
                figure,
                (
                    Mend("Find the entry that moved it."),
                    Mend("Rewrite the expectation.", (set_to(f"{path}/about", to),)),
                ),
            )


def what_if_losses(look: Look) -> dict[str, float | str]:
    """Loss of the house with each what-if that is not laid yet, in W; the reason where it cannot be laid."""
    kept: dict[str, dict[str, float | str]] = look.design.__dict__
    if "what_if_losses" not in kept:
        found: dict[str, float | str] = {}
        job = look.house.job
        for id in job.what_ifs:
            if id in job.laid:
                continue
            try:
                found[id] = float(look.design.with_what_if(id).losses.house.loss)
            except JobErrors as wrong:
                found[id] = str(wrong.errors[0].message)
        kept["what_if_losses"] = found
    return kept["what_if_losses"]


@finding(
    "future-work-changes-load",
    Weight.NOTE,
    cite("HES-LBL", "ask what changes are planned", SEEN),
    fires="A what-if of the job lowers the loss of the house by more than {0}. It is to be decided where "
    "the job names a plant.",
    why="emitters sized for today run with cooler water tomorrow; a boiler only cycles more",
    mend="Size the plant for the house after the work, do the work first, or choose a plant that turns down "
    "far.",
    limits=(Limit("future-work-changes-load", "25 %", d.RATIO, "fall of the loss"),),
)
def _future_work_changes_load(look: Look) -> Found:
    now = look.house.loss
    plant = look.house.job.system.plant.boiler is not None or look.house.job.reserved.get("heat_sources")
    if not now > 0:
        return
    for id, after in what_if_losses(look).items():
        name = look.house.job.what_ifs[id].name
        if isinstance(after, str):
            yield look.wants(f"what-ifs/{id}", words=f"a what-if that can be laid: {after}")
        elif after < (1 - look.limit) * now - 1e-6:
            yield look.found(
                f"what-ifs/{id}",
                f"After {name[:1].lower()}{name[1:]} the house loses {look.say(after, d.HEAT_RATE)} in "
                "place of "
                f"{look.say(now, d.HEAT_RATE)}; a plant for today is {look.say(now / after, d.RATIO)} of "
                "that.",
                look.house.losses.house.loss,
                (
                    Mend("Size the plant for the house after the work: lay the what-if.", _changes(look, id)),
                    Mend("Do the work first."),
                    Mend("Choose a plant that turns down far."),
                ),
                Weight.DECIDE if plant else None,
            )


def _changes(look: Look, id: str) -> tuple[dict[str, object], ...]:
    """The changes of a what-if, as a mend writes them."""
    from heatledger.job.text import plain

    changes: list[dict[str, object]] = []
    for each in look.house.job.what_ifs[id].changes:
        change: dict[str, object] = {each.kind: each.path}
        if each.to is not None:
            change["to"] = plain(each.to)
        changes.append(change)
    return tuple(changes)


@finding(
    "limit-of-nothing",
    Weight.NOTE,
    cite("", "limits of the job", JUDGMENT),
    fires="The job sets a limit under a name that no finding has.",
    why="it changes nothing",
    mend="Correct the name, or take the limit out.",
)
def _limit_of_nothing(look: Look) -> Found:
    names = {limit.name for kind in KINDS.values() for limit in kind.limits}
    for name, text in look.house.job.limits.items():
        if name not in names:
            yield look.found(
                f"limits/{name}",
                f"The limit {name}: {text} belongs to no finding.",
                "",
                (Mend("Correct the name."), Mend("Take it out.", ({"remove": f"limits/{name}"},))),
            )


@finding(
    "section-not-read-yet",
    Weight.NOTE,
    cite("", "sections that format 1 reserves", JUDGMENT),
    fires="The job has a section that this version keeps and does not read.",
    why="nothing in it counts in any result yet",
    mend="Leave it for a later version, or take it out.",
)
def _section_not_read_yet(look: Look) -> Found:
    sections = [each for each, inside in look.house.job.reserved.items() if inside]
    if sections:
        names = " and ".join([*([", ".join(sections[:-1])] if sections[:-1] else []), sections[-1]])
        yield look.found(
            sections[0], f"Kept as {'it is' if len(sections) == 1 else 'they are'} and not read yet: {names}."
        )


@finding(
    "measured-outside",
    Weight.NOTE,
    cite("", "inside and outside dimensions", JUDGMENT),
    fires="The job says that it was measured outside.",
    why="nothing is taken off for the thickness of walls, so floor areas and volumes of air come out larger "
    "than the rooms are",
    mend="Give floor areas and ceiling heights from inside, and keep the walls as measured outside.",
)
def _measured_outside(look: Look) -> Found:
    sized = [each for each in look.house.job.rooms.values() if each.length is not None]
    if look.house.job.measured == "outside" and sized:
        rooms = "one room" if len(sized) == 1 else f"{len(sized)} rooms"
        yield look.found(
            "measured",
            f"Measured outside: floor area and volume of air of {rooms} follow from the size as typed, the "
            "thickness of walls in it.",
        )


@finding(
    "code-not-named",
    Weight.DECIDE,
    cite("", "the local office decides, and editions differ", JUDGMENT),
    fires="A finding rests on a model code, and the job names no adopted code under `codes`.",
    why="the local office decides which code holds, and editions differ",
    mend="Name the code and its edition under `codes`, or let the papers say that it is the model code.",
)
def _code_not_named(look: Look) -> Found:
    yield from ()


def code_from(look: Look, found: list[Finding]) -> Finding | None:
    """The finding that no code is named, when one of the others rests on a code."""
    lines = sorted({each.citation.key for each in found if each.citation.key in CODES})
    if not lines or look.house.job.system.codes.adopted:
        return None
    return look.found(
        "codes", f"No adopted code is named, so {', '.join(lines)} stands here as a model code only."
    )


CODES = ("IRC-303",)
"""Sources that are codes for dwellings, which a place may adopt or change."""


@finding(
    "decision-without-finding",
    Weight.NOTE,
    cite("", "decisions of the job", JUDGMENT),
    fires="The job decides on a finding that does not stand.",
    why="the reason for the decision is gone, or its name or path is misspelled",
    mend="Take the decision out, or correct its name.",
)
def _decision_without_finding(look: Look) -> Found:
    yield from ()


def decisions_left(look: Look, found: list[Finding]) -> list[Finding]:
    """Decisions for which there is no finding."""
    left = []
    for key, decision in look.house.job.decisions.items():
        if not any(each.id == decision.finding and decision.path in ("", each.where) for each in found):
            left.append(
                look.found(
                    f"decisions/{decision.finding}",
                    f"The decision on {key.replace('@', ' at ')} meets no finding.",
                    "",
                    (Mend("Take it out, or correct its name."),),
                )
            )
    return left
