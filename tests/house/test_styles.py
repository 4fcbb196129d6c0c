"""The styles say each thing once: colours in the palette, the theme's prefix once a sheet, paper in one sheet."""

import re
from pathlib import Path

import pytest

from setwright.palette import DAY, NIGHT, PAPER

SOURCE = Path(__file__).resolve().parents[2] / "src" / "setwright"
PALETTE = SOURCE / "palette.css"
SHEETS = sorted(SOURCE.rglob("*.css"))
OTHERS = [path for path in SHEETS if path != PALETTE]
SCRIPTS = "\n".join(path.read_text("utf-8") for path in sorted(SOURCE.rglob("*.js")))
_MAKERS = {".jinja", ".py", ".html"}
MARKUP = "\n".join(path.read_text("utf-8") for path in sorted(SOURCE.rglob("*")) if path.suffix in _MAKERS)

COLOUR = re.compile(
    r"(?<![\w.&{/#])#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})\b(?!\()"
    r"|\b(?:rgb|hsl|hwb|lab|lch|oklab|oklch)a?\([^)]",
    re.IGNORECASE,
)
NAMED = re.compile(r":[^;{]*\b(?:black|white|gr[ae]y|silver|red|green|blue|navy|yellow|orange|brown|purple)\b[^;{]*;")
ELSEWHERE = {
    "assets/icon.svg": "a picture of its own",
    "theme/head.html": "the browser's frame, which reads no custom properties",
    "handouts/code.py": "black, as scanners want it",
    "templates/comparison.html.jinja": "a file that is handed round without the site",
}
"""What holds a colour for want of a palette that reaches it."""


def rules(sheet: Path) -> str:
    """Return a sheet without its comments."""
    return re.sub(r"/\*.*?\*/", "", sheet.read_text("utf-8"), flags=re.DOTALL)


@pytest.mark.parametrize("sheet", OTHERS, ids=lambda path: path.name)
def test_no_other_sheet_holds_a_colour(sheet: Path) -> None:
    """Every colour of a style is a custom property of the palette, or what is around it."""
    assert COLOUR.findall(rules(sheet)) == []
    assert NAMED.findall(rules(sheet)) == []


def test_no_other_file_holds_a_colour() -> None:
    """Pages, scripts and pictures take their colours from the palette too, but for four named files."""
    kinds = {".py", ".js", ".jinja", ".html", ".svg", ".typ"}
    found = {path for path in SOURCE.rglob("*") if path.suffix in kinds and COLOUR.search(path.read_text("utf-8"))}

    assert {"/".join(path.parts[-2:]) for path in found} == set(ELSEWHERE)


def test_the_browsers_frame_has_the_headers_colours() -> None:
    """The bar around a page is painted as the header is, by day and at night."""
    head = (SOURCE / "pages" / "theme" / "head.html").read_text("utf-8")
    told = dict(re.findall(r'content="(#\w+)" media="\(prefers-color-scheme: (\w+)\)"', head))

    assert {scheme: colour for colour, scheme in told.items()} == {
        "light": DAY["md-primary-fg-color"],
        "dark": NIGHT["md-primary-fg-color"],
    }


def test_night_and_paper_know_the_days_colours() -> None:
    """At night everything has a colour of its own; what paper says nothing of stays as by day."""
    assert NIGHT.keys() == DAY.keys()
    assert PAPER.keys() - DAY.keys() == {"sw-frame"}
    assert {name for name in DAY if name.startswith("sw-fig-") and PAPER[name] == DAY[name]} == {"sw-fig-edge"}


def test_what_is_referred_to_is_there_and_what_is_there_is_referred_to() -> None:
    """No property is asked for that nobody sets, and none is set that nobody asks for."""
    texts = "\n".join(map(rules, SHEETS))
    ours = {name for name in re.findall(r"--(sw-[\w-]+):", texts) if not name.startswith("sw-fig-")}
    asked = set(re.findall(r"var\(--(sw-[\w-]+)", texts))

    assert asked - ours == {name for name in asked if f'setProperty("--{name}"' in SCRIPTS}
    assert ours - asked == set()


@pytest.mark.parametrize("sheet", OTHERS, ids=lambda path: path.name)
def test_the_themes_prefix_stands_once_a_sheet(sheet: Path) -> None:
    """What stands on a page is nested in `.md-typeset`, which weighs as much as the theme's own rules do."""
    assert len(re.findall(r"\.md-typeset\b", rules(sheet))) == 1


def test_paper_has_one_sheet() -> None:
    """How a page prints stands in one sheet; what it prints with, in the palette."""
    assert {path.name for path in SHEETS if "@media print" in rules(path)} == {"print.css", "palette.css"}


def test_the_themes_box_around_folded_parts_is_taken_off_once() -> None:
    """One rule takes away what the theme draws around `<details>`."""
    screens = [path for path in OTHERS if path.name != "print.css"]
    taken = [path.name for path in screens for _ in re.findall("box-shadow: none|summary::before", rules(path))]

    assert taken == ["setwright.css"]


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda path: path.name)
def test_every_class_that_is_styled_is_made_somewhere(sheet: Path) -> None:
    """A style for nothing goes. What ends in a word of the programme, such as a status, is known by its beginning."""
    made = set(re.findall(r"sw-[\w-]+", MARKUP + SCRIPTS))
    begun = tuple(name for name in made if name.endswith("-"))
    styled = set(re.findall(r"\.(sw-[\w-]+)", rules(sheet)))

    assert [name for name in sorted(styled - made) if not name.startswith(begun)] == []
