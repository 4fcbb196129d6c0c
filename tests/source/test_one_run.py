"""Reading a whole programme: everything that is wrong comes in one run, in order, and the same every time."""

from pathlib import Path

from setwright.source.finding import MOST_FINDINGS, Finding, Position
from setwright.source.read import Cache, read
from setwright.source.suggest import did_you_mean
from support.reading import GOOD, LABEL, good_programme, put

SLIPS = {
    "club.yml": "name: Reedmere\n",
    "exercises/squat.yml": "name: Squat\npattern: sqat\n",
    "plans/regatta.yml": "name: [a\n",
    "sessions/legs.yml": "name: Legs\naim: Push.\nblocks: []\ncolour: red\n",
    "sessions/pull.yml": "",
}


def test_the_good_programme_is_good() -> None:
    """The surroundings of the other tests hold no mistake."""
    assert read(GOOD, LABEL).findings == ()


def test_all_errors_of_all_files_come_in_one_run(tmp_path: Path) -> None:
    """A mistake in one file hides none of another file's, whether it is of form, of syntax or of links."""
    findings = read(good_programme(tmp_path, SLIPS), LABEL).findings

    assert {f"{LABEL}/{name}" for name in SLIPS} == {finding.position.file for finding in findings}


def test_a_file_of_mistakes_is_told_in_part(tmp_path: Path) -> None:
    """Of hundreds of mistakes in one file, of form or of links, the first are told, and that there are more."""
    keys = "".join(f"key-{n}: x\n" for n in range(1000))
    wrong = " ".join(f"[x](exercise:e{n})" for n in range(40))
    links = (GOOD / "exercises/squat.yml").read_text("utf-8") + "stop_if:\n" + f'  - "{wrong}"\n' * 8
    program = good_programme(tmp_path, {"sessions/legs.yml": keys, "exercises/squat.yml": links})

    findings = read(program, LABEL).findings

    for name in ("sessions/legs.yml", "exercises/squat.yml"):
        here = [finding for finding in findings if finding.position.file == f"{LABEL}/{name}"]
        assert len(here) == 1 + MOST_FINDINGS
        assert "too-many-mistakes" in {finding.rule for finding in here}


def test_signs_that_do_not_print_are_seen_in_a_message(tmp_path: Path) -> None:
    """A joiner of no width, which no editor shows, stands in messages and hints as a question mark."""
    key = (GOOD / "sessions/trunk.yml").read_text("utf-8").replace("aim:", "a\u2060im:")
    club = (GOOD / "club.yml").read_text("utf-8").replace("light", "lig\u2060ht")

    findings = read(good_programme(tmp_path, {"club.yml": club, "sessions/trunk.yml": key}), LABEL).findings

    assert [(finding.message, finding.hint) for finding in findings] == [
        ("the club owns no light band", "did you mean 'lig?ht'?"),
        ("unknown key 'a?im'", "did you mean 'aim'?"),
    ]


def test_findings_are_sorted_by_place(tmp_path: Path) -> None:
    """Findings come by file, then line, then column, and none comes twice."""
    findings = read(good_programme(tmp_path, SLIPS), LABEL).findings

    assert sorted(set(findings)) == list(findings)


def test_reading_twice_gives_the_same(tmp_path: Path) -> None:
    """The same files give the same findings, with what an earlier reading left and without."""
    program = good_programme(tmp_path, SLIPS)
    cache: Cache = {}
    first = read(program, LABEL, cache)

    assert first.findings == read(program, LABEL, cache).findings
    assert first.findings == read(program, LABEL).findings


def test_a_mended_file_is_read_again(tmp_path: Path) -> None:
    """What an earlier reading left never hides that a file has changed."""
    program = good_programme(tmp_path, {"sessions/legs.yml": ""})
    cache: Cache = {}
    broken = read(program, LABEL, cache)
    put(program, "sessions/legs.yml", (GOOD / "sessions/legs.yml").read_bytes())

    mended = read(program, LABEL, cache)

    assert [finding.rule for finding in broken.findings] == ["file-empty"]
    assert mended.findings == ()
    assert mended.programme is not None


