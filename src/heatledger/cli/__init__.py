"""The command line: it reads a job, asks the design and the studies, and prints.

Nothing is computed here. Results go to standard output, talk to standard error. Exit codes: 0 fine,
1 something in the job to mend, 2 wrong use. Start reading at ``group.py``.
"""

from __future__ import annotations


def main() -> None:
    """Run the command line."""
    from heatledger.cli.group import commands

    commands(prog_name="heatledger")
