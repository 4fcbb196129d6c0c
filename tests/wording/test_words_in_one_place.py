"""Templates, styles and browser code lay words out; they hold none that members read."""

import re
from pathlib import Path

import pytest

import setwright
from support.lexing import in_markup, in_script, in_template, in_typst

ROOT = Path(setwright.__file__).parent
COACHS = {
    # for the coach, whose words are English
    "pages/templates/check.md.jinja",
    "pages/templates/checks.md.jinja",
    "pages/templates/comparison.html.jinja",
}
ALLOWED = {
    "pages/templates/exposure.md.jinja": {
        "Pelland J and others 2024",
        "Foster C, Med Sci Sports Exerc 1998;30:1164-1168",
    },
    "pages/templates/log.md.jinja": {
        "Foster C, Med Sci Sports Exerc 1998;30:1164-1168",
        "Foster C et al., J Strength Cond Res 2001;15:109-115",
    },
    "pages/templates/sources.md.jinja": {"doi:"},
    "pages/templates/review.md.jinja": {"setwright sign"},
    "handouts/typst/pieces/frame.typ": {"Atkinson Hyperlegible Next", "Noto Sans"},
    "phone/assets/js/device/pages.js": {"what is kept"},
    "phone/assets/js/elements/figure.js": {
        "(prefers-reduced-motion: reduce)",
        "translate(${x} ${y})",
        "translate(${x}px, ${y}px) rotate(${turn}deg) scale(${wide}, ${long})",
    },
    "phone/assets/js/elements/make.js": {"the page has no ${selector}"},
    "phone/assets/js/elements/session-page.js": {"#${id} ~ ul"},
    "phone/assets/js/elements/settings.js": {"${name}: ${weightSaid("},
    "phone/assets/js/hall/hall.js": {"button, a, input", "Enter", "Page", "#stop-if ~ ul"},
    "phone/assets/js/logic/exact.js": {
        "${tenths({ over: value.over * KG_PER_LB.under, under: value.under * KG_PER_LB.over })} lb"
    },
    "phone/assets/js/theme/colours.js": {"(prefers-color-scheme: light)"},
    "phone/root/service-worker.js": {
        "what is kept",
        "the copy was deleted while it was made",
        "${name} is not the published one",
    },
}
"""What reads like words and is none of members': sources, names of types, selectors, styles, and what modules tell each
other or a developer. A weight with its unit is data."""

NOT_READ = {"phone/assets/js/logic/csv.js"}
"""The columns of the log's table are data: a later version reads them again. The lexer stumbles over its quotes."""


def files(pattern: str, below: str = "") -> list[str]:
    return [path.relative_to(ROOT).as_posix() for path in sorted((ROOT / below).rglob(pattern))]


def not_allowed(name: str, found: list[str]) -> list[str]:
    return [text for text in found if text not in ALLOWED.get(name, set())]


@pytest.mark.parametrize("name", [name for name in files("*.jinja") if name not in COACHS])
def test_a_template_holds_no_words(name: str) -> None:
    """Between its tags, in the attributes that are read out, and in what it writes."""
    assert not_allowed(name, in_template(ROOT / name)) == []


@pytest.mark.parametrize("name", files("*.html", "pages/theme"))
def test_a_file_of_the_theme_holds_no_words(name: str) -> None:
    """The engine renders it; its sentences are put in before."""
    said = re.sub(r'\{\{ _\("[^"]*"\) \}\}', "", (ROOT / name).read_text("utf-8"))
    markup = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", "", said, flags=re.DOTALL)

    assert not_allowed(name, in_markup(markup)) == []


@pytest.mark.parametrize("name", files("*.typ"))
def test_a_sheets_template_holds_no_words(name: str) -> None:
    """Its labels come with the data."""
    assert not_allowed(name, in_typst(ROOT / name)) == []


@pytest.mark.parametrize("name", [name for name in files("*.js") if name not in NOT_READ])
def test_browser_code_holds_no_words(name: str) -> None:
    """What a member reads goes through say, many or pieces; a selector with an attribute is none of it."""
    found = [text for text in in_script(ROOT / name) if "[data-" not in text]

    assert not_allowed(name, found) == []


@pytest.mark.parametrize("name", files("*.css"))
def test_a_style_holds_no_words(name: str) -> None:
    """What a style puts on the page, it takes from an attribute."""
    rules = re.sub(r"/\*.*?\*/", "", (ROOT / name).read_text("utf-8"), flags=re.DOTALL)

    put = [text for value in re.findall(r"content:([^;]*);", rules) for text in re.findall(r'"([^"]*)"', value)]

    assert [text for text in put if any(map(str.isalpha, text))] == []


PLANTED = {
    "a.jinja": ('<p>{{ _("Rest") }} Take care</p>', ["Take care"]),
    "b.jinja": ('<p title="On paper">{{ "Take care" if x else _("Rest") }}</p>', ["On paper", "Take care"]),
    "c.jinja": ('{{ _("In %(x)s", x="New York") }}', ["New York"]),
    "a.typ": ("#let a = [*Rest* #runs(b) after]\n", ["Rest", "after"]),
    "b.typ": ('#if a [#b: no session.] else { image(alt: "A picture of it") }\n', ["no", "session", "A picture of it"]),
    "c.typ": ("Ask first.\n#list(..a.map(runs))\n", ["Ask", "first"]),
    "a.js": ('make("p", "", "Take care"); say("Rest now"); button("Stop", "sw-button");', ["Take care", "Stop"]),
    "b.js": ('line = `${say("Done now")} and rest`;', ['${say("Done now")} and rest']),
}
"""Words where none should be."""


@pytest.mark.parametrize("name", PLANTED)
def test_planted_words_are_found(name: str, tmp_path: Path) -> None:
    """So an empty list above means that there are none."""
    text, words = PLANTED[name]
    read = {".jinja": in_template, ".typ": in_typst, ".js": in_script}
    path = tmp_path / name
    path.write_text(text, "utf-8")

    assert read[path.suffix](path) == words
