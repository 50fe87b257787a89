"""The boiler against the load: its output on this site, and every factor between the loss and its plate."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from heatledger.job.model import Job
from heatledger.job.system_model import Boiler
from heatledger.ledger.dimensions import RATIO, Ratio
from heatledger.ledger.figures import Figure
from heatledger.ledger.results import result
from heatledger.ledger.sources import DERIVED, SEEN, Citation, cite
from heatledger.physics.boilers import (
    altitude_factor,
    altitude_factor_above,
    at_height,
    height_made_up,
    load_over_loss,
    loss_factors,
    net_rating,
    output_of,
    output_ratio,
    plate_factors,
)
from heatledger.steps.usual import usual

ELECTRIC = "electricity"


@result
class Factor:
    """One factor between the loss of the house and the plate of the boiler.

    ``margin`` is true for one that is not asked for by the house or the site: extra that somebody chose.
    """

    name: str
    note: str
    value: Ratio
    margin: bool


@dataclass(frozen=True)
class Outputs:
    """What the plate of the boiler comes to; None where there is no boiler or no such figure."""

    input: Figure | None = None
    altitude: Figure | None = None
    rated_output: Figure | None = None
    output: Figure | None = None
    output_milder: Figure | None = None
    net: Figure | None = None
    ratio: Figure | None = None


def outputs_of(job: Job, load: Figure) -> Outputs:
    """Input and output of the boiler in the air of the site, and its output over the load."""
    boiler = job.system.plant.boiler
    if boiler is None:
        return Outputs()
    rated = _rated_output(boiler)
    if boiler.fuel == ELECTRIC:
        return Outputs(
            boiler.input, None, rated, rated, None, net_rating(output=rated),
            output_ratio(output=rated, load=load),
        )  # fmt: skip
    elevation = job.site.elevation
    altitude = altitude_factor(elevation=elevation)
    milder = altitude_factor_above(elevation=elevation)
    output = at_height(rated=rated, altitude=altitude)
    return Outputs(
        input=None if boiler.input is None else at_height(rated=boiler.input, altitude=altitude),
        altitude=altitude,
        rated_output=rated,
        output=output,
        output_milder=at_height(rated=rated, altitude=milder),
        net=net_rating(output=output),
        ratio=output_ratio(output=output, load=load),
    )


def _rated_output(boiler: Boiler) -> Figure:
    """Output as the plate gives it, else input by efficiency."""
    if boiler.output is not None:
        return boiler.output
    assert boiler.input is not None and boiler.efficiency is not None
    return output_of(input=boiler.input, efficiency=boiler.efficiency)


def chain_of_factors(job: Job, loss: Figure, load: Figure, burner: Outputs) -> dict[str, Factor]:
    """Every factor from the loss of the house to the plate of the boiler, in order, none left out."""
    emitters = "taken out of their ratings, so that it stands nowhere as extra"
    chain = {
        "loss": Factor(
            "Heat loss", "as worked out, no allowance on it",
            _one("loss", "factor on the loss", cite("HOF-ch17", "one margin, at the end", SEEN)), True,
        ),
        "heating_effect": Factor(
            "Heating effect of emitters", emitters if job.system.emitters else "no emitters given",
            _one("heating_effect", "heating effect kept", cite("", "ratings are taken net", DERIVED)), True,
        ),
        "pick_up": Factor(
            "Piping and pickup", "not applied: gross output is compared, and loss of mains is worked out",
            _one("pick_up", "allowance for piping and pickup", cite("HPAC-RATE", "where it applies", SEEN)),
            True,
        ),
        "mains": Factor(
            "Mains outside the rooms", "load over loss; heat of the mains is not put back into their space",
            load_over_loss(load=load, loss=loss), False,
        ),
    }  # fmt: skip
    if burner.ratio is not None:
        made_up = (
            _one("altitude", "height", cite("", "thin air does not touch it", DERIVED))
            if burner.altitude is None
            else height_made_up(altitude=burner.altitude)
        )
        chain["altitude"] = Factor("Height of the site", "plate over output in thin air", made_up, False)
        chain["selection"] = Factor("Size chosen", "output at this height over load", burner.ratio, True)
    return chain


def _one(key: str, words: str, citation: Citation) -> Figure:
    return usual(f"plant/factors/{key}/value", words, "1.00", RATIO, citation)


def product_of(factors: Mapping[str, Factor]) -> Figure:
    """All factors multiplied: up to the load, and on to the plate where there is a boiler."""
    to_load = loss_factors(
        loss=factors["loss"].value,
        heating_effect=factors["heating_effect"].value,
        pick_up=factors["pick_up"].value,
        mains=factors["mains"].value,
    )
    if "selection" not in factors:
        return to_load
    return plate_factors(
        load_factor=to_load, altitude=factors["altitude"].value, selection=factors["selection"].value
    )
