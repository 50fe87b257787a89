"""Check the types of the scripts that run in the browser, from their JSDoc, with the TypeScript compiler.

    python tests/script_types.py            needs npm, which fetches the compiler once into .venv/tools
    python tests/script_types.py --lenient  says so and goes on where there is no npm or no network

The app itself needs neither: its scripts are served as they are written.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from tests.needed import NEEDS, leaves_nothing_out, reason, say  # noqa: E402

TYPESCRIPT = "7.0.2"
TOOLS = ROOT / ".venv" / "tools"
COMPILER = TOOLS / "node_modules" / "typescript"
STATIC = ROOT / "src" / "heatledger" / "web" / "static"
OPTIONS = [
    *("--noEmit", "--allowJs", "--checkJs", "--strict", "--noUnusedLocals", "--noImplicitReturns"),
    *("--target", "es2022", "--module", "esnext", "--moduleResolution", "bundler"),
    *("--lib", "es2023,dom,dom.iterable", "--types", ""),
]


def scripts() -> list[Path]:
    """Our own scripts, and what is said of types beside them."""
    found = [*STATIC.rglob("*.js"), *STATIC.rglob("*.d.ts")]
    return sorted(each for each in found if "vendor" not in each.relative_to(STATIC).parts)


def compiler_is_there() -> bool:
    """True when the version wanted stands in .venv/tools."""
    said = COMPILER / "package.json"
    return said.exists() and json.loads(said.read_text(encoding="utf-8"))["version"] == TYPESCRIPT


def fetch(npm: str) -> str:
    """Install the compiler; what npm said when it could not."""
    TOOLS.mkdir(parents=True, exist_ok=True)
    command = [npm, "install", "--prefix", str(TOOLS), "--no-save", "--no-package-lock", "--no-audit"]
    done = subprocess.run(
        [*command, "--no-fund", "--silent", f"typescript@{TYPESCRIPT}"],
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
    )  # fmt: skip
    return f"npm could not fetch TypeScript {TYPESCRIPT}. {done.stdout}".strip() if done.returncode else ""


def wanting() -> str:
    """What keeps the check from running; empty when it can."""
    npm, node = NEEDS["npm"].find(), NEEDS["node"].find()
    if not node or not npm:
        return reason("node" if not node else "npm")
    return "" if compiler_is_there() else fetch(npm)


def main(arguments: list[str]) -> int:
    """0 when every type holds, or when the check may be left out."""
    if not scripts():
        say("There are no scripts to check.")
        return 0
    if fault := wanting():
        say(f"The types of the scripts were not checked: {fault}")
        return 0 if "--lenient" in arguments and not leaves_nothing_out() else 1
    names = [each.relative_to(ROOT).as_posix() for each in scripts()]
    command = [NEEDS["node"].find(), str(COMPILER / "bin" / "tsc"), *OPTIONS, *names]
    return subprocess.run(command, cwd=ROOT).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
