"""The coach's language, told in Markdown beside this file: what may be written, and what is found where it may not."""

from pathlib import Path

import pytest

from support.language import Case, cases, mismatches, spoken_of

HERE = Path(__file__).parent
PAGES = {page.stem: list(cases(page.read_text("utf-8"))) for page in sorted(HERE.glob("*.md"))}
TOLD = [pytest.param(name, case, id=f"{name}: {case.title}") for name, page in PAGES.items() for case in page]


@pytest.mark.parametrize(("page", "case"), TOLD)
def test_what_is_told_holds(page: str, case: Case, tmp_path: Path) -> None:
    """Each finding of a case is expected in its line, and each expectation is met."""
    assert "\n".join(mismatches(case, spoken_of(PAGES[page]), tmp_path)) == ""


def test_the_pages_tell_something() -> None:
    """The folder holds cases, with findings and without, and no two of a page have the same heading."""
    told = [(name, case) for name, page in PAGES.items() for case in page]
    titles = [(name, case.title) for name, case in told]

    assert len(titles) == len(set(titles))
    assert any(case.expected for _, case in told)
    assert any(not case.expected for _, case in told)


PAGE = """
# A page

Prose.

## A good file

```yaml
# sessions/trunk.yml
name: Trunk
aim: A trunk that stays.
blocks: [{kind: straight, sets: 2, exercises: [{exercise: plank, hold: 20 s}]}]
```

## A slip

```yaml
# sessions/trunk.yml
name: Trunk
aim:  # error: 1 [no-value]
blocks: [{kind: straight, sets: 2, exercises: [{exercise: plank, hold: 20 s}]}]
```

## A slip that nothing expects, and an expectation that nothing meets

```yaml
# sessions/trunk.yml
name: Trunk  # error: [no-value]
aim:
blocks: [{kind: straight, sets: 2, exercises: [{exercise: plank, hold: 20 s}]}]
```
"""


def test_a_page_is_read_as_cases(tmp_path: Path) -> None:
    """A met case has no mismatch; a case with the expectation in another line has two."""
    good, slip, wrong = cases(PAGE)

    assert mismatches(good, set(), tmp_path / "good") == []
    assert mismatches(slip, set(), tmp_path / "slip") == []
    assert mismatches(wrong, set(), tmp_path / "wrong") == [
        "not expected: program/sessions/trunk.yml:3:1: error: 'aim' has no value [no-value]",
        "not found: sessions/trunk.yml:2: error: [no-value]",
    ]
