"""What follows from a job, in the order of the work, and ``design()`` which calls the steps.

Lives here: one module a step, with one public function and one frozen result made of figures.
A step reads the job and the results of earlier steps, and nothing else.
May not live here: arithmetic (a step calls formulas and never adds by itself), files, clocks,
globals, a screen, words for one reader's units.
Read first: ``design.py``.
"""
