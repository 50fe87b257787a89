"""The app: server-rendered pages over the book, on this machine only unless it is shared.

``app.create_app`` puts it together. A *desk* is one open job, a *page* what one answer needs, a
*fragment* the part of a page that can be swapped alone; ``sheets/`` says what stands on each sheet.
Nothing is computed here: a page asks ``design``, ``studies`` and ``drawings``. Start at ``page.py``.
"""
