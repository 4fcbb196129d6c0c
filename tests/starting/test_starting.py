"""From nothing to a club's own site: a new project builds, movements can be taken, and nothing is ever overwritten."""

import errno
import os
import subprocess
import sys
import zipfile
from datetime import date
from pathlib import Path

import pytest
import yaml
from check_jsonschema.builtin_schemas import get_builtin_schema
from click.testing import CliRunner, Result
from jsonschema import Draft7Validator

from setwright import __version__, publish
from setwright.cli import main
from setwright.source.read import read
from setwright.starting.library import entries, library, with_what_they_name
from setwright.starting.new import next_monday
from support.site import ROOT

CLEAN, FOUND, USAGE = 0, 1, 2
CLUB = 'Ré "Quay" Rowers: 1'


def run(*words: str) -> Result:
    """Run one command; an exception that is no exit fails the test."""
    return CliRunner().invoke(main, words, catch_exceptions=False)


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A new club's project."""
    folder = tmp_path / "quay"
    assert run("new", str(folder), "--name", CLUB, "--starts", "2027-03-01").exit_code == CLEAN
    return folder


def texts(folder: Path) -> dict[str, str]:
    """Return every file of a folder, by relative path."""
    return {p.relative_to(folder).as_posix(): p.read_text("utf-8") for p in folder.rglob("*") if p.is_file()}


def test_a_new_project_has_nothing_to_mend(project: Path) -> None:
    """No error and no doubt before the first sign-off; the club's own name, and the day it asked for."""
    looked = publish.look(project / "program")
    assert looked.findings == ()
    assert looked.programme is not None
    assert looked.programme.club.name == CLUB
    assert looked.programme.plans["first-weeks"].starts == date(2027, 3, 1)
    assert yaml.safe_load((project / "mkdocs.yml").read_text("utf-8").split("theme:")[0])["site_name"] == CLUB


def test_without_a_first_day_there_is_none_to_edit(tmp_path: Path) -> None:
    """A new project's plan begins for each member when they like, and has nothing to mend either."""
    assert run("new", str(tmp_path / "quay"), "--name", CLUB).exit_code == CLEAN
    looked = publish.look(tmp_path / "quay" / "program")
    assert looked.findings == ()
    assert looked.programme is not None
    assert looked.programme.plans["first-weeks"].starts is None


def test_nothing_of_the_example_club_is_left(project: Path) -> None:
    """Neither its name nor its place stands in any file but the manual, which speaks of it as an example."""
    found = [path for path, text in texts(project).items() if "Tarnbeck" in text or "tarnbeck" in text]

    assert [path for path in found if path != "program/README.md"] == []
    assert [path for path, text in texts(project).items() if "@@" in text] == []
    assert not (project / "program" / "sign-offs.yml").exists()


def test_no_movement_brings_the_excuse_for_its_missing_sign_off(project: Path) -> None:
    """The example leaves one exercise unsigned to show its page: a club's own copy does not accept that."""
    assert "sign-off-due" in (ROOT / "program" / "exercises" / "wall-sit.yml").read_text("utf-8")
    assert run("take", "wall-sit", "--program", str(project / "program")).exit_code == CLEAN
    assert "sign-off-due" not in (project / "program" / "exercises" / "wall-sit.yml").read_text("utf-8")


def test_a_new_project_builds_a_site_that_says_what_comes_next(project: Path) -> None:
    """The first page tells the coach what to do now."""
    config, program = publish.project(project / "mkdocs.yml")
    built = publish.build(config, program, "program", sheets="left out")

    assert built.site is not None
    assert "Next: write whom members ask" in (built.site / "index.html").read_text("utf-8")


def test_the_workflow_for_gitlab_has_the_form_that_it_reads(project: Path) -> None:
    """The schema is the one that the forge publishes (JSON Schema Store, carried by check-jsonschema)."""
    written = yaml.safe_load((project / ".gitlab-ci.yml").read_text("utf-8"))

    schema = Draft7Validator(get_builtin_schema("vendor.gitlab-ci"))
    assert [error.message for error in schema.iter_errors(written)] == []


