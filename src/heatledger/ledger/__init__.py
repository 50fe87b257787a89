"""The glass box: units, figures, formulas, workings, sources, findings.

Lives here: what makes a number show how it came about, whatever the number is about.
May not live here: anything of heating (no formula of a trade, no room, no pipe), no reading of the
user's files, no screen. The only file read is the bibliography beside this one.
Read first: ``figures.py``, then ``formulas.py``. Nothing of this package is imported by its name
alone: import from the module that holds it, so that a start loads only what it uses.
"""
