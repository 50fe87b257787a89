"""Cases of the findings on the boiler room and the bills: one just stands, its neighbor just does not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heatledger.job.model import Job
from tests.review.plant_house import plant_house

Changes = list[dict[str, Any]]
BOILER, TANK = "plant/boiler", "plant/tank"


@dataclass(frozen=True, eq=False)
class PlantCase:
    """``fires`` and ``silent`` are laid over the house with a boiler room."""

    id: str
    where: str
    fires: Changes
    silent: Changes
    limit: str = ""
    """A threshold under which the first of the two is silent too."""

    def job(self, fires: bool, limits: str = "") -> Job:
        """The house with the changes laid over it, and perhaps a limit of its own."""
        job = plant_house(f"\nlimits: {{{self.id}: '{limits}'}}\n" if limits else "")
        changes = self.fires if fires else self.silent
        return job.with_changes(changes) if changes else job


def to(path: str, value: Any) -> Changes:
    return [{"set": path, "to": value}]


def gone(*paths: str) -> Changes:
    return [{"remove": each} for each in paths]


def size(output: str, **more: str) -> Changes:
    """A boiler of another output, its input far above."""
    changes = [*to(f"{BOILER}/output", output), *to(f"{BOILER}/input", "60000 Btu/h")]
    for key, each in more.items():
        changes += to(f"{BOILER}/{key}", each)
    return changes


def electric() -> Changes:
    return [*to(f"{BOILER}/fuel", "electricity"), *to(f"{BOILER}/kind", "electric")]


def of_iron(supply: str, fuel: str = "natural gas") -> Changes:
    """A boiler that may not condense, at another supply."""
    return [
        *to(f"{BOILER}/kind", "non-condensing"), *to(f"{BOILER}/fuel", fuel), *to("plant/supply", supply),
    ]  # fmt: skip


def fixed(supply: str) -> Changes:
    """The same water in all weather."""
    return [*to("controls/outdoor_reset", "no"), *to("plant/supply", supply)]


def restless(differential: str) -> Changes:
    return [*to(f"{BOILER}/least_output", "9000 Btu/h"), *to("controls/differential", differential)]


def with_closet(least: str) -> Changes:
    """A zone of one small bedroom."""
    tiny = {
        "kind": "home-run manifold", "zone": "tiny", "tube": "pex-1/2", "length": "10 ft",
        "runs": {"small": {"tube": "pex-1/2", "length": "90 ft"}},
    }  # fmt: skip
    return [
        *gone("circuits/main/runs/small"),
        {"add": "zones/tiny", "to": {"name": "Small bedroom", "thermostat": "bedroom-2"}},
        {"add": "circuits/tiny", "to": tiny},
        *to(f"{BOILER}/least_output", least),
    ]


IRON = {
    "room": "living", "kind": "cast-iron radiator", "output": "2000 Btu/h", "rated_water": "170 °F",
    "rated_air": "70 °F", "exponent": "1.3", "water": "3 gal",
}  # fmt: skip

CASES = (
    PlantCase("boiler-too-big", BOILER, size("23530 Btu/h"), size("23490 Btu/h"), "160 %"),
    PlantCase("boiler-too-small", BOILER, size("16780 Btu/h"), size("16800 Btu/h"), "95 %"),
    PlantCase("input-taken-for-output", f"{BOILER}/output", to(f"{BOILER}/output", "23770 Btu/h"),
              to(f"{BOILER}/output", "23750 Btu/h"), "100 %"),
    PlantCase("rating-at-sea-level", BOILER, to("site/elevation", "2001 ft"), to("site/elevation", "2000 ft"),
              "3000 ft"),
    PlantCase("label-efficiency-promised", f"{BOILER}/efficiency", to(f"{BOILER}/efficiency", "91 %"),
              to(f"{BOILER}/efficiency", "90.8 %"), "5 %"),
    PlantCase("electric-service-short", BOILER, electric(), []),
    PlantCase("boiler-cycles-fast", "zones/all", restless("1.9 °F"), restless("2 °F"), "60 %"),
    PlantCase("micro-zone", "zones/tiny", with_closet("3000 Btu/h"), with_closet("500 Btu/h"), "100 %"),
    PlantCase("condensing-never-condenses", BOILER, fixed("140.1 °F"), fixed("139.9 °F"), "150 °F"),
    PlantCase("cold-water-to-iron-boiler", BOILER, of_iron("149.9 °F"), of_iron("150.1 °F"), "120 °F"),
    PlantCase("cold-water-to-iron-boiler", BOILER, of_iron("159.9 °F", "oil"), of_iron("160.1 °F", "oil")),
    PlantCase("cold-water-to-iron-boiler", BOILER,
              [*of_iron("160 °F"), *to(f"{BOILER}/return_limit", "141 °F")],
              [*of_iron("160 °F"), *to(f"{BOILER}/return_limit", "139 °F")]),
    PlantCase("boiler-water-too-slow", BOILER, size("29500 Btu/h", kind="non-condensing"),
              size("29300 Btu/h", kind="non-condensing"), "60 °F"),
    PlantCase("boiler-water-too-slow", BOILER, size("33700 Btu/h"), size("33500 Btu/h")),
    PlantCase("boiler-water-too-slow", BOILER, to(f"{BOILER}/least_flow", "1.8 gpm"),
              to(f"{BOILER}/least_flow", "1.6 gpm")),
    PlantCase("top-of-house-dry", "plant/fill", to("plant/fill", "10.0 psi"), to("plant/fill", "10.1 psi"),
              "3 psi"),
    PlantCase("fill-near-relief", "plant/fill", to("plant/fill", "19.2 psi"), to("plant/fill", "19.0 psi"),
              "10 %"),
    PlantCase("expansion-tank-small", TANK, to(f"{TANK}/volume", "2.45 gal"), to(f"{TANK}/volume", "2.5 gal"),
              "90 %"),
    PlantCase("expansion-tank-small", TANK, to(f"{TANK}/acceptance", "0.80 gal"),
              to(f"{TANK}/acceptance", "0.83 gal"), "90 %"),
    PlantCase("tank-charge-wrong", f"{TANK}/precharge", to(f"{TANK}/precharge", "13.1 psi"),
              to(f"{TANK}/precharge", "12.9 psi"), "2 psi"),
    PlantCase("hot-pressure-near-relief", TANK, to(f"{TANK}/volume", "2.4 gal"),
              to(f"{TANK}/volume", "2.5 gal"), "2 psi"),
    PlantCase("relief-too-small", f"{BOILER}/relief_capacity", to(f"{BOILER}/relief_capacity", "21290 Btu/h"),
              to(f"{BOILER}/relief_capacity", "21300 Btu/h"), "90 %"),
    PlantCase("relief-too-small", f"{BOILER}/relief_capacity", gone(f"{BOILER}/relief_capacity"), []),
    PlantCase("relief-set-too-high", f"{BOILER}/relief", to(f"{BOILER}/relief", "30.1 psi"), [], "5 psi"),
    PlantCase("relief-set-too-high", f"{BOILER}/relief", gone(f"{BOILER}/relief"), []),
    PlantCase("no-low-water-cutoff", "plant/low_water_cutoff", to("plant/low_water_cutoff", "no"), []),
    PlantCase("no-low-water-cutoff", "plant/low_water_cutoff", gone("plant/low_water_cutoff"), []),
    PlantCase("no-manual-limit", "plant/high_limit", to("plant/high_limit", "251 °F"),
              to("plant/high_limit", "249 °F"), "260 °F"),
    PlantCase("no-manual-limit", "plant/high_limit", gone("plant/high_limit"), []),
    PlantCase("limit-stops-the-burner", "plant/high_limit", to("plant/high_limit", "150 °F"),
              to("plant/high_limit", "150.1 °F"), "-1 °F"),
    PlantCase("no-co-alarm", BOILER, [], electric()),
    PlantCase("relief-pipe-blocked", f"{BOILER}/relief", [], gone(BOILER)),
    PlantCase("condensate-badly-drained", BOILER, [], to(f"{BOILER}/kind", "non-condensing")),
    PlantCase("nothing-catches-dirt", BOILER, [{"add": "emitters/iron", "to": IRON}], []),
    PlantCase("bills-disagree", "bills/winter", to("bills/winter/energy", "860 therms"),
              to("bills/winter/energy", "640 therms"), "80 %"),
    PlantCase("bills-with-hot-water", "bills/winter", gone("bills/winter/other_use"), []),
    PlantCase("sized-from-old-boiler", BOILER, size("23790 Btu/h"), size("23740 Btu/h"), "160 %"),
)  # fmt: skip
