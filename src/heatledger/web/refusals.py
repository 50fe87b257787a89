"""Plain pages of the door: a sentence for what is so, one for how to mend it, and a form where that helps."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from fastapi.responses import HTMLResponse

from heatledger import __version__

STYLES = ("fonts", "look", "page", "parts", "entries", "small")


def said(
    status: int,
    what: str,
    mend: str,
    more: str = "",
    whole: bool = True,
    headers: Mapping[str, str] | None = None,
) -> HTMLResponse:
    """An answer of sentences. ``more`` is markup of ours that follows; ``whole`` False leaves the page off,
    for an answer that is put into one."""
    words = f"<h1>{escape(what)}</h1>\n<p>{escape(mend)}</p>\n{more}"
    if not whole:
        return HTMLResponse(
            f'<div class="said" role="alert"><p><b>{escape(what)}</b> {escape(mend)}</p></div>',
            status, headers,
        )  # fmt: skip
    return HTMLResponse(page(what, words), status, headers)


def page(title: str, words: str) -> str:
    """A page around markup of ours."""
    sheets = "\n".join(
        f'<link rel="stylesheet" href="/static/{each}.css?v={__version__}">' for each in STYLES
    )
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(title)}</title>\n"
        f'<link rel="icon" href="/static/icon.svg" type="image/svg+xml">\n{sheets}\n</head>\n<body>\n'
        '<header class="strip"><div class="job"><b>Heatledger</b></div></header>\n'
        f'<main class="alone page door">\n{words}\n</main>\n</body>\n</html>\n'
    )


def form(action: str, words: str, fields: str, mark: str) -> str:
    """A form of ours that posts to the app; ``fields`` is markup, ``words`` the text of its button."""
    return (
        f'<form method="post" action="{escape(action)}">\n{fields}\n'
        f'<input type="hidden" name="mark" value="{escape(mark)}">\n'
        f'<button class="btn" type="submit">{escape(words)}</button>\n</form>\n'
    )


def field(name: str, label: str, kind: str = "text", **more: str) -> str:
    """A labeled entry of a form."""
    rest = "".join(f' {key.replace("_", "-")}="{escape(value)}"' for key, value in more.items())
    return (
        f'<p><label for="{name}">{escape(label)}</label> '
        f'<input id="{name}" name="{name}" type="{kind}" required{rest}></p>'
    )
