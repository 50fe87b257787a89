"""The formula: one small pure function that can be computed, shown, differentiated and replayed.

Given floats or arrays a formula returns plain ones; given figures it returns a figure. That is all
there is to recording. When its module is imported it is run once on symbols, which gives the
expression that every working is made from.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from types import CellType, CodeType, FunctionType, ModuleType
from typing import TYPE_CHECKING, Any, Generic, ParamSpec, TypeVar, get_args, get_origin, get_type_hints

from heatledger.ledger.dimensions import ABSOLUTE_TEMPERATURE, TEMPERATURE_DIFFERENCE, Dimension, dimension_of
from heatledger.ledger.evaluating import must_agree, value_of
from heatledger.ledger.figures import Figure, LedgerError
from heatledger.ledger.recording import recording
from heatledger.ledger.sources import Citation
from heatledger.ledger.symbols import FormulaError, Node, PartsNode, as_node, input_node

P = ParamSpec("P")
Kind = TypeVar("Kind")


if TYPE_CHECKING:
    Parts = Iterable
else:

    class Parts(Generic[Kind]):
        """Annotation of a parameter that takes many figures of one dimension: ``parts: Parts[HeatRate]``."""


WORDS = {"u_value": "U-value", "r_value": "R-value", "f_factor": "F-factor"}
"""Words of parameter names that are not the name with spaces."""


def words_of(name: str) -> str:
    """What a parameter, field or id is called in a working."""
    return WORDS.get(name, name.replace("_", " "))


@dataclass(frozen=True)
class Parameter:
    """One input of a formula."""

    name: str
    dimension: Dimension
    many: bool

    @property
    def words(self) -> str:
        """What the working calls it."""
        return words_of(self.name)


@dataclass(frozen=True, eq=False)
class ByHand:
    """The trade's short form of a formula, and what it neglects."""

    formula: Formula
    neglects: str


@dataclass(frozen=True, eq=False)
class Formula:
    """What the ledger knows about one formula.

    ``body`` is the plain function on floats and arrays; ``expression`` what it became on symbols.
    ``valid`` gives, by parameter, the SI range the formula holds in.
    """

    name: str
    title: str
    body: Callable[..., Any]
    on_symbols: Callable[..., Any]
    parameters: tuple[Parameter, ...]
    dimension: Dimension
    expression: Node
    citation: Citation
    valid: Mapping[str, tuple[float, float]]
    by_hand: ByHand | None
    doc: str
    module: str

    @property
    def plain_line(self) -> str:
        """First sentence of the docstring: what the result means."""
        return self.doc.strip().splitlines()[0]


FORMULAS: dict[str, Formula] = {}
"""Every formula that has been imported, by module and name."""


def formula(
    citation: Citation,
    *,
    title: str = "",
    valid: Mapping[str, tuple[float, float]] | None = None,
    by_hand: tuple[Callable[..., Any], str] | None = None,
) -> Callable[[Callable[P, float]], Callable[P, Figure]]:
    """Make a function a formula.

    ``citation``: its source. ``title``: what its result is called, when not the function's name.
    ``valid``: SI ranges by parameter; leaving one is a finding. ``by_hand``: a formula with the trade's
    short form on some of the same parameters, and words on what it neglects.

    Raises ``FormulaError`` at import for anything that could not be shown.
    """

    def decorate(function: Callable[P, float]) -> Callable[P, Figure]:
        made = _read(function, citation, title, valid or {}, by_hand)
        wrapper = recording(made)
        wrapper.__doc__, wrapper.__module__ = function.__doc__, function.__module__
        wrapper.__wrapped__ = function
        wrapper.formula = made
        FORMULAS[f"{made.module}.{made.name}"] = made
        return wrapper  # type: ignore[no-any-return]

    return decorate


def formula_of(function: Callable[..., Any]) -> Formula:
    """The formula behind a decorated function."""
    found = getattr(function, "formula", None)
    if not isinstance(found, Formula):
        raise LedgerError(f"{function!r} is not a formula")
    return found


