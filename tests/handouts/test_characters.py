"""Names in other scripts print; what no font can show is named, and never stops a club from publishing."""

from pathlib import Path

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.dose.resolve import resolve
from setwright.handouts import coverage, tree
from setwright.handouts.press import FONTS, Press
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from support import make
from support.amount import examples
from support.sheets import opened, text_of

PRESS = Press()


def test_the_list_of_characters_is_what_the_fonts_hold() -> None:
    """The fonts' own character maps (ISO/IEC 14496-22, table cmap) and the list beside them agree."""
    held: set[int] = set()
    for path in FONTS.glob("*.ttf"):
        with TTFont(path) as font:
            held |= font.getBestCmap().keys()
    listed: set[int] = set()
    for line in coverage.LIST.read_text("ascii").split():
        first, last = (int(code, 16) for code in line.split("-"))
        listed |= set(range(first, last + 1))

    assert listed == held


def test_every_font_has_its_licence_beside_it() -> None:
    """The fonts travel under the SIL Open Font License, whose text has to travel with them."""
    families = {path.stem.rsplit("-", 1)[0] for path in FONTS.glob("*.ttf")}
    licensed = {path.stem.removesuffix("-OFL") for path in FONTS.glob("*-OFL.txt")}

    assert families == licensed
    assert all("SIL OPEN FONT LICENSE Version 1.1" in path.read_text("utf-8") for path in FONTS.glob("*-OFL.txt"))


def desk(name: str) -> Desk:
    made = make.programme({"club": f"name: {name}"})
    return Desk(Site(made, resolve(made)))


@pytest.mark.parametrize("name", ["Skogslöparna Åre", "Český běh", "Ορειβάτες", "Клуб горы", "Đường mòn"])
def test_a_club_in_another_script_prints_its_name(name: str, tmp_path: Path) -> None:
    """Latin with all its accents, Greek and Cyrillic stand on the sheet as they were written."""
    done = tree.render(desk(name), tmp_path)
    text = text_of(opened(done.files["handouts/plan/plan-week-01-monday.pdf"]))

    assert done.lacking == ()
    assert name.replace(" ", "") in text


def test_a_name_that_no_font_can_show_is_reported(tmp_path: Path) -> None:
    """The sheet prints with a sign for each letter, and the run says which ones."""
    done = tree.render(desk("走る Club 🏃"), tmp_path)
    text = text_of(opened(done.files["handouts/plan/plan-week-01-monday.pdf"]))

    assert done.lacking == ("る", "走", "🏃")
    assert "��Club" in text


EMPTY = desk("A club")


@given(st.text(min_size=1, max_size=30))
@settings(max_examples=examples(15))
def test_any_text_prints(text: str) -> None:
    """No character that can be typed stops the press."""
    sheet = EMPTY.sheet("handouts/any.pdf", "review", {"title": "x" + text, "club": text, "sheets": []})
    pdf = PRESS.print(sheet)

    assert pdf.startswith(b"%PDF-")
