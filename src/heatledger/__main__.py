"""Run with python -m heatledger."""

from heatledger.cli import main

main()
