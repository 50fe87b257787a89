"""Rows of the catalog as a job takes them over, with its word on how well they fit this house."""

from __future__ import annotations

from dataclasses import replace

from heatledger.job.known import half_range, range_name
from heatledger.job.quantities import Reader
from heatledger.job.reading import Typed
from heatledger.ledger.figures import Figure, leaf


def known_row(reader: Reader, figure: Figure, typed: Typed, path: str) -> Figure:
    """The leaf of a row, known as well as the entry that names it says."""
    if typed.within is None:
        half, words = half_range(range_name(figure.dimension), typed.known, float(figure), reader.ranges)
    else:
        half, words = reader.half(float(figure), figure.dimension, path, typed)
    beside = figure.origin.beside + ((typed.because,) if typed.because else ())
    if typed.scalar.by:
        beside = (*beside, f"from the what-if {typed.scalar.by}")
    return leaf(
        float(figure),
        figure.dimension,
        replace(
            figure.origin,
            known=typed.known,
            half_range=half,
            half_range_words=words,
            beside=beside,
            replaces=typed.scalar.replaced,
        ),
    )
