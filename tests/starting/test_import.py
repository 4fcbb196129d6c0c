"""Tables as coaches keep them, brought in: the doses are the table's, and what is not read is named by its cell.

The tables are written for these tests; their shapes are common practice, no source.
"""

import io
import shutil
from collections.abc import Callable, Sequence
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import Workbook

from setwright.cli import main
from setwright.dose.progression import value_at
from setwright.dose.resolve import resolve
from setwright.model.load import magnitude
from setwright.model.progress import CountClimb
from setwright.model.units import KG_PER_LB
from setwright.source.read import read
from setwright.starting import cells
from setwright.starting.heads import head, letter
from setwright.starting.library import library
from setwright.starting.new import start
from setwright.starting.trend import trend

CLEAN, FOUND, USAGE = 0, 1, 2
Doses = dict[tuple[int, str, str], tuple[int, str, Fraction | None]]
"""By week, weekday and exercise: sets, the amount of each, and the load's number."""


@pytest.fixture(scope="module")
def new(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new club's project, which no test may change."""
    folder = tmp_path_factory.mktemp("new") / "club"
    start(folder, "Quay", date(2027, 3, 1), library())
    return folder


@pytest.fixture
def club(new: Path, tmp_path: Path) -> Path:
    """A new club's programme."""
    return Path(shutil.copytree(new, tmp_path / "club")) / "program"


def bring(club: Path, text: str | bytes, *words: str, name: str = "winter.csv") -> Result:
    """Import a table with all that it holds."""
    file = club.parent / name
    file.write_bytes(text.encode() if isinstance(text, str) else text)
    return CliRunner().invoke(
        main,
        ["import", str(file), "--program", str(club), "--starts", "2027-03-01", "--write", *words],
        catch_exceptions=False,
    )


def doses(club: Path, plan: str = "winter") -> Doses:
    """Return what the programme prescribes in each week of a plan."""
    programme = read(club).programme
    assert programme is not None
    (resolved,) = (one for one in resolve(programme) if one.ident == plan)
    return {
        (session.week, session.day, item.exercise): (
            item.dose.count,
            ", ".join(
                str(one.amount.low) if one.amount.is_one else f"{one.amount.low}-{one.amount.high}"
                for one in item.dose.working
            )
            if len({one.amount for one in item.dose.working}) > 1
            else f"{item.dose.first.amount.low}"
            + ("" if item.dose.first.amount.is_one else f"-{item.dose.first.amount.high}"),
            magnitude(item.dose.loads[0]) if item.dose.loads else None,
        )
        for session in resolved.sessions
        for item in session.items
    }


def workbook(fill: Callable[[Workbook], None]) -> bytes:
    """Return a workbook as bytes."""
    book, stream = Workbook(), io.BytesIO()
    fill(book)
    book.save(stream)
    return stream.getvalue()


def test_a_plain_table_with_a_row_a_week(club: Path) -> None:
    """Heads in words, supersets by letter, a climb that is recognised; the doses are the table's, week by week."""
    result = bring(
        club,
        "Week,Day,Order,Exercise,Sets,Reps,Load,Rest,Tempo,Notes\n"
        "1,Monday,A1,Goblet squat,3,8,12 kg,60 s,3110,Slow down\n"
        "1,Monday,A2,Push-up,3,8-10,BW,60 s,,\n"
        "2,Monday,A1,Goblet squat,3,9,12 kg,60 s,3110,Slow down\n"
        "2,Monday,A2,Push-up,3,8-10,BW,60 s,,\n"
        "3,Monday,A1,Goblet squat,3,10,12 kg,60 s,3110,Slow down\n"
        "3,Monday,A2,Push-up,3,8-10,BW,60 s,,\n",
    )

    assert result.exit_code == CLEAN
    assert doses(club) == {
        (week, "monday", ident): dose
        for week in (1, 2, 3)
        for ident, dose in (
            ("goblet-squat", (3, str(7 + week), Fraction(12))),
            ("push-up", (3, "8-10", None)),
        )
    }
    written = (club / "sessions" / "winter-monday.yml").read_text("utf-8")
    assert "kind: superset" in written
    assert "add: 1\n        up_to: 10" in written
    assert "tempo: 3-1-1-0" in written


def test_weeks_as_columns_in_a_workbook_with_merged_days(club: Path) -> None:
    """Days merged over their rows, a column a week, the dose in one cell: 3x8, 3 x 10."""

    def fill(book: Workbook) -> None:
        page = book.active
        assert page is not None
        for row in (
            ["Our winter", None, None, None, None],
            ["Day", "Exercise", "Week 1", "Week 2", "Week 3"],
            ["Tuesday", "Goblet squat", "3x8 @ 12 kg", "3x8 @ 14 kg", "3x8 @ 16 kg"],
            [None, "Front plank on forearms", "2 x 30 s", "2 x 30 s", "3 x 30 s"],
            ["Friday", "Box step-up", "2x8/side", "2x9/side", "2x10/side"],
            [None, "Kettlebell deadlift", "3x8 @ RPE 6", "3x8 @ RPE 6.5", "3x8 @ RPE 7"],
        ):
            page.append(row)
        page.merge_cells("A1:E1")
        page.merge_cells("A3:A4")
        page.merge_cells("A5:A6")

    result = bring(club, workbook(fill), name="winter.xlsx")
    found = doses(club)

    assert result.exit_code == CLEAN
    assert [found[week, "tuesday", "goblet-squat"] for week in (1, 2, 3)] == [(3, "8", 12), (3, "8", 14), (3, "8", 16)]
    assert [found[week, "tuesday", "front-plank"][:2] for week in (1, 2, 3)] == [(2, "30"), (2, "30"), (3, "30")]
    assert [found[week, "friday", "box-step-up"][1] for week in (1, 2, 3)] == ["8", "9", "10"]
    assert [found[week, "friday", "kettlebell-deadlift"][2] for week in (1, 2, 3)] == [6, Fraction(13, 2), 7]


def test_units_in_heads_commas_for_points_and_semicolons(club: Path) -> None:
    """As a spreadsheet of another language saves it: 12,5 under 'Load (kg)', 60 under 'Rest (s)', a byte-order mark."""
    table = "Session;Exercise;Sets;Reps;Load (kg);Rest (s)\nMonday;Goblet squat;3;8;12,5;60\n;Push-up;3;8;;60\n"
    result = bring(club, b"\xef\xbb\xbf" + table.encode())

    assert result.exit_code == CLEAN
    assert doses(club)[1, "monday", "goblet-squat"] == (3, "8", Fraction(25, 2))
    assert "Assumed: columns are separated by ';'" in result.stdout


def test_pounds_stay_pounds(club: Path) -> None:
    """25 lb is 25 times 0.45359237 kg (international pound, 1959), and climbs in pounds."""
    bring(
        club,
        "Week,Day,Exercise,Sets,Reps,Weight (lbs)\n1,Monday,Goblet squat,3,8,25\n2,Monday,Goblet squat,3,8,30\n",
    )
    found = doses(club)

    assert found[1, "monday", "goblet-squat"][2] == 25 * KG_PER_LB
    assert found[2, "monday", "goblet-squat"][2] == 30 * KG_PER_LB


def test_titles_between_rows_say_week_and_day(club: Path) -> None:
    """'Week 2' and 'Day A' in rows of their own; sessions without a weekday are put on one, and it is said."""
    result = bring(
        club,
        "Exercise,Sets x reps\nWeek 1,\nDay A,\nGoblet squat,3 x 8\nDay B,\nPush-up,3 x 6\n"
        "Week 2,\nDay A,\nGoblet squat,3 x 9\nDay B,\nPush-up,3 x 7\n",
    )

    assert result.exit_code == CLEAN
    assert "Assumed: 'Day A' names no weekday: it is put on monday" in result.stdout
    assert {key: dose[1] for key, dose in doses(club).items()} == {
        (1, "monday", "goblet-squat"): "8",
        (2, "monday", "goblet-squat"): "9",
        (1, "wednesday", "push-up"): "6",
        (2, "wednesday", "push-up"): "7",
    }


def test_a_table_without_heads(club: Path) -> None:
    """Names and doses are known by what they are; nothing else is used, and it is said."""
    result = bring(club, "Goblet squat,3x8,nice and deep\nPush-up,3x10,\nBird dog,2x6 each side,\n")

    assert result.exit_code == FOUND
    assert "there are no heads: column A was read as exercises (3 names are known)" in result.stdout
    assert "Not read: C1 'nice and deep'" in result.stdout
    assert "6 each side is 12 in all" in result.stdout
    assert doses(club)[1, "monday", "bird-dog"][:2] == (2, "12")


def test_repetitions_that_climb_before_the_load_are_one_progression(club: Path) -> None:
    """8, 9, 10 with 12 kg, then 8, 9, 10 with 14 kg: a double progression, and the same doses."""
    rows = [
        f"{week},Monday,Goblet squat,3,{8 + (week - 1) % 3},{12 + 2 * ((week - 1) // 3)} kg" for week in range(1, 7)
    ]
    result = bring(club, "\n".join(["Week,Day,Exercise,Sets,Reps,Load", *rows]))
    found = doses(club)

    assert result.exit_code == CLEAN
    assert [found[week, "monday", "goblet-squat"][1:] for week in range(1, 7)] == [
        ("8", 12), ("9", 12), ("10", 12), ("8", 14), ("9", 14), ("10", 14),
    ]  # fmt: skip
    assert "then:" in (club / "sessions" / "winter-monday.yml").read_text("utf-8")


def test_exercises_that_change_make_parts_of_a_plan(club: Path) -> None:
    """Another movement from week 3 on is another session, and the plan has two parts."""
    rows = [f"{week},Monday,{'Goblet squat' if week < 3 else 'Split squat'},3,8" for week in range(1, 5)]
    bring(club, "\n".join(["Week,Day,Exercise,Sets,Reps", *rows]))

    assert [key[2] for key in doses(club)] == ["goblet-squat", "goblet-squat", "split-squat", "split-squat"]
    assert sorted(path.name for path in (club / "sessions").glob("winter-*")) == [
        "winter-monday-2.yml",
        "winter-monday.yml",
    ]


def test_twelve_weeks_are_one_session(club: Path) -> None:
    """Two months and a half of typing become one file with its progressions."""
    rows = [f"{week},Monday,Goblet squat,3,{min(8 + week // 2, 12)},12 kg" for week in range(1, 13)]
    bring(club, "\n".join(["Week,Day,Exercise,Sets,Reps,Load", *rows]))

    assert len(list((club / "sessions").glob("winter-*"))) == 1
    assert [dose[1] for dose in doses(club).values()] == [str(min(8 + week // 2, 12)) for week in range(1, 13)]


@pytest.mark.parametrize(
    ("row", "cell", "why"),
    [
        ("Monday,Flying carpet,3,8,12 kg", "B2 'Flying carpet'", "no movement has this name"),
        ("Monday,Goblet squat,3,8,70 %", "E2 '70 %'", "as load: of what? write the unit into the cell or the head"),
        ("Monday,Goblet squat,3,8,12", "E2 '12'", "as load: of what? write the unit into the cell or the head"),
        ("Monday,Goblet squat,3,8,heavy-ish", "E2 'heavy-ish'", "as load: it is not read"),
        ("Monday,Goblet squat,3,max,12 kg", "D2 'max'", "as a dose: it is not read"),
        ("Monday,Goblet squat,three,8,12 kg", "C2 'three'", "as sets: it is not read"),
        ("Monday,Goblet squat,3,0,12 kg", "D2 '0'", "as a dose: it is not read"),
    ],
)
def test_what_cannot_be_read_is_named_by_its_cell(club: Path, row: str, cell: str, why: str) -> None:
    """Nothing is guessed: the cell, what stands in it, and why; the rest comes in."""
    result = bring(club, f"Day,Exercise,Sets,Reps,Load\n{row}\nMonday,Push-up,3,8,\n")

    assert result.exit_code == FOUND
    assert f"Not read: {cell}: {why}" in result.stdout
    assert doses(club)[1, "monday", "push-up"][:2] == (3, "8")


def test_nothing_is_written_before_it_is_asked_for(club: Path) -> None:
    """Without --write: the files are shown, and the folder is as it was."""
    before = {path: path.read_bytes() for path in club.rglob("*") if path.is_file()}
    file = club.parent / "winter.csv"
    file.write_text("Day,Exercise,Sets,Reps\nMonday,Squat jump,3,5\n")
    result = CliRunner().invoke(main, ["import", str(file), "--program", str(club)], catch_exceptions=False)

    assert result.exit_code == CLEAN
    assert "--- sessions/winter-monday.yml" in result.stdout
    assert "From the library: squat-jump" in result.stdout
    assert {path: path.read_bytes() for path in club.rglob("*") if path.is_file()} == before


def test_a_plan_that_is_there_stays(club: Path) -> None:
    """Importing the same table twice: the second time is refused, and nothing changes."""
    table = "Day,Exercise,Sets,Reps\nMonday,Push-up,3,5\n"
    assert bring(club, table).exit_code == CLEAN
    before = {path: path.read_bytes() for path in club.rglob("*") if path.is_file()}
    again = bring(club, table.replace("5", "6"))

    assert again.exit_code == USAGE
    assert "is there already: name another plan with --plan" in again.stderr
    assert {path: path.read_bytes() for path in club.rglob("*") if path.is_file()} == before


@pytest.mark.parametrize(
    ("raw", "name", "said"),
    [
        (b"", "winter.csv", "holds no table"),
        (b"\x00\x01\x02", "winter.csv", "no table of text"),
        (b"PK\x03\x04 not really", "winter.xlsx", "no workbook that can be read"),
        (b"a,b\nc,d\n", "winter.csv", "give one the head 'Exercise'"),
        (b"Exercise,Reps\n", "winter.csv", "no row of this table names a known exercise"),
        (b"x" * 2_000_001, "winter.csv", "larger than 2 MB"),
        (b"Exercise,Reps\n" + b"Push-up,8\n" * 6000, "winter.csv", "more than 5000 rows"),
        (b"Week,Exercise,Sets,Reps\n1,Push-up,3,8\n4,Push-up,3,8\n", "winter.csv", "a plan has no empty weeks"),
    ],
)
def test_a_file_that_is_no_programme_is_refused(club: Path, raw: bytes, name: str, said: str) -> None:
    """One sentence that says why, and nothing is written."""
    before = sorted(club.rglob("*"))
    result = bring(club, raw, name=name)

    assert result.exit_code == USAGE
    assert said in result.stderr
    assert sorted(club.rglob("*")) == before


def test_another_sheet_is_named_where_there_is_none(club: Path) -> None:
    """The message lists the sheets that there are."""
    result = bring(club, workbook(lambda book: book.create_sheet("Spring")), "--sheet", "Autumn", name="winter.xlsx")

    assert result.exit_code == USAGE
    assert "it has Sheet, Spring" in result.stderr


@pytest.mark.parametrize(
    ("text", "unit", "written"),
    [
        ("12 kg", "", "12 kg"),
        ("12,5", "kg", "12.5 kg"),
        ("2x10 kg", "", "10 kg per hand"),
        ("10kg each hand", "", "10 kg per hand"),
        ("45 LBS", "", "45 lb"),
        ("70", "% 1RM", "70 % 1RM"),
        ("70% 1RM", "", "70 % 1RM"),
        ("15 % BW", "", "15 % bodyweight"),
        ("RPE 7,5", "", "RPE 7.5"),
        ("2 RIR", "", "2 reps in reserve"),
        ("light band", "", "light band"),
        ("BW", "", cells.NONE),
        ("70 %", "", None),
        ("12", "", None),
        ("12-16 kg", "", None),
        ("RPE 11", "", None),
        ("9999999 kg", "", None),
        ("=1+1", "", None),
    ],
)
def test_loads_as_coaches_write_them(text: str, unit: str, written: str | None) -> None:
    """Each as the programme writes it, or not at all (common practice, no source)."""
    assert cells.load(text, unit) == written


@pytest.mark.parametrize(
    ("text", "unit", "amount"),
    [
        ("8", "", cells.Amount("reps", "8")),
        ("8-10", "", cells.Amount("reps", "8 to 10")),
        ("8–10 reps", "", cells.Amount("reps", "8 to 10")),
        ("8/side", "", cells.Amount("reps", "8", each=True)),
        ("8 each leg", "", cells.Amount("reps", "8", each=True)),
        ("12/10/8", "", cells.Amount("reps", ["12", "10", "8"])),
        ("30 sec", "", cells.Amount("time", "30 s")),
        ("30 s hold", "", cells.Amount("hold", "30 s")),
        ("hold for 45 s/side", "", cells.Amount("hold", "45 s", each=True)),
        ("40 s work", "", cells.Amount("work", "40 s")),
        ("30", "s", cells.Amount("time", "30 s")),
        ("1:30", "", cells.Amount("time", "90 s")),
        ("2 min", "", cells.Amount("time", "2 min")),
        ("20 m", "", cells.Amount("distance", "20 m")),
        ("10-8", "", None),
        ("0", "", None),
        ("AMRAP", "", None),
        ("8 or so", "", None),
    ],
)
def test_amounts_as_coaches_write_them(text: str, unit: str, amount: cells.Amount | None) -> None:
    """Each as the programme writes it, or not at all (common practice, no source)."""
    assert cells.amount(text, unit) == amount


@pytest.mark.parametrize(
    ("text", "kind", "unit"),
    [
        ("Load (kg)", "load", "kg"),
        ("Weight [lbs]", "load", "lb"),
        ("% 1RM", "load", "% 1RM"),
        ("Intensity (%1RM)", "load", "% 1RM"),
        ("Rest (sec)", "rest", "s"),
        ("Sets x Reps", "dose", ""),
        ("Sets/Reps", "dose", ""),
        ("RIR", "effort", "in reserve"),
        ("Time (s)", "amount", "s"),
        ("NOTES:", "note", ""),
    ],
)
def test_heads_as_coaches_write_them(text: str, kind: str, unit: str) -> None:
    """What a head says of its column, its unit included (common practice, no source)."""
    found = head(text)
    assert found is not None
    assert (found.kind, found.unit) == (kind, unit)


@pytest.mark.parametrize(
    ("label", "day"),
    [("Mon", "monday"), ("Tues A", "tuesday"), ("A (Thurs)", "thursday"), ("SATURDAY", "saturday"), ("Month 1", None)],
)
def test_days_as_coaches_write_them(club: Path, label: str, day: str | None) -> None:
    """Whole or short; a word that only begins like one is none (common practice, no source)."""
    result = bring(club, f"Session,Exercise,Sets,Reps\n{label},Push-up,3,5\n")

    assert [key[1] for key in doses(club)] == [day or "monday"]
    assert ("names no weekday" in result.stdout) == (day is None)


@pytest.mark.parametrize(("place", "name"), [(0, "A"), (25, "Z"), (26, "AA"), (701, "ZZ"), (702, "AAA")])
def test_columns_are_called_as_spreadsheets_call_them(place: int, name: str) -> None:
    """A to Z, then AA."""
    assert letter(place) == name


@given(st.lists(st.integers(1, 20), min_size=1, max_size=26))
def test_any_row_of_weeks_comes_back_from_its_progression(values: Sequence[int]) -> None:
    """Steps or list: in every week the progression gives what the table says."""
    first, progress = trend([str(value) for value in values], "sets")
    climb = CountClimb.model_validate(progress) if progress else None

    assert [value_at(int(str(first)), climb, week) for week in range(len(values))] == list(values)


def test_reading_a_broken_programme_comes_first(club: Path) -> None:
    """With a mistake in the programme, its finding is shown and nothing is written."""
    (club / "plans" / "first-weeks.yml").write_text("name: x\n")
    result = bring(club, "Day,Exercise,Sets,Reps\nMonday,Push-up,3,5\n")

    assert result.exit_code == USAGE
    assert "missing-key" in result.stderr
    assert not list((club / "sessions").glob("winter-*"))
