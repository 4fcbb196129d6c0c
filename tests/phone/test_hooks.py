"""What browser code looks for on a page is a `data-` attribute that says so; a class is for looks and may change."""

import re
from pathlib import Path

import pytest

import setwright

ROOT = Path(setwright.__file__).parent
SCRIPTS = sorted((ROOT / "phone" / "assets" / "js").rglob("*.js"))
CODE = "\n".join(path.read_text("utf-8") for path in SCRIPTS)
MARKUP = "\n".join(path.read_text("utf-8") for path in sorted(ROOT.rglob("*.jinja")))
CLASS = re.compile(r"""["'`(> ,]\.sw-[\w-]+""")
ASKED = set(re.findall(r"\[data-hook='([\w-]+)'\]", CODE))
WRITTEN = set(re.findall(r'data-hook="([\w-]+)"', MARKUP))
MADE = set(re.findall(r'dataset\.hook = "([\w-]+)"|setAttribute\("data-hook", "([\w-]+)"\)', CODE))
HOOKS = WRITTEN | {name for pair in MADE for name in pair if name}


def without_comments(path: Path) -> str:
    return re.sub(r"/\*.*?\*/|^\s*//.*$", "", path.read_text("utf-8"), flags=re.DOTALL | re.MULTILINE)


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.name)
def test_no_module_looks_for_a_class_of_ours(path: Path) -> None:
    """A selector of a script names a hook, a part, an element or an attribute."""
    assert CLASS.findall(without_comments(path)) == []
    assert re.findall(r"""classList\.contains|getElementsByClassName""", path.read_text("utf-8")) == []


def test_a_class_that_is_looked_for_is_found() -> None:
    """So the empty lists above mean that there is none."""
    assert CLASS.findall('the(this, ".sw-status"); all(`:scope > .sw-way`)') == ['".sw-status', " .sw-way"]


def test_each_hook_is_there() -> None:
    """What a script asks for, a template or another script writes."""
    assert sorted(ASKED - HOOKS) == []
    assert len(ASKED) > 20


def test_each_hook_is_asked_for() -> None:
    """A hook that nobody takes goes."""
    assert sorted(HOOKS - ASKED) == []


def test_each_part_of_an_exercise_is_there() -> None:
    """The guide shows parts of an exercise by their names, which the page gives them."""
    calls = re.findall(r"""parts?Of\((?:[\w.]+|guide\.itemOf\([\w.]+\)), ((?:"[\w-]+"(?:, )?)+)\)""", CODE)
    named = {name for call in calls for name in re.findall(r'"([\w-]+)"', call)}
    given = set(re.findall(r'data-part="([\w-]+)"', MARKUP)) | set(re.findall(r'dataset\.part = "([\w-]+)"', CODE))

    assert {"amount", "cues", "care", "not-for"} <= named
    assert sorted(named - given) == []
