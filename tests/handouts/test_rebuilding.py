"""Only a sheet whose content changed is printed again, and the same content gives the same bytes."""

import json
import shutil
from pathlib import Path

import pytest

from setwright import publish
from setwright.handouts import tree
from setwright.handouts.press import Press
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from setwright.pages.tree import write


@pytest.fixture
def club(project: Path, tmp_path: Path) -> Path:
    """A copy of the example's project, rendered, that a test may change."""
    shutil.copytree(project / "program", tmp_path / "program")
    shutil.copytree(project / "docs_build", tmp_path / "docs_build")
    return tmp_path


def printed(club: Path, site_url: str | None = None) -> tree.Printed:
    looked = publish.look(club / "program")
    assert looked.programme is not None, looked.findings
    return tree.render(Desk(Site(looked.programme, looked.plans, looked.accepted), site_url), club / "docs_build")


def test_nothing_is_printed_again_for_nothing(club: Path) -> None:
    """A second run takes every sheet from the folder, byte for byte."""
    again = printed(club)

    assert again.printed == 0
    assert all((club / "docs_build" / path).read_bytes() == pdf for path, pdf in again.files.items())


def test_a_new_cue_changes_only_the_sheets_that_show_it(club: Path) -> None:
    """The card, the review sheets, the booklets and the sessions of that exercise; no other sheet."""
    cue = club / "program" / "exercises" / "squat-jump.yml"
    cue.write_text(cue.read_text("utf-8").replace("cues:\n", "cues:\n  - Zebra crossing\n", 1), "utf-8")
    looked = publish.look(club / "program")
    sessions = [s for plan in looked.plans for s in plan.sessions if "squat-jump" in {i.exercise for i in s.items}]
    before = json.loads((club / "docs_build" / tree.LIST).read_text("utf-8"))
    again = printed(club)
    after = json.loads(again.files[tree.LIST])
    changed = {path for path in after if after[path] != before.get(path)}

    assert again.printed == len(changed)
    assert changed == {
        "handouts/exercises/squat-jump.pdf",
        "handouts/review/squat-jump-review.pdf",
        "handouts/review/all-exercises-review.pdf",
        "handouts/relay/relay-booklet.pdf",
        *(f"handouts/relay/relay-week-{s.week:02}-{s.day}.pdf" for s in sessions),
        *(f"handouts/relay/relay-week-{s.week:02}.pdf" for s in sessions),
    }


@pytest.mark.parametrize("harm", ["changed", "deleted", "no list", "no sense in the list"])
def test_what_happened_to_a_sheet_by_hand_is_mended(club: Path, harm: str) -> None:
    """A sheet that is not the one that was printed is printed again."""
    docs = club / "docs_build"
    path = docs / "handouts" / "exercises" / "wall-sit.pdf"
    good = path.read_bytes()
    match harm:
        case "changed":
            path.write_bytes(good + b"%")
        case "deleted":
            path.unlink()
        case "no list":
            (docs / tree.LIST).unlink()
        case _:
            (docs / tree.LIST).write_text('{"handouts/exercises/wall-sit.pdf": "?"}', "utf-8")
    if harm in ("changed", "deleted"):
        again = printed(club)

        assert again.printed == 1
        write(again.files, club / "mended")
        assert (club / "mended" / "handouts" / "exercises" / "wall-sit.pdf").read_bytes() == good
    else:
        assert tree._read_list(docs / tree.LIST) == {}


def test_the_same_sheet_gives_the_same_bytes(desk: Desk) -> None:
    """Two presses, and the same press after other work, print one sheet alike."""
    sheets = {sheet.path: sheet for sheet in tree.sheets(desk)}
    one, other = sheets["handouts/relay/relay-week-07-friday.pdf"], sheets["handouts/exercises/wall-sit.pdf"]
    first, second = Press(), Press()
    once = first.print(one)
    first.print(other)

    assert first.print(one) == once
    assert second.print(one) == once


def test_a_sheet_knows_its_page_only_where_the_site_has_an_address(desk: Desk) -> None:
    """Without an address there is no square code that would lead nowhere."""
    nowhere = next(tree.sheets(Desk(desk.site)))
    published = next(tree.sheets(desk))

    assert nowhere.data["code"] is None
    assert nowhere.data["address"] is None
    assert published.data["address"] in published.text
    assert "<svg" in published.data["code"]
