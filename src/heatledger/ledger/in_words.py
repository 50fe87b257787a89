"""A formula in words: its own expression with the names of its parameters."""

from __future__ import annotations

import math
from functools import cache

from heatledger.ledger.formulas import Formula, words_of
from heatledger.ledger.symbols import Const, Node
from heatledger.ledger.workings import Token, Tokens
from heatledger.ledger.writing import plain_number, unit_text

_SIGNS = {"add": "+", "sub": "−", "mul": "×", "div": "÷"}
BASE = 5
"""Rank of what stands under a power: everything but one word or a plain number goes in brackets."""
_RANK = {"add": 1, "sub": 1, "neg": 1, "mul": 2, "div": 2, "pow": 3, "power": 3,
         "mean": 0, "larger": 0, "smaller": 0, "where": 0, "read_between": 0}  # fmt: skip


@cache
def formula_in_words(formula: Formula) -> Tokens:
    """Tokens of the formula, such as: area × U-value × (indoor − outdoor)."""
    return _said(formula.expression, 0)


def _said(node: Node, rank: int) -> Tokens:
    made = _body(node)
    own = _RANK.get(node.op, 4)
    if own == 4:
        plain = len(made) == 1 and " " not in made[0].text
        own = 1 if made[0].text.startswith("−") else (BASE if plain else own)
    if own < rank:
        return (Token("open", "("), *made, Token("close", ")"))
    return made


def _nameless(node: Const) -> Tokens:
    unit = unit_text(node.unit)
    return (Token("number", plain_number(node.value)), *((Token("unit", unit),) if unit else ()))


def _word(text: str) -> Token:
    return Token("word", text)


def _body(node: Node) -> Tokens:
    op, args = node.op, node.args
    if isinstance(node, Const):
        return (_word(node.name),) if node.name else _nameless(node)
    if op in ("input", "parts"):
        return (_word(words_of(node.detail)),)
    if op == "number":
        return (Token("number", "π" if node.detail == math.pi else f"{node.detail:g}".replace("-", "−")),)
    if op in _SIGNS:
        right = {"add": 1, "sub": 2, "mul": 2, "div": 3}[op]
        return (*_said(args[0], _RANK[op]), Token("op", _SIGNS[op]), *_said(args[1], right))
    if op == "neg":
        return (Token("sign", "−"), *_said(args[0], BASE if args[0].op in ("pow", "power") else 2))
    if op == "pow":
        return (*_said(args[0], BASE), Token("op", "^"), Token("number", plain_number(float(node.detail))))
    if op == "power":
        return (*_said(args[0], BASE), Token("op", "^"), *_said(args[1], BASE))
    if op == "compare":
        sign = {"<=": "≤", ">=": "≥"}.get(node.detail, node.detail)
        return (*_said(args[0], 1), Token("op", sign), *_said(args[1], 1))
    if op == "where":
        return (*_said(args[1], 1), _word("if"), *_said(args[0], 0), _word(", otherwise"), *_said(args[2], 1))
    if op == "total":
        return (_word(f"total of {words_of(args[0].detail)}"),)
    if op == "absolute":
        return (_word("absolute"), *_said(args[0], 4))
    if op in ("log", "exp", "sqrt"):
        name = {"log": "ln", "exp": "exp", "sqrt": "√"}[op]
        return (Token("root", name), Token("open", "("), *_said(args[0], 0), Token("close", ")"))
    if op == "read_between":
        x, x0, x1, y0, y1 = (_said(each, 1) for each in args)
        return (
            _word("read at"),
            *x,
            _word("between"),
            *y0,
            _word("at"),
            *x0,
            _word("and"),
            *y1,
            _word("at"),
            *x1,
        )
    joined: list[Token] = [
        _word({"mean": "mean of", "larger": "the larger of", "smaller": "the smaller of"}[op])
    ]
    return (*joined, *_said(args[0], 1), _word("and"), *_said(args[1], 1))
