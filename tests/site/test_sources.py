"""What the pages say about where a number or a claim is from, and how sure anybody is of it."""

import html
import re

import pytest

from setwright.dose.one_rep_max import FORMULAS
from setwright.dose.resolve import resolve
from setwright.dose.rules import RULES
from setwright.handouts.booklet import booklet_data
from setwright.handouts.writing import Desk
from setwright.model.programme import Programme
from setwright.model.text import plain
from setwright.outline.addresses import EXPOSURE, NUMBERS, SOURCES, exercise_path, session_path
from setwright.outline.site import Site
from setwright.pages import tree
from support import make


def _words(page: bytes) -> str:
    return " ".join(html.unescape(re.sub(r"<[^>]+>", "", page.decode())).split())


@pytest.fixture(scope="module")
def pages(example: Programme) -> dict[str, str]:
    """The words of every page of the example."""
    rendered = tree.render(example, tuple(resolve(example)))
    return {name: _words(raw) for name, raw in rendered.items() if name.endswith(".md")}


def test_the_page_of_numbers_says_what_is_from_memory(pages: dict[str, str], example: Programme) -> None:
    """Beside each rule that has such a part, and in the booklet; beside each formula, and at the row of 12."""
    plan = resolve(example)[0]
    printed = {rule["title"]: rule["source"] for rule in booklet_data(Desk(Site(example, (plan,))), plan)["rules"]}
    marked = [rule for rule in RULES.values() if rule.from_memory]

    assert len(marked) >= 6
    assert [r.title for r in marked if f"From memory: {r.from_memory}" not in pages[NUMBERS]] == []
    assert [r.title for r in marked if f"From memory: {r.from_memory}" not in printed[r.title]] == []
    assert pages[NUMBERS].count("from memory)") == len(FORMULAS) + 1
    assert "1267 % (from memory)" in pages[NUMBERS]


def test_the_estimate_says_that_its_formulas_are_for_sets_to_failure(pages: dict[str, str]) -> None:
    """On the page of numbers, and where a member types a set in. None of them asks a member to go there."""
    blocks = "blocks: [{kind: straight, sets: 3, rest: 2 min, exercises: [{exercise: lift, reps: 5, load: 70 % 1RM}]}]"
    made = make.programme({"sessions/only": blocks})
    rendered = tree.render(made, tuple(resolve(made)))
    settings = next(words for raw in rendered.values() if "Don't test a 1RM alone." in (words := _words(raw)))

    assert "a set to failure" in pages[NUMBERS]
    assert "one more was not possible" in settings
    assert "that is the safe side" in settings


def test_effort_of_a_set_and_of_a_session_are_two_things(pages: dict[str, str], example: Programme) -> None:
    """Each has its rule, which names the other; a session's page calls its own number session effort."""
    plan = resolve(example)[0]
    session = next(one for one in plan.sessions if example.sessions[one.session].effort)

    assert "The effort of a whole session is another number" in RULES["effort"].says
    assert "does not follow from the efforts of the sets" in RULES["session-effort"].says
    assert "Session effort" in pages[session_path(session)]


def test_monotony_and_strain_are_gone(pages: dict[str, str]) -> None:
    """Without the runs beside the plan they say nothing, so that no page shows them."""
    assert [name for name in (EXPOSURE, NUMBERS) if re.search("monotony|strain", pages[name], re.IGNORECASE)] == []


def test_a_citation_says_what_was_studied(pages: dict[str, str], example: Programme) -> None:
    """On the page of sources and on each exercise that cites it; what is from memory stands with the source."""
    for ident, exercise in example.exercises.items():
        for source in exercise.sources:
            cited = example.references[source]
            if cited.studied:
                assert plain(cited.studied) in pages[exercise_path(ident)], (ident, source)
    for ident, cited in example.references.items():
        assert cited.from_memory is None or plain(cited.from_memory) in pages[SOURCES], ident
        assert cited.studied is None or plain(cited.studied) in pages[SOURCES], ident


def test_every_reference_that_an_exercise_cites_says_what_it_studied(example: Programme) -> None:
    """None of them studied this programme, so each says on whom, how heavy, or for what it is cited."""
    cited = {source for exercise in example.exercises.values() for source in exercise.sources}

    assert len(cited) >= 7
    assert [source for source in sorted(cited) if not example.references[source].studied] == []