def test_a_file_that_cannot_be_read_still_counts_as_there(tmp_path: Path) -> None:
    """Ids that lead to a broken file are no mistakes of their own."""
    program = good_programme(tmp_path, {"exercises/squat.yml": "name: [", "routines/warm.yml": "name: ["})

    files = [finding.position.file for finding in read(program, LABEL).findings]

    assert [f"{LABEL}/exercises/squat.yml", f"{LABEL}/routines/warm.yml"] == files


def test_files_that_nothing_reads_are_doubtful(tmp_path: Path) -> None:
    """A file with no place here is a warning; hidden files, media, schemas and the README are left alone."""
    extra = dict.fromkeys(("notes.txt", "sessions/.legs.yml", "media/squat.png", "schema/x.json", "README.md"), "x")

    expected = Finding(
        Position(f"{LABEL}/notes.txt"), "unused-file", "nothing reads this file", "move or delete it", "warning"
    )

    assert (expected,) == read(good_programme(tmp_path, extra), LABEL).findings


def test_a_club_without_sources_needs_no_file_for_them(tmp_path: Path) -> None:
    """references.yml may be left out as long as nothing names a source."""
    squat = (GOOD / "exercises/squat.yml").read_text("utf-8").replace("sources: [ratamess-2009]\n", "")
    program = good_programme(tmp_path, {"exercises/squat.yml": squat})
    (program / "references.yml").unlink()

    assert read(program, LABEL).findings == ()


def test_a_link_inside_the_folder_is_followed(tmp_path: Path) -> None:
    """A link to another file of the programme is as good as a copy."""
    program = good_programme(tmp_path)
    (program / "sessions/legs.yml").unlink()
    (program / "sessions/legs.yml").symlink_to("trunk.yml")

    assert read(program, LABEL).findings == ()


def test_suggestions_prefer_swapped_letters_and_list_what_there_is() -> None:
    """The closest name is offered, swapped letters before other slips; without a close one, what exists."""
    assert did_you_mean("resp", ["rest", "reps", "load"]) == "did you mean 'reps'?"
    assert did_you_mean("SQUAT", ["squat"]) == "did you mean 'squat'?"
    assert did_you_mean("zzz", ["b", "a"]) == "one of: a, b"
    assert did_you_mean("zzz", ["b", "a"], "add it") == "add it"
    assert did_you_mean("zzz", []) == "there is none yet"


def test_an_unchanged_file_is_not_read_twice(tmp_path: Path) -> None:
    """While a preview runs, only the file that was saved is read anew, and each slip is still told."""
    program = good_programme(tmp_path, SLIPS)
    cache: Cache = {}
    first = read(program, LABEL, cache)
    put(program, "sessions/legs.yml", b"name: Legs\naim: Push.\nblocks: []\n")
    second = read(program, LABEL, cache)
    read_anew = {name for name, tree in second.places.trees.items() if tree is not first.places.trees[name]}

    assert read_anew == {"sessions/legs.yml"}


SIGNED = (
    "- {{exercise: {}, who: A physiotherapist, role: of the club, date: 2027-02-01, text: ghijklmnopab, "
    "cues: ghijklmnopab, cautions: none, limits: none, figure: none, doses: {{reps: [8, 8], sets: [2, 2]}}}}\n"
)


def test_sign_offs_are_read_with_the_programme(tmp_path: Path) -> None:
    """In the order of their file; one whose file is misnamed is told once, and nothing is read of it."""
    text = SIGNED.format("squat") + SIGNED.format("row")
    good = read(good_programme(tmp_path / "good", {"sign-offs.yml": text}), LABEL)
    misnamed = read(good_programme(tmp_path / "misnamed", {"sign-offs.yaml": text}), LABEL)

    assert good.findings == ()
    assert good.programme is not None
    assert [one.exercise for one in good.programme.sign_offs] == ["squat", "row"]
    assert [(f.rule, f.position.file) for f in misnamed.findings] == [("file-name", f"{LABEL}/sign-offs.yaml")]


def test_a_file_name_that_cannot_be_an_id_is_told_with_one_that_can(tmp_path: Path) -> None:
    """What is left of the name in small letters and digits; where nothing is, any name."""
    names = {"exercises/Big Squat!.yml": "name: x", "exercises/-.yml": "name: x"}
    found = read(good_programme(tmp_path, names), LABEL).findings

    assert [f.hint.rsplit(" ", 1)[-1] for f in found if f.rule == "file-name"] == ["'a-name.yml'", "'big-squat.yml'"]
