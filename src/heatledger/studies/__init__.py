"""Questions asked of a finished design: how sure it is, what moves it most, what would change.

Lives here: what replays or reads the figures of a design and never changes them.
May not live here: a second way to work out a number that a step works out, or anything a step needs.
Read first: ``uncertainty.py``.
"""
