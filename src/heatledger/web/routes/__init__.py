"""The addresses of the app, a module for each kind of question."""

from __future__ import annotations

from importlib import import_module

from fastapi import APIRouter

NAMES = ("jobs", "job_acts", "open_file", "new_job", "book_copies", "what_ifs", "making", "papers", "find",
         "revisions", "sheets", "edits")  # fmt: skip


def routers() -> list[APIRouter]:
    """Every router, in the order in which addresses are matched."""
    return [import_module(f"heatledger.web.routes.{name}").router for name in NAMES]
