"""Resistance of layers, and of layers that framing runs through."""

from __future__ import annotations

from heatledger.ledger.dimensions import Conductivity, Length, Ratio, Resistance, Temperature, Transmittance
from heatledger.ledger.formulas import Parts, formula
from heatledger.ledger.functions import absolute, mean, total
from heatledger.ledger.sources import DERIVED, MEMORY, SEEN, cite
from heatledger.ledger.symbols import const

LAYERS = cite("HOF-ch27", "Example 1", SEEN)
PARALLEL = cite("HOF-ch27", "section 1.2, parallel path", SEEN)
ISOTHERMAL = cite("HOF-ch27", "isothermal planes", SEEN)
AIR_SPACE = cite("HOF-ch26", "notes of Table 3", SEEN)
STILL_AIR = cite("HOF-ch26", "notes of Table 3; 21.8 printed is a slip of conversion", DERIVED)

RADIANT = const(0.227, "W/(m²·K)", AIR_SPACE, "radiation across a space at 100 K")
HUNDRED_KELVIN = const(100, "K", AIR_SPACE, "temperature the radiation is stated at")
CONDUCTED = const(0.0241, "W/(m·K)", STILL_AIR, "still air at 0 °C")
WARMER_AIR = const(0.00274, "1/K", AIR_SPACE, "rise of conduction with temperature")
FREEZING = const(273.15, "K", cite("", "definition of the Celsius scale", DERIVED), "0 °C")


@formula(LAYERS, title="R-value of a layer")
def layer_resistance(thickness: Length, conductivity: Conductivity) -> Resistance:
    """Resistance of one even layer.

    Valid for: solid layers without framing or gaps.
    Leaves out: moisture and age, which belong in the conductivity.

    >>> round(layer_resistance(thickness=0.150, conductivity=0.035), 3)
    4.286
    """
    return thickness / conductivity


@formula(LAYERS, title="R-value of layers in series")
def layers_total(layers: Parts[Resistance]) -> Resistance:
    """Resistance of layers one behind the other, films among them.

    Valid for: even layers.
    Leaves out: framing; give each path its own total.

    >>> round(layers_total(layers=[0.12, 2.30, 0.08, 0.03]), 2)
    2.53
    """
    return total(layers)


@formula(PARALLEL, title="U-value by parallel paths")
def parallel_path_u(cavity_path: Resistance, framing_path: Resistance, framing: Ratio) -> Transmittance:
    """U-value of a framed assembly, heat taken to run straight through each path.

    Valid for: wood framing; each path with films and all its layers.
    Leaves out: metal framing, heat that crosses from one path to the other.

    >>> round(parallel_path_u(cavity_path=3.34, framing_path=1.81, framing=0.25), 4)
    0.3627
    """
    return (1 - framing) / cavity_path + framing / framing_path


@formula(ISOTHERMAL, title="R-value of a framed layer")
def isothermal_layer(cavity: Resistance, framing_layer: Resistance, framing: Ratio) -> Resistance:
    """Resistance of the one layer that framing runs through, its faces taken as even in temperature.

    Valid for: the layer that has both cavity and framing, or cores and webs of masonry.
    Leaves out: metal framing; the other layers and films are added to it.

    >>> round(isothermal_layer(cavity=2.30, framing_layer=0.77, framing=0.25), 4)
    1.5367
    """
    return 1 / ((1 - framing) / cavity + framing / framing_layer)


@formula(cite("ISO-6946", "combined method", MEMORY), title="R-value between the two limits")
def mean_of_limits(upper: Resistance, lower: Resistance) -> Resistance:
    """Mean of the resistance by parallel paths and the one by isothermal planes.

    Valid for: an upper limit not above 1.5 times the lower.
    Leaves out: metal framing.

    >>> round(mean_of_limits(upper=2.757309, lower=2.576659), 4)
    2.667
    """
    return mean(upper, lower)


@formula(AIR_SPACE, title="Effective emittance of an air space")
def effective_emittance(one_side: Ratio, other_side: Ratio) -> Ratio:
    """Emittance that the two faces of an air space have together.

    Valid for: parallel faces.
    Leaves out: dust on a foil.

    >>> round(effective_emittance(one_side=0.9, other_side=0.05), 3)
    0.05
    """
    return 1 / (1 / one_side + 1 / other_side - 1)


@formula(AIR_SPACE, title="R-value of a thin air space")
def thin_air_space(thickness: Length, emittance: Ratio, middle: Temperature) -> Resistance:
    """Resistance of an air space so thin that its air stands still.

    Valid for: spaces up to 13 mm (1/2 in), heat flow level or downward.
    Leaves out: moving air in wider spaces.

    >>> round(thin_air_space(thickness=0.013, emittance=0.82, middle=283.15), 3)
    0.163
    """
    return 1 / (
        CONDUCTED * (1 + WARMER_AIR * (absolute(middle) - FREEZING)) / thickness
        + emittance * RADIANT * (absolute(middle) / HUNDRED_KELVIN) ** 3
    )
