"""Tables of the trade as data files, each row with its source, and one loader that checks them.

What may live here: YAML tables with values in the unit their source prints, and the code that reads
them. What may not: arithmetic on the values, the job, products of any maker.
"""
