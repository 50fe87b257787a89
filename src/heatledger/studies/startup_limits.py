"""What readings of a startup may be off by: the job's own limit, else the usual one."""

from __future__ import annotations

from heatledger.job.errors import JobErrors
from heatledger.job.model import Job
from heatledger.job.system_model import Boiler
from heatledger.ledger.dimensions import Dimension
from heatledger.ledger.figures import Figure
from heatledger.steps import targets as t


class StartupLimits:
    """The limits of one job as figures. Those of the fire are never laxer than the usual ones."""

    def __init__(self, job: Job) -> None:
        self._job = job

    @property
    def charge(self) -> Figure:
        """How near the tank's charge has to be."""
        return self._own("tank-charge-unread", t.charge_within())

    @property
    def fill(self) -> Figure:
        """How near the cold gauge has to be."""
        return self._own("cold-gauge-off", t.fill_within())

    @property
    def supply(self) -> Figure:
        """How near the supply has to be to what the control is to ask for."""
        return self._own("supply-off-the-curve", t.supply_within())

    @property
    def flow(self) -> Figure:
        """How near the flow has to be, as a share."""
        return self._own("flow-measured-off", t.flow_within())

    @property
    def below_relief(self) -> Figure:
        """How far the hot gauge has to stay below the relief valve."""
        return self._own("hot-gauge-high", t.below_relief())

    @property
    def flue_co(self) -> Figure:
        """Most carbon monoxide of the flue gas, air free."""
        return self._strictest("co-in-flue-high", t.flue_carbon_monoxide(), least=False)

    @property
    def room_co(self) -> Figure:
        """Most carbon monoxide of the room."""
        return self._strictest("room-co-found", t.room_carbon_monoxide(), least=False)

    @property
    def draft(self) -> tuple[Figure, Figure]:
        """Weakest and strongest draft of a chimney."""
        weak, strong = t.draft_band()
        return self._strictest("flue-gas-spills", weak, least=False), strong

    def oxygen(self, boiler: Boiler) -> tuple[Figure, Figure]:
        """Least and most oxygen of the flue gas of a boiler."""
        low, high = t.oxygen_band(boiler)
        hooded = float(high) > float(t.oxygen_most())
        most = f"oxygen-out-of-band-{'hood' if hooded else 'most'}"
        return self._strictest("oxygen-out-of-band", low, least=True), self._strictest(
            most, high, least=False
        )

    def drop_off(self, due: Figure) -> float:
        """How far a drop may lie off (SI): by share or in degrees, whichever lets it lie further."""
        share, degrees = t.drop_within()
        share = self._own("drop-measured-off", share)
        degrees = self._own("drop-measured-off-degrees", degrees)
        return max(float(share) * abs(float(due)), float(degrees))

    def _own(self, limit: str, usual: Figure) -> Figure:
        own = self._given(limit, usual.dimension)
        return usual if own is None else own

    def _strictest(self, limit: str, usual: Figure, least: bool) -> Figure:
        own = self._given(limit, usual.dimension)
        if own is None:
            return usual
        return max(own, usual, key=float) if least else min(own, usual, key=float)

    def _given(self, limit: str, dimension: Dimension) -> Figure | None:
        try:
            own = self._job.limit(limit, dimension)
        except JobErrors:  # the review says so of a limit of the wrong kind
            return None
        return None if own is None or own.is_missing else own


def is_inside(reading: float, low: float | None, high: float | None) -> bool:
    """Whether a reading lies in a target, its ends counted in but for the last letters of a float."""
    slack = 1e-6 * max(abs(each) for each in (low, high) if each is not None)
    return (low is None or reading >= low - slack) and (high is None or reading <= high + slack)
