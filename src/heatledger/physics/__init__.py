"""Formulas of the trade by subject: envelope, ground, air, spaces, constructions, energy.

What may live here: small pure formulas on floats, arrays or figures, and the constants they need,
each with its source. What may not: files, the job, the screen, a catalog row, a loop that solves.
"""
