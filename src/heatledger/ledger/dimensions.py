"""What kind of quantity a number is: the exponents of its SI base units, and a name.

Two dimensions with equal exponents are still different kinds when the trade keeps them apart: an
absolute temperature is not a temperature difference, head is not a length, and the conductivity of
a material is not the loss of a slab edge. Each dimension has an annotation of the same name
(``Area``, ``HeatRate`` ...). The type checker reads it as a figure, since that is what steps pass and
keep; when a formula runs it may as well be a plain float, an array or a symbol.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Annotated, Any, get_args

if TYPE_CHECKING:
    from heatledger.ledger.figures import Figure as _Number
else:
    _Number = float

Exponents = tuple[Fraction, Fraction, Fraction, Fraction]


@dataclass(frozen=True, eq=False)
class Dimension:
    """A kind of quantity. ``exponents`` are those of meter, kilogram, second and kelvin."""

    name: str
    exponents: Exponents
    absolute: bool = False
    """True for a temperature on a scale with an offset, false for everything else."""

    def __repr__(self) -> str:
        return self.name


def exponents(m: float = 0, kg: float = 0, s: float = 0, K: float = 0) -> Exponents:
    """Exponents of meter, kilogram, second and kelvin as exact fractions."""
    m_, kg_, s_, k_ = (Fraction(each).limit_denominator(1000) for each in (m, kg, s, K))
    return (m_, kg_, s_, k_)


NONE = exponents()
KELVIN = exponents(K=1)
DIMENSIONS: dict[str, Dimension] = {}
"""Every dimension by its name."""


def _dimension(
    name: str, m: float = 0, kg: float = 0, s: float = 0, K: float = 0, absolute: bool = False
) -> Dimension:
    made = Dimension(name, exponents(m, kg, s, K), absolute)
    DIMENSIONS[name] = made
    return made


RATIO = _dimension("ratio")
COUNT = _dimension("count")
REYNOLDS = _dimension("Reynolds number")
LENGTH = _dimension("length", m=1)
HEAD = _dimension("head", m=1)
AREA = _dimension("area", m=2)
VOLUME = _dimension("volume", m=3)
WATER_VOLUME = _dimension("volume of water", m=3)
BORE = _dimension("size of a tube", m=1)
FRICTION = _dimension("head per length")
CONCENTRATION = _dimension("parts of a gas")
TIME = _dimension("time", s=1)
VELOCITY = _dimension("velocity", m=1, s=-1)
ACCELERATION = _dimension("acceleration", m=1, s=-2)
MASS = _dimension("mass", kg=1)
DENSITY = _dimension("density", kg=1, m=-3)
PRESSURE = _dimension("pressure", kg=1, m=-1, s=-2)
DRAFT = _dimension("draft", kg=1, m=-1, s=-2)
ENERGY = _dimension("energy", kg=1, m=2, s=-2)
HEAT_RATE = _dimension("heat rate", kg=1, m=2, s=-3)
POWER = _dimension("power", kg=1, m=2, s=-3)
HEAT_PER_LENGTH = _dimension("heat per length", m=1, kg=1, s=-3)
HEAT_CONTENT = _dimension("heat content of a fuel", m=-1, kg=1, s=-2)
HEAT_FLUX = _dimension("heat flux", kg=1, s=-3)
TEMPERATURE = _dimension("temperature", K=1, absolute=True)
TEMPERATURE_DIFFERENCE = _dimension("temperature difference", K=1)
ABSOLUTE_TEMPERATURE = _dimension("thermodynamic temperature", K=1)
TRANSMITTANCE = _dimension("U-value", kg=1, s=-3, K=-1)
RESISTANCE = _dimension("R-value", kg=-1, s=3, K=1)
CONDUCTIVITY = _dimension("conductivity", m=1, kg=1, s=-3, K=-1)
EDGE_LOSS = _dimension("loss per length of edge", m=1, kg=1, s=-3, K=-1)
CONDUCTANCE = _dimension("conductance", m=2, kg=1, s=-3, K=-1)
VOLUME_FLOW = _dimension("flow", m=3, s=-1)
AIR_FLOW = _dimension("air flow", m=3, s=-1)
LEAKAGE_AT_50_PA = _dimension("air flow at 50 Pa", m=3, s=-1)
MASS_FLOW = _dimension("mass flow", kg=1, s=-1)
AIR_CHANGES = _dimension("air changes", s=-1)
SPECIFIC_HEAT = _dimension("specific heat", m=2, s=-2, K=-1)
VOLUME_HEAT = _dimension("heat to warm a volume", m=-1, kg=1, s=-2, K=-1)
GAS_CONSTANT = _dimension("gas constant", m=2, s=-2, K=-1)
LAPSE = _dimension("fall of temperature with height", K=1, m=-1)
VISCOSITY = _dimension("viscosity", kg=1, m=-1, s=-1)
KINEMATIC_VISCOSITY = _dimension("kinematic viscosity", m=2, s=-1)
WATER_HEAT = _dimension("heat carried per flow and degree", m=-1, kg=1, s=-2, K=-1)
FLOW_COEFFICIENT = _dimension("flow coefficient", m=3.5, kg=-0.5)
EXPANSION = _dimension("expansion per degree", K=-1)
RADIATION = _dimension("radiation constant", kg=1, s=-3, K=-4)

Ratio = Annotated[_Number, RATIO]
Count = Annotated[_Number, COUNT]
Length = Annotated[_Number, LENGTH]
Head = Annotated[_Number, HEAD]
Area = Annotated[_Number, AREA]
Volume = Annotated[_Number, VOLUME]
WaterVolume = Annotated[_Number, WATER_VOLUME]
Bore = Annotated[_Number, BORE]
Friction = Annotated[_Number, FRICTION]
Concentration = Annotated[_Number, CONCENTRATION]
ReynoldsNumber = Annotated[_Number, REYNOLDS]
Time = Annotated[_Number, TIME]
Velocity = Annotated[_Number, VELOCITY]
Acceleration = Annotated[_Number, ACCELERATION]
Mass = Annotated[_Number, MASS]
Density = Annotated[_Number, DENSITY]
Pressure = Annotated[_Number, PRESSURE]
Draft = Annotated[_Number, DRAFT]
Energy = Annotated[_Number, ENERGY]
HeatRate = Annotated[_Number, HEAT_RATE]
Power = Annotated[_Number, POWER]
HeatPerLength = Annotated[_Number, HEAT_PER_LENGTH]
HeatContent = Annotated[_Number, HEAT_CONTENT]
HeatFlux = Annotated[_Number, HEAT_FLUX]
Temperature = Annotated[_Number, TEMPERATURE]
TemperatureDifference = Annotated[_Number, TEMPERATURE_DIFFERENCE]
AbsoluteTemperature = Annotated[_Number, ABSOLUTE_TEMPERATURE]
Transmittance = Annotated[_Number, TRANSMITTANCE]
Resistance = Annotated[_Number, RESISTANCE]
Conductivity = Annotated[_Number, CONDUCTIVITY]
EdgeLoss = Annotated[_Number, EDGE_LOSS]
Conductance = Annotated[_Number, CONDUCTANCE]
VolumeFlow = Annotated[_Number, VOLUME_FLOW]
AirFlow = Annotated[_Number, AIR_FLOW]
LeakageAt50Pa = Annotated[_Number, LEAKAGE_AT_50_PA]
MassFlow = Annotated[_Number, MASS_FLOW]
AirChanges = Annotated[_Number, AIR_CHANGES]
SpecificHeat = Annotated[_Number, SPECIFIC_HEAT]
VolumeHeat = Annotated[_Number, VOLUME_HEAT]
GasConstant = Annotated[_Number, GAS_CONSTANT]
Lapse = Annotated[_Number, LAPSE]
Viscosity = Annotated[_Number, VISCOSITY]
KinematicViscosity = Annotated[_Number, KINEMATIC_VISCOSITY]
WaterHeat = Annotated[_Number, WATER_HEAT]
FlowCoefficient = Annotated[_Number, FLOW_COEFFICIENT]
Expansion = Annotated[_Number, EXPANSION]
Radiation = Annotated[_Number, RADIATION]


def dimension_of(hint: Any) -> Dimension | None:
    """The dimension an annotation names, or None when it names none."""
    if isinstance(hint, Dimension):
        return hint
    for each in get_args(hint):
        if isinstance(each, Dimension):
            return each
    return None
