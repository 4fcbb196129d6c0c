"""Photos of the club's own: real pictures of a decent size, from inside the programme's folder."""

from pathlib import Path

import pytest

from setwright.dose.resolve import resolve
from setwright.outline.addresses import exercise_path
from setwright.pages.tree import render
from setwright.source.media import MOST_BYTES
from setwright.source.read import Reading, read
from support.reading import GOOD, LABEL, good_programme

JPEG = b"\xff\xd8\xff\xe0"  # how a JPEG file begins: ISO/IEC 10918-1 and -5
PNG = b"\x89PNG\r\n\x1a\n"  # how a PNG file begins: W3C PNG specification


def with_photo(folder: Path, name: str, raw: bytes) -> Reading:
    """Read the good programme with a photo on one exercise."""
    squat = (GOOD / "exercises/squat.yml").read_text("utf-8")
    program = good_programme(
        folder, {"exercises/squat.yml": f"{squat}media: [{{photo: {name}, alt: A member squats.}}]\n"}
    )
    (program / "media").mkdir(exist_ok=True)
    (program / "media" / name).write_bytes(raw)
    return read(program, LABEL)


@pytest.mark.parametrize(("name", "raw"), [("squat.jpg", JPEG), ("squat.png", PNG + b"x" * 100)])
def test_a_photo_is_read_with_the_programme(tmp_path: Path, name: str, raw: bytes) -> None:
    """Its bytes stand in the programme under its name."""
    reading = with_photo(tmp_path, name, raw)

    assert reading.findings == ()
    assert reading.programme is not None
    assert reading.programme.photos == {name: raw}


@pytest.mark.parametrize(
    ("name", "raw", "rule"),
    [
        ("squat.jpg", b"<svg onload='x'/>", "photo-not-a-photo"),
        ("squat.png", JPEG, "photo-not-a-photo"),
        ("squat.jpg", JPEG + b"x" * MOST_BYTES, "photo-too-large"),
    ],
)
def test_a_photo_is_a_photo_of_decent_size(tmp_path: Path, name: str, raw: bytes, rule: str) -> None:
    """What is not what its ending says, or weighs too much, is a finding where the exercise names it."""
    (finding,) = with_photo(tmp_path, name, raw).findings

    assert finding.rule == rule
    assert finding.position.file == f"{LABEL}/exercises/squat.yml"


def test_a_photo_stands_on_its_exercise_s_page(tmp_path: Path) -> None:
    """The page shows it with its text, and the file is published."""
    programme = with_photo(tmp_path, "squat.jpg", JPEG).programme
    assert programme is not None
    tree = render(programme, resolve(programme))
    page = tree[exercise_path("squat")].decode()

    assert tree["assets/media/squat.jpg"] == JPEG
    assert 'assets/media/squat.jpg" alt="A member squats."' in page


def test_a_photo_never_leads_outside(tmp_path: Path) -> None:
    """A link that leaves the programme's folder is not followed."""
    (tmp_path / "secret").write_bytes(JPEG)
    squat = (GOOD / "exercises/squat.yml").read_text("utf-8")
    program = good_programme(
        tmp_path / "club", {"exercises/squat.yml": f"{squat}media: [{{photo: squat.jpg, alt: A member.}}]\n"}
    )
    (program / "media").mkdir(exist_ok=True)
    (program / "media" / "squat.jpg").symlink_to(tmp_path / "secret")
    findings = read(program, LABEL).findings

    assert "photo-missing" in {finding.rule for finding in findings}
