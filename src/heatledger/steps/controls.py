"""Controls: the reset line from the emitters, and the settings that stand where the job gives none."""

from __future__ import annotations

from math import ceil, isnan
from typing import TYPE_CHECKING

from heatledger.job.model import Job
from heatledger.job.system_model import Controls
from heatledger.ledger import dimensions as d
from heatledger.ledger.choosing import choose, largest
from heatledger.ledger.dimensions import Ratio, Temperature, TemperatureDifference
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.ledger.sources import JUDGMENT, PRACTICE, cite
from heatledger.physics.emitter_loads import load_at_share
from heatledger.physics.reset import (
    excess_of_mean,
    line_over_curve,
    return_of_share,
    share_of_load,
    supply_at_least,
    supply_by_line,
    supply_by_mean,
)
from heatledger.steps.emitter_chains import supply_before
from heatledger.steps.given_back import drop_that_results
from heatledger.steps.losses import Losses
from heatledger.steps.setters import Setters
from heatledger.steps.usual import usual

if TYPE_CHECKING:
    from heatledger.steps.boiler_room import BoilerRoom
    from heatledger.steps.circuits import Circuits
    from heatledger.steps.emitters import Emitters

ROUND = cite("", "round steps of the weather", PRACTICE)
MOST_POINTS = 20
BECAUSE = "the supply must serve the emitter that asks for most in this weather"


@result
class ResetPoint:
    """One outdoor temperature: the share of the load, and the water.

    ``supply`` is what the emitters need, not below the least that the job allows. ``by_mean`` is the short
    form of it. ``line`` is what a control with the straight line of the job asks for, None without one, and
    ``line_over`` how far that lies over the need. ``asked`` is what is set: the line where there is one,
    else the need. ``return_`` belongs to ``asked``: less the share of the drop of the design day.
    """

    outdoor: Temperature
    share: Ratio
    supply: Temperature
    return_: Temperature
    by_mean: Temperature
    line: Temperature | None
    asked: Temperature
    line_over: TemperatureDifference | None


@result
class WaterSettings:
    """How the water follows the weather, and the other settings of the controls.

    ``balance`` is the outdoor temperature at which heat starts; ``shutdown`` that above which no call for
    space heat starts the boiler.
    """

    reset: dict[str, ResetPoint]
    balance: Temperature
    shutdown: Temperature
    differential: TemperatureDifference
    least_supply: Temperature | None


@result
class ControlSettings:
    """Result of the controls step."""

    __path__ = ""

    controls: WaterSettings


def controls(
    job: Job, losses: Losses, heat: Emitters, circuits: Circuits, room: BoilerRoom | None = None
) -> ControlSettings:
    """The reset line of the emitters and the settings of the controls.

    Each point carries the share of the load by the very law that sized the emitters, at the design flow;
    what comes back goes with the drop at the flow that results, which the boiler ``room`` knows.
    """
    asked, balance = job.system.controls, balance_of(job)
    drop = drop_that_results(heat, circuits) if room is None else room.plant.drop_design
    curve = Curve(job, losses, heat, balance, drop)
    points = {"design-day": curve.at(losses.site.outdoor)}
    for key, outdoor in round_steps(job, losses.site.outdoor, balance).items():
        points[key] = curve.at(outdoor)
    shutdown, differential = asked.warm_weather_shutdown, asked.differential
    return ControlSettings(
        WaterSettings(
            reset=points,
            balance=balance,
            shutdown=balance if shutdown is None else shutdown,
            differential=usual_differential() if differential is None else differential,
            least_supply=asked.least_supply,
        )
    )


def balance_of(job: Job) -> Figure:
    """Outdoor temperature at which heat starts: the base of the bills' degree days, else the usual one."""
    for bill in job.system.bills.values():
        if not bill.base.is_missing:
            return bill.base
    source = cite("", "base of degree days", PRACTICE)
    return usual(
        "controls/balance", "outdoor temperature at which heat starts", "65 °F", d.TEMPERATURE, source
    )


def usual_differential() -> Figure:
    """The differential of a boiler's control where the job gives none."""
    source = cite("", "differential of a boiler", JUDGMENT)
    return usual("controls/differential", "differential", "10 °F", d.TEMPERATURE_DIFFERENCE, source)


def asked_at(point: ResetPoint) -> Figure:
    """The supply the control asks for at a point: by its own line where it has one."""
    return point.asked