def test_the_workflow_for_github_is_this_projects_own_but_for_the_wheel(project: Path) -> None:
    """What is tested of the one holds for the other: one line differs, and how the lock file is named."""
    ours = (
        (ROOT / ".github" / "workflows" / "publish.yml")
        .read_text("utf-8")
        .replace("requirements.hashed.lock", "requirements.lock")
    )
    theirs = (project / ".github" / "workflows" / "publish.yml").read_text("utf-8")
    differing = [pair for pair in zip(ours.splitlines(), theirs.splitlines(), strict=True) if pair[0] != pair[1]]

    assert [[line.strip() for line in pair] for pair in differing] == [
        [
            "pip install --no-deps --no-build-isolation .",
            f"pip install --no-deps --no-index --find-links wheels setwright=={__version__}",
        ]
    ]


def test_workflows_install_this_version_from_the_clubs_own_folder(project: Path) -> None:
    """Dependencies by their digests, the tool from the wheel that the club keeps."""
    for file in (".github/workflows/publish.yml", ".gitlab-ci.yml", ".forgejo/workflows/publish.yml", "README.md"):
        text = (project / file).read_text("utf-8")
        assert "pip install --require-hashes -r requirements.lock" in text
        assert f"pip install --no-deps --no-index --find-links wheels setwright=={__version__}" in text


@pytest.mark.parametrize("name", ["", "A <b>", "a\x1b[31m", "x" * 500])
def test_a_name_that_cannot_be_one_leaves_nothing(tmp_path: Path, name: str) -> None:
    """The message is the one for a club's name, and no folder is left."""
    result = run("new", str(tmp_path / "club"), "--name", name)

    assert result.exit_code == USAGE
    assert "name" in result.stderr
    assert list(tmp_path.iterdir()) == []


def test_a_folder_with_anything_in_it_stays_as_it_is(tmp_path: Path) -> None:
    """An empty folder is used; one with a single file is refused and not touched."""
    (tmp_path / "empty").mkdir()
    assert run("new", str(tmp_path / "empty"), "--name", CLUB).exit_code == CLEAN
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "notes.txt").write_text("mine")
    result = run("new", str(tmp_path / "full"), "--name", CLUB)

    assert result.exit_code == USAGE
    assert "not an empty folder" in result.stderr
    assert texts(tmp_path / "full") == {"notes.txt": "mine"}


