"""The group of commands; each command's module is imported when it is called."""

from __future__ import annotations

from difflib import get_close_matches
from importlib import import_module

import click

from heatledger import __version__

COMMANDS = {
    "design": "Heat loss, emitters, piping, boiler room, startup, and what to look at.",
    "why": "The arithmetic of any number, down to the tape measure.",
    "check": "What is wrong or missing in a job, and the findings that must be fixed.",
    "papers": "Print all papers of a job.",
    "survey": "Print the blank sheet for a visit to the house.",
    "demo": "Design three invented houses and print their papers.",
    "new": "Write a starter job to fill in.",
    "app": "The book of jobs in a browser, on this computer or shared with a tablet.",
    "book": "The jobs kept in the book: list, back up, restore, check.",
    "catalog": "Constructions, emitters, tubes and fittings a job can take by name.",
    "schema": "The JSON Schema of the job file, for editors.",
}
"""Every command with one line of help, so that help imports nothing."""


class Commands(click.Group):
    """Loads a command when it is called, and offers the nearest name for one that is not there."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command, imported now."""
        if cmd_name not in COMMANDS:
            return None
        module = import_module(f"heatledger.cli.{cmd_name}_command")
        command: click.Command = module.command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The command named first in ``args``; a miss offers the nearest names."""
        name = args[0]
        if not name.startswith("-") and name not in COMMANDS:
            near = get_close_matches(name, COMMANDS, n=1)
            hint = f" Did you mean {near[0]!r}?" if near else f" There are {', '.join(COMMANDS)}."
            ctx.fail(f"There is no command {name!r}.{hint}")
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without importing them."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(
    cls=Commands,
    context_settings={"help_option_names": ["--help"], "max_content_width": 80},
    epilog="Start with:  heatledger demo",
)
@click.version_option(__version__, prog_name="heatledger", message="%(prog)s %(version)s")
def commands() -> None:
    """A house and its hydronic heating, with the arithmetic behind every number.

    \b
    heatledger new my-house.yaml            a commented job to fill in
    heatledger design my-house.yaml         rooms, emitters, piping, boiler room
    heatledger why my-house.yaml house/loss one number, worked out
    """