def round_steps(job: Job, coldest: Figure, balance: Figure) -> dict[str, Figure]:
    """Round outdoor temperatures of the reader's scale, from the design day up to where heat starts."""
    if isnan(coldest) or isnan(balance):
        return {}
    unit = job.units.shown(d.TEMPERATURE).unit
    step, letter = (10, "f") if unit.text == "°F" else (5, "c")
    low, high = (unit.from_si(float(each), True) for each in (coldest, balance))
    # A round step hard by the design day would say the same twice.
    first = ceil((low + step / 2) / step) * step
    found = {}
    for i in range(MOST_POINTS):
        number = first + i * step
        if number >= high - 1e-9:
            break
        key = f"at-{'minus-' if number < 0 else ''}{abs(number)}-{letter}"
        found[key] = usual(
            f"controls/reset/{key}/outdoor", "outdoor", f"{number} {unit.text}", d.TEMPERATURE, ROUND
        )
    return found


class Curve:
    """The supply the emitters need, by the weather; ``runs_with`` is the drop at the flow that results."""

    def __init__(self, job: Job, losses: Losses, heat: Emitters, balance: Figure, runs_with: Figure) -> None:
        self.job, self.heat, self.balance, self.runs_with = job, heat, balance, runs_with
        self.design_outdoor, self.room = losses.site.outdoor, losses.site.indoor
        self.drop = heat.house.drop
        self.setters = Setters(job, heat)
        self.exponent = self._exponent()
        self.cold = self._needed(self.share(self.design_outdoor))
        self.excess = excess_of_mean(supply=self.cold, drop=self.drop, room=self.room)

    def share(self, outdoor: Figure) -> Figure:
        """Share of the design load at an outdoor temperature."""
        return share_of_load(balance=self.balance, outdoor=outdoor, design_outdoor=self.design_outdoor)

    def at(self, outdoor: Figure) -> ResetPoint:
        """The point of the line at an outdoor temperature."""
        share = self.share(outdoor)
        supply = self.cold if outdoor is self.design_outdoor else self._needed(share)
        asked = self.job.system.controls
        if asked.least_supply is not None:
            supply = supply_at_least(supply=supply, least=asked.least_supply)
        by_mean = supply_by_mean(
            room=self.room, excess=self.excess, drop=self.drop, share=share, exponent=self.exponent
        )
        line = self.line(outdoor, asked)
        set_to = supply if line is None else line
        return ResetPoint(
            outdoor=outdoor,
            share=share,
            supply=supply,
            return_=return_of_share(supply=set_to, drop=self.runs_with, share=share),
            by_mean=by_mean,
            line=line,
            asked=set_to,
            line_over=None if line is None else line_over_curve(line=line, needed=supply),
        )

    def line(self, outdoor: Figure, asked: Controls) -> Figure | None:
        """What a control with the straight line of the job asks for; None where the job gives no line."""
        if not asked.outdoor_reset or asked.coldest_supply is None or asked.mildest_supply is None:
            return None
        mild = self.balance if asked.mildest_outdoor is None else asked.mildest_outdoor
        line = supply_by_line(
            outdoor=outdoor,
            cold_outdoor=self.design_outdoor,
            cold_supply=asked.coldest_supply,
            mild_outdoor=mild,
            mild_supply=asked.mildest_supply,
        )
        return line if asked.least_supply is None else supply_at_least(supply=line, least=asked.least_supply)

    def _needed(self, share: Figure) -> Figure:
        """Supply at which every emitter gives its share."""
        if not self.setters.askers:
            return self.heat.house.lowest_supply
        asked = {id: self._needed_by(id, share) for id in self.setters.warmest(share)}
        return choose(asked, largest, BECAUSE)

    def _needed_by(self, id: str, share: Figure) -> Figure:
        each = self.setters.askers[id]
        return supply_before(each.own.inlet_for(load_at_share(load=each.whole, share=share)), each.before)

    def _exponent(self) -> Figure:
        """Exponent of the emitter that asks for most on the design day, for the short form."""
        emitters, found = self.job.system.emitters, self.heat.emitters
        if not self.setters.askers:
            return usual("controls/exponent", "exponent", "1.4", d.RATIO, cite("", "baseboard", PRACTICE))
        worst = max(self.setters.askers, key=lambda each: float(found[each].lowest_supply))
        return emitters[worst].exponent
