"""Pictures, as geometry first and as SVG last.

May live here: functions that turn plain numbers and words into a ``Drawing`` (shapes with a class, a
title and the same content in words), and the one writer that turns a drawing into SVG. May not: heat
loss arithmetic, reading of jobs or files, colors outside ``to_svg``.
"""