def _read(
    function: Callable[..., Any],
    citation: Citation,
    title: str,
    valid: Mapping[str, tuple[float, float]],
    by_hand: tuple[Callable[..., Any], str] | None,
) -> Formula:
    name = function.__name__
    assert isinstance(function, FunctionType)
    try:
        parameters, dimension = _signature(function)
        body = _on_floats(function)
        symbols = [
            PartsNode(each.name, each.dimension) if each.many else input_node(each.name, each.dimension)
            for each in parameters
        ]
        expression = as_node(function(*symbols))
        if expression.exponents != dimension.exponents or expression.absolute != dimension.absolute:
            raise FormulaError(f"its expression is not a {dimension}: check the units of its terms")
        if {expression.kind, dimension} == {ABSOLUTE_TEMPERATURE, TEMPERATURE_DIFFERENCE}:
            raise FormulaError(f"its expression is a {expression.kind}, not a {dimension}")
        must_agree(body, expression, parameters, valid)
        hand = by_hand and _short_form(*by_hand, parameters)
    except FormulaError as fault:
        raise FormulaError(f"formula {name}: {fault}") from None
    except TypeError as fault:
        raise FormulaError(f"formula {name} cannot be shown: {fault}") from None
    return Formula(
        name, title or words_of(name).capitalize(), body, function, parameters, dimension, expression,
        citation, dict(valid), hand, function.__doc__ or "", function.__module__,
    )  # fmt: skip


def _short_form(function: Callable[..., Any], neglects: str, parameters: tuple[Parameter, ...]) -> ByHand:
    """The trade's short form, which takes some of the very parameters of the formula it stands beside."""
    short = formula_of(function)
    known = {each.name: each for each in parameters}
    for each in short.parameters:
        if known.get(each.name) != each:
            raise FormulaError(
                f"its short form {short.name} takes {each.words} ({each.dimension}), "
                "and the formula has no such parameter"
            )
    return ByHand(short, neglects)


def _signature(function: FunctionType) -> tuple[tuple[Parameter, ...], Dimension]:
    hints = _hints(function)
    parameters = []
    for name in function.__code__.co_varnames[: function.__code__.co_argcount]:
        hint = hints.get(name)
        many = get_origin(hint) is Parts
        dimension = dimension_of(get_args(hint)[0] if many else hint)
        if dimension is None:
            raise FormulaError(f"parameter {name!r} has no dimension in its annotation")
        parameters.append(Parameter(name, dimension, many))
    result = dimension_of(hints.get("return"))
    if result is None:
        raise FormulaError("its result has no dimension in its annotation")
    return tuple(parameters), result


def _hints(function: FunctionType) -> dict[str, Any]:
    """The annotations of a function; those that are one word are looked up, which is quicker."""
    found = {
        name: function.__globals__.get(each) if isinstance(each, str) else each
        for name, each in function.__annotations__.items()
    }
    if all(found.values()):
        return found
    return get_type_hints(function, include_extras=True)


def _on_floats(function: FunctionType) -> Callable[..., Any]:
    """The same code with each constant it names replaced by its SI float, for speed."""
    names = dict(function.__globals__)
    used = _names_in(function.__code__)
    for name in used:
        if isinstance(names.get(name), ModuleType) and any(
            isinstance(names[name].__dict__.get(each), Node) for each in used
        ):
            raise FormulaError(f"a constant of module {name} is used: import it by its own name")
        if isinstance(names.get(name), list | dict | set | bytearray):
            raise FormulaError(f"{name} may change after it was shown: use a const")
        if isinstance(names.get(name), Node):
            names[name] = value_of(names[name], {})
    cells = function.__closure__ and tuple(
        CellType(value_of(each.cell_contents, {})) if isinstance(each.cell_contents, Node) else each
        for each in function.__closure__
    )
    return FunctionType(function.__code__, names, function.__name__, function.__defaults__, cells)


def _names_in(code: CodeType) -> set[str]:
    """Names a function uses, those of the branches written inside it too."""
    found = set(code.co_names)
    for each in code.co_consts:
        if isinstance(each, CodeType):
            found |= _names_in(each)
    return found