def test_the_folder_where_one_stands_can_be_used(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """'.' in an empty folder: it stays the same folder, since a terminal stands in it."""
    monkeypatch.chdir(tmp_path)
    before = tmp_path.stat().st_ino

    assert run("new", ".", "--name", CLUB).exit_code == CLEAN
    assert tmp_path.stat().st_ino == before
    assert (tmp_path / "program" / "club.yml").is_file()


def test_a_move_that_fails_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whichever of the moves into place fails (a full disk, say), no part of a project is left."""
    rename = Path.rename
    for good in range(4):
        done: list[Path] = []

        def failing(self: Path, target: Path, done: list[Path] = done, good: int = good) -> Path:
            if len(done) == good:
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            done.append(target)
            return rename(self, target)

        monkeypatch.setattr(Path, "rename", failing)
        result = run("new", str(tmp_path / "club"), "--name", CLUB)

        assert result.exit_code == FOUND
        assert "nothing was written" in result.stderr
        assert texts(tmp_path) == {}


@pytest.mark.parametrize(
    ("today", "monday"),
    [
        (date(2026, 11, 29), date(2026, 11, 30)),
        (date(2026, 11, 30), date(2026, 12, 7)),
        (date(2026, 12, 31), date(2027, 1, 4)),
    ],
)
def test_a_first_plan_starts_on_the_next_monday(today: date, monday: date) -> None:
    """Not today, even on a Monday."""
    assert next_monday(today) == monday


def test_movements_are_found_by_words_region_pattern_and_kit() -> None:
    """Each narrows the list; a word that nothing has says which there are."""
    assert run("exercises", "squat", "--kit", "kettlebell").stdout.startswith("goblet-squat")
    everything = run("exercises").stdout.splitlines()
    assert len(everything) == len(library().programme.exercises)
    assert run("exercises", "--region", "calf").exit_code == CLEAN
    slip = run("exercises", "--region", "calff")
    assert slip.exit_code == USAGE
    assert "did you mean 'calf'" in slip.stderr
    assert run("exercises", "zeppelin").exit_code == FOUND


def test_a_movement_comes_with_what_it_leads_to_and_its_sources(project: Path) -> None:
    """Easier and harder ways and references come along, and what is there stays as it is, word for word."""
    mine = project / "program" / "exercises" / "sit-to-box.yml"
    mine.write_text(mine.read_text("utf-8").replace("Sit to box", "Sit down, my way"), "utf-8")
    before = texts(project / "program")
    result = run("take", "squat-jump", "sit-to-box", "--program", str(project / "program"))
    after = texts(project / "program")
    changed = {path for path in after if before.get(path) != after[path]}
    programme = library().programme
    wanted = with_what_they_name(programme, ["squat-jump"])
    new = {f"exercises/{ident}.yml" for ident in wanted if f"exercises/{ident}.yml" not in before}

    assert changed == new | {"references.yml"}
    assert after["references.yml"].startswith(before["references.yml"])
    assert set(entries(after["references.yml"])) >= set(programme.exercises["squat-jump"].sources)
    assert "sit-to-box.yml was there already and is as it was" in result.stdout
    assert result.exit_code == FOUND
    assert "add 'step' to 'kit' in club.yml" in result.stderr


def test_every_movement_can_be_taken_into_a_club_that_owns_its_kit(project: Path) -> None:
    """All at once, and twice: the programme still has no error, and the second time writes nothing."""
    club = project / "program" / "club.yml"
    club.write_text(club.read_text("utf-8").replace("  bench: 2\n", "  bench: 2\n  step: 4\n"), "utf-8")
    everything = sorted(library().programme.exercises)
    assert run("take", *everything, "--program", str(project / "program")).exit_code == CLEAN
    whole = texts(project / "program")
    assert run("take", *everything, "--program", str(project / "program")).exit_code == CLEAN

    assert texts(project / "program") == whole
    assert read(project / "program").errors == ()


def test_an_unknown_movement_writes_nothing(project: Path) -> None:
    """A slip in one of two ids: the message says what was meant, and neither is taken."""
    before = texts(project)
    result = run("take", "squat-jump", "wal-sit", "--program", str(project / "program"))

    assert result.exit_code == USAGE
    assert "did you mean 'wall-sit'" in result.stderr
    assert texts(project) == before


def test_the_wheel_alone_starts_a_club(tmp_path: Path) -> None:
    """Installed in an empty folder, without this checkout: new, take and check run from what the wheel carries."""
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(tmp_path / "wheels")],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    (wheel,) = (tmp_path / "wheels").iterdir()
    zipfile.ZipFile(wheel).extractall(tmp_path / "installed")
    code = "import setwright, sys; assert sys.argv.pop(1) in setwright.__file__; from setwright.cli import main; main()"

    def wheels(*words: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-c", code, str(tmp_path / "installed"), *words],
            cwd=tmp_path,
            env={"PYTHONPATH": str(tmp_path / "installed"), "PATH": ""},
            capture_output=True,
            text=True,
            check=False,
        )

    assert wheels("new", "club", "--name", CLUB, "--starts", "2027-03-01").returncode == CLEAN
    in_place = CliRunner().invoke(main, ["new", str(tmp_path / "same"), "--name", CLUB, "--starts", "2027-03-01"])
    assert in_place.exit_code == CLEAN
    assert texts(tmp_path / "club") == texts(tmp_path / "same")
    assert wheels("take", "calf-stretch", "--program", "club/program").returncode == CLEAN
    assert wheels("check", "--program", "club/program").returncode == CLEAN
