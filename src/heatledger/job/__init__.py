"""What the user knows: the job file, its model, its errors, its what-ifs.

Lives here: reading a job as typed, checking it all at once, and the frozen model whose every
quantity is a leaf figure. What is wrong is an error with a path, a line and a mend; what is missing
is no error but a figure without a value.
May not live here: anything that follows from the job (that is a step), a default that changes an
answer without a word, a message that only a programmer can read.
Read first: ``model.py``.
"""
