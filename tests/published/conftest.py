"""``pytest tests/published --write-checks`` writes ``docs/checks.md`` anew."""


def pytest_addoption(parser):
    parser.addoption("--write-checks", action="store_true", help="write docs/checks.md from the checks")
