"""What a reader really gets to see is drawn with the app's own letters, on any machine."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from heatledger.ledger.units import UNITS
from tests.browser.harness import until

FRACTIONS = "⅛ ¼ ⅜ ½ ⅝ ¾ ⅞ ⅓ ⅔"
SIGNS = f"{' '.join(UNITS)} {FRACTIONS} ′ ″ × ÷ − ± √ ≤ ≥ ΔT π · ₂ ⁴ ° – … “ ” ’ 36\u202f245"


def drawn_with(page: Page, selector: str) -> set[tuple[str, bool]]:
    """The faces that the browser drew an element with, and whether each came from the app."""
    tools = page.context.new_cdp_session(page)
    tools.send("DOM.enable")
    tools.send("CSS.enable")
    root = tools.send("DOM.getDocument")["root"]["nodeId"]
    node = tools.send("DOM.querySelector", {"nodeId": root, "selector": selector})["nodeId"]
    fonts = tools.send("CSS.getPlatformFontsForNode", {"nodeId": node})["fonts"]
    return {(each["familyName"], each["isCustomFont"]) for each in fonts}


@pytest.mark.parametrize("face", ["serif", "sans"])
def test_every_unit_and_sign_is_drawn_with_our_letters(page: Page, face: str) -> None:
    page.goto("/")
    page.evaluate(
        """([words, face]) => {
          const shown = Object.assign(document.createElement("p"), {id: "signs", textContent: words});
          shown.style.fontFamily = `var(--${face})`;
          document.body.append(shown);
          return shown.offsetHeight;
        }""",
        [SIGNS, face],
    )
    until(page, "[...document.fonts].every(each => each.status !== 'loading')")
    found = drawn_with(page, "#signs")
    assert found
    assert all(ours for _, ours in found), found
    assert {name.split()[0] for name, _ in found} == {"Ledger"}
