"""Dates and times as a reader says them: today, yesterday, December 6 or 6 December."""

from __future__ import annotations

from datetime import datetime, timedelta

from heatledger.ledger.presets import METRIC, Preset

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip


def day(at: datetime, units: Preset, now: datetime | None = None) -> str:
    """The day of a moment: today, yesterday, or the date; with the year where it is not this one."""
    here, today = _local(at), _local(now or datetime.now().astimezone())
    if here.date() == today.date():
        return "today"
    if here.date() == today.date() - timedelta(days=1):
        return "yesterday"
    month = MONTHS[here.month - 1]
    if here.year == today.year:
        return f"{here.day} {month}" if units.day_first else f"{month} {here.day}"
    return f"{here.day} {month} {here.year}" if units.day_first else f"{month} {here.day}, {here.year}"


def clock(at: datetime, units: Preset) -> str:
    """The time of day: 14:05 for a metric reader, 2:05 pm for the others."""
    here = _local(at)
    if units is METRIC:
        return f"{here.hour}:{here.minute:02}"
    return f"{here.hour % 12 or 12}:{here.minute:02} {'am' if here.hour < 12 else 'pm'}"


def moment(at: datetime, units: Preset, now: datetime | None = None, always: bool = False) -> str:
    """The day, with the time of day where it is today; ``always`` gives the time for any day."""
    said = day(at, units, now)
    return f"{said}, {clock(at, units)}" if always or said == "today" else said


def _local(at: datetime) -> datetime:
    return at.astimezone()
