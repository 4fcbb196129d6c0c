"""The house is in order: format, lint, types, and the order of the rooms."""

import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


def run(*words: str) -> subprocess.CompletedProcess[str]:
    """Run a tool of this environment at the project's root."""
    tool = shutil.which(words[0], path=str(Path(sys.executable).parent))
    assert tool, f"{words[0]} is not installed"
    return subprocess.run([tool, *words[1:]], cwd=ROOT, capture_output=True, text=True)


@pytest.mark.parametrize(
    "words",
    [
        ("ruff", "check", "src", "tests"),
        ("ruff", "format", "--check", "src", "tests"),
        ("mypy",),
        ("lint-imports",),
    ],
    ids=lambda words: words[0] + ("-format" if "format" in words else ""),
)
def test_the_tool_has_nothing_to_say(words: tuple[str, ...]) -> None:
    """Lint, format, strict types and the import contract are clean."""
    done = run(*words)

    assert done.returncode == 0, done.stdout + done.stderr


def test_no_source_file_is_longer_than_400_lines() -> None:
    """A file that grows past 400 lines wants splitting by idea."""
    long = [path for path in (ROOT / "src").rglob("*.py") if len(path.read_text("utf-8").splitlines()) > 400]

    assert long == []


def test_every_package_is_pinned() -> None:
    """Every dependency has an upper bound in pyproject, and an exact version in the lock file."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    wanted = [*settings["dependencies"], *settings["optional-dependencies"]["test"]]
    names = {re.split(r"[<>=~\[ ]", entry)[0].lower().replace("_", "-") for entry in wanted}
    lock = (ROOT / "requirements.lock").read_text("utf-8").lower()
    locked = set(re.findall(r"^([a-z0-9._-]+)(?:\[[^]]*\])?==", lock, re.MULTILINE))

    assert [entry for entry in wanted if "<" not in entry and "==" not in entry and "types-" not in entry] == []
    assert names - locked == set()
