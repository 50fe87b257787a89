"""``heatledger schema``: the JSON Schema of the job file."""

from __future__ import annotations

import json

import click

from heatledger.cli.common import end, put


@click.command("schema")
def command() -> None:
    """Print the JSON Schema of the job file, for editors that check and complete it."""
    from heatledger.job.schema import job_schema

    put(json.dumps(job_schema(), indent=2, ensure_ascii=False))
    end(0)
