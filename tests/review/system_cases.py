"""Cases of the findings on controls and startup: an example on which each just stands, and just does not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.job.model import Job
from tests.steps.heated import job_of

Changes = list[dict[str, Any]]
FERROW, LERCH, TAMM = "ferrow-house", "lerch-cottage", "tamm-street"


@dataclass(frozen=True, eq=False)
class SystemCase:
    """``fires`` and ``silent`` are laid over an example of the program."""

    id: str
    house: str
    where: str
    fires: Changes
    silent: Changes
    limit: str = ""
    """A threshold under which the first of the two is silent too."""

    def job(self, fires: bool, limits: str = "") -> Job:
        """The example with the changes laid over it, and perhaps a limit of its own."""
        changes = [*(self.fires if fires else self.silent)]
        if limits:
            changes.append({"add": f"limits/{self.id}", "to": limits})
        return job_of(self.house).with_changes(changes) if changes else job_of(self.house)


def to(**values: Any) -> Changes:
    """Entries of the controls."""
    return [{"set": f"controls/{key}", "to": each} for key, each in values.items()]


def gone(*paths: str) -> Changes:
    return [{"remove": each} for each in paths]


def put(path: str, value: Any) -> Changes:
    return [{"set": path, "to": value}]


def read(**values: Any) -> Changes:
    """Readings added to those of the example."""
    return [{"set": f"readings/{key}", "to": each} for key, each in values.items()]


def fire(**values: Any) -> Changes:
    return [{"set": "readings/combustion", "to": values}]


def of_iron(fuel: str = "natural gas") -> Changes:
    """A boiler that does not condense."""
    return [*put("plant/boiler/kind", "non-condensing"), *put("plant/boiler/fuel", fuel)]


def zones(count: int) -> Changes:
    """As many zones more."""
    rooms = ("living", "dining", "kitchen", "study", "hall", "bedroom-2", "bedroom-3")
    return [{"add": f"zones/{each}", "to": {"thermostat": each}} for each in rooms[:count]]


STUDY_GLASS = "rooms/study/surfaces/north-wall/openings"
REST, CLEAN = "controls/setback", {"oxygen": "4 %", "carbon_monoxide": "30 ppm"}

CASES = (
    SystemCase("no-reset", FERROW, "controls", to(outdoor_reset="no"), [], "60 °F"),
    SystemCase("reset-left-as-shipped", LERCH, "controls/coldest_supply", to(coldest_supply="62.6 °C"),
               to(coldest_supply="62.3 °C"), "12 K"),
    SystemCase("straight-curve-sags", FERROW, "controls/mildest_supply",
               to(mildest_supply="86.5 °F", least_supply="70 °F"),
               to(mildest_supply="87.5 °F", least_supply="70 °F"), "8 °F"),
    SystemCase("reset-under-boiler-limit", FERROW, "controls/outdoor_reset",
               [*of_iron(), *to(least_supply="142.5 °F")], [*of_iron(), *to(least_supply="142.7 °F")],
               "80 °F"),
    SystemCase("reset-under-boiler-limit", FERROW, "controls/outdoor_reset",
               [*of_iron("oil"), *to(least_supply="155.3 °F")],
               [*of_iron("oil"), *to(least_supply="155.5 °F")]),
    SystemCase("reset-under-boiler-limit", FERROW, "controls/outdoor_reset",
               [*of_iron(), *put("plant/boiler/return_limit", "120 °F"), *to(least_supply="129.7 °F")],
               [*of_iron(), *put("plant/boiler/return_limit", "120 °F"), *to(least_supply="129.9 °F")]),
    SystemCase("deep-setback-on-reset", FERROW, REST, to(setback="4.1 °F"), [], "5 °F"),
    SystemCase("setback-never-recovers", FERROW, REST, put("plant/boiler/output", "40400 Btu/h"),
               put("plant/boiler/output", "40600 Btu/h"), "100 %"),
    SystemCase("setback-freezes-pipes", FERROW, REST, to(setback="15.1 °F"), to(setback="15 °F"), "50 °F"),
    SystemCase("nothing-stops-in-summer", FERROW, "controls", gone("controls/warm_weather_shutdown"), []),
    SystemCase("unlike-rooms-one-zone", FERROW, "zones/ground", put("circuits/upper/zone", "ground"), []),
    SystemCase("room-behind-thermostat", FERROW, "zones/ground", put("emitters/kitchen-base/length", "11 ft"),
               put("emitters/kitchen-base/length", "11.2 ft"), "80 %"),
    SystemCase("too-many-zones", FERROW, "zones", zones(5), zones(4), "5000 Btu/h"),
    SystemCase("no-sequence-written", FERROW, "controls", gone("plant/high_limit"), []),
    SystemCase("no-sequence-written", FERROW, "controls", gone("controls/outdoor_reset"), []),
    SystemCase("test-pressure-low", FERROW, "readings/test_pressure", read(test_pressure="99 psi"),
               read(test_pressure="100 psi")),
    SystemCase("tank-charge-unread", FERROW, "readings/precharge", read(precharge="12.7 psi"),
               read(precharge="12.8 psi"), "1 psi"),
    SystemCase("tank-charge-unread", FERROW, "readings/precharge", [], read(precharge="13.2 psi")),
    SystemCase("cold-gauge-off", FERROW, "readings/cold_pressure", read(cold_pressure="12.2 psi"),
               read(cold_pressure="12.3 psi"), "2 psi"),
    SystemCase("cold-gauge-off", FERROW, "readings/cold_pressure", read(cold_pressure="14.3 psi"),
               read(cold_pressure="14.2 psi")),
    SystemCase("hot-gauge-high", FERROW, "readings/hot_pressure", read(hot_pressure="25.1 psi"),
               read(hot_pressure="25 psi"), "4 psi"),
    SystemCase("drop-measured-off", FERROW, "readings/return", put("readings/return", "115.4 °F"),
               put("readings/return", "115.5 °F"), "50 %"),
    SystemCase("flow-measured-off", FERROW, "readings/flow", read(flow="3.8 gpm"), read(flow="4.2 gpm"),
               "20 %"),
    SystemCase("supply-off-the-curve", FERROW, "readings/supply", read(supply="140.6 °F"),
               read(supply="140.3 °F"), "5 °F"),
    SystemCase("feed-valve-left-to-chance", FERROW, "plant", read(cold_pressure="13 psi"), []),
    SystemCase("fire-never-measured", FERROW, "readings/combustion", fire(oxygen="4 %"), fire(**CLEAN)),
    SystemCase("co-in-flue-high", FERROW, "readings/combustion/carbon_monoxide",
               fire(oxygen="5 %", carbon_monoxide="76.2 ppm"), fire(oxygen="5 %", carbon_monoxide="76 ppm"),
               "150 ppm"),
    SystemCase("oxygen-out-of-band", FERROW, "readings/combustion/oxygen", fire(oxygen="2.9 %"),
               fire(oxygen="3 %"), "2 %"),
    SystemCase("oxygen-out-of-band", FERROW, "readings/combustion/oxygen", fire(oxygen="6.1 %"),
               fire(oxygen="6 %")),
    SystemCase("oxygen-out-of-band", FERROW, "readings/combustion/oxygen",
               [*of_iron(), *fire(oxygen="10.1 %")], [*of_iron(), *fire(oxygen="10 %")]),
    SystemCase("oxygen-out-of-band", FERROW, "readings/combustion/oxygen",
               [*of_iron("oil"), *fire(oxygen="6.1 %")], [*of_iron("oil"), *fire(oxygen="6 %")]),
    SystemCase("flue-gas-spills", FERROW, "readings/combustion/draft",
               [*of_iron(), *fire(draft="-0.019 in. w.c.")], [*of_iron(), *fire(draft="-0.02 in. w.c.")],
               "-0.01 in. w.c."),
    SystemCase("flue-gas-spills", FERROW, "readings/combustion/spillage", fire(spillage="some"),
               fire(spillage="none")),
    SystemCase("room-co-found", FERROW, "readings/combustion/room_carbon_monoxide",
               fire(room_carbon_monoxide="9.1 ppm"), fire(room_carbon_monoxide="9 ppm"), "12 ppm"),
)  # fmt: skip
