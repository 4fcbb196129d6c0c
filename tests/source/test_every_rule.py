"""Every rule of reading has a slip that shows it: in tests/programmes/bad/, or on a page of tests/language/."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import setwright
from support.language import cases, spoken_of
from support.reading import BAD, EXPECTED

ROOMS = ("model", "source")
NAMED_AT = {"refuse": 0, "Finding": 1, "stop": 1, "report": 1, "as_text": 1}
"""Functions that take a rule's id, and as which argument."""
PAGES = Path(__file__).parent.parent / "language"
NOT_YET_SEEN = {"not-valid"}
"""The last resort for what pydantic may say one day; nothing is known that leads there."""
SEEN_ELSEWHERE = {"unused-file", "too-many-mistakes"}
"""A warning, and what no single slip gives: tests/source/test_one_run.py."""
OF_FIGURES = ("figure.py", "media.py")
"""Figures and photos have tests of their own: tests/language/figures.md and tests/source/test_photos.py."""


def rules_in(path: Path) -> Iterator[str]:
    """Yield the rule ids that a file of the package gives out as plain words."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(node, ast.Call):
            continue
        name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
        at = NAMED_AT.get(name)
        if at is not None and len(node.args) > at:
            argument = node.args[at]
            if isinstance(argument, ast.Constant) and isinstance(argument.value, str):
                yield argument.value


def test_every_rule_of_reading_is_shown() -> None:
    """The ids in the package and those in the cases are the same, but for ids made of parts and those named above."""
    package = Path(setwright.__file__).parent
    files = [path for room in ROOMS for path in (package / room).glob("*.py") if path.name not in OF_FIGURES]
    shown = {rule for page in PAGES.glob("*.md") for rule in spoken_of(list(cases(page.read_text("utf-8"))))}
    for expected in BAD.glob(f"*/{EXPECTED}"):
        shown |= set(re.findall(r"\[([a-z0-9-]+)\]$", expected.read_text("utf-8"), re.MULTILINE))

    missing = {rule for path in files for rule in rules_in(path)} - shown - SEEN_ELSEWHERE

    assert missing == NOT_YET_SEEN & missing
    assert len(shown) > 50
