"""A page as a browser holds it, without a browser: its parts, its token, and changes posted from it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from fastapi.testclient import TestClient

PART = re.compile(r'<hx-partial hx-target="#([^"]+)"[^>]*>(.*?)</hx-partial>', re.DOTALL)
FERROW = "ferrow-house"


@dataclass
class Tab:
    """One tab of a job: what it shows, and the revision and drawing it was given."""

    client: TestClient
    sheet: str = "heat-loss"
    query: str = ""
    job: str = FERROW
    text: str = field(default="", init=False)
    rev: str = field(default="", init=False)
    token: str = field(default="", init=False)

    def __post_init__(self) -> None:
        self.load()

    def load(self) -> None:
        """Ask for the whole page."""
        answer = self.client.get(f"/jobs/{self.job}/{self.sheet}{self.query}")
        assert answer.status_code == 200, answer.text[:400]
        self.text = answer.text
        self._noted(answer.text)

    def post(self, where: str = "edit", **change: str) -> Answer:
        """Post a change as the script of the page does, and take the new token."""
        fields = {"rev": self.rev, "token": self.token, "sheet": self.sheet, "asked": self.query} | change
        answer = self.client.post(f"/jobs/{self.job}/{where}", data=fields, headers={"HX-Request": "true"})
        made = Answer(answer.status_code, answer.text, dict(PART.findall(answer.text)))
        if answer.status_code == 200:
            self._noted(answer.text)
        return made

    def set(self, path: str, value: str) -> Answer:
        """Type a value at an entry and leave it."""
        return self.post(do="set", path=path, value=value)

    def _noted(self, text: str) -> None:
        token = re.search(r'data-token="([^"]+)" data-rev="(\d+)"', text)
        assert token, "the page carries no token"
        self.token, self.rev = token[1], token[2]


@dataclass(frozen=True)
class Answer:
    """The answer to a change: its parts by the id they go to, and all of its text."""

    status: int
    text: str
    parts: dict[str, str]

    @property
    def said(self) -> str:
        """What is said of the change, as plain text."""
        rest = PART.sub("", self.text)
        return re.sub(r"<[^>]+>|\s+", " ", rest).strip()


def plain(html: str) -> str:
    """The words of a piece of markup."""
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", html)).strip()
