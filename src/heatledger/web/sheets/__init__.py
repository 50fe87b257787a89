"""What stands on each sheet: a module a sheet, each with ``left(page)`` and ``right(page)``."""
