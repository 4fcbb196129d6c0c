"""The catalogue holds every sentence of members, and nothing is out of step with it."""

import pytest
from babel.messages.pofile import read_po

from setwright.phone.catalogue import module
from setwright.wording.catalogue import FOLDER, TEMPLATE
from setwright.wording.extraction import sentences, template, update
from setwright.wording.language import ENGLISH, Language
from support.pseudo import pseudo


def test_the_template_of_the_catalogues_is_as_the_sources_have_it() -> None:
    """After a change of words: ``python -m setwright.wording.extraction``."""
    assert TEMPLATE.read_bytes() == template()


def test_every_catalogue_follows_the_template() -> None:
    """A catalogue that lacks new sentences would pass for whole."""
    assert [path.name for path in FOLDER.glob("*.po") if path.read_bytes() != update(path)] == []


def test_sentences_are_found_in_every_kind_of_file() -> None:
    """Python, templates, the site engine's theme and browser code; one sentence of each."""
    found = {message.id: {place for place, _ in message.locations} for message in sentences()}

    assert "wording/items.py" in found["Your 1RM, kg"]
    assert "pages/templates/safety.md.jinja" in found["Whom to ask"]
    assert "pages/theme/whole-404.html" in found["There is no page here"]
    assert "phone/assets/js/elements/home-view.js" in found["This plan has ended."]


def test_translators_keep_places_for_values() -> None:
    """What a sentence leaves open, each translation leaves open too: else a page could not be rendered at all."""
    lost = []
    for path in FOLDER.glob("*.po"):
        with path.open("rb") as stream:
            lost += [(path.name, message.id) for message in read_po(stream) if list(message.check())]

    assert lost == []


def test_browser_code_gets_the_sentences_that_it_says() -> None:
    """And no others: a phone loads them with every page."""
    written = module(pseudo()) or ""

    assert '"This plan has ended."' in written
    assert '"%(num)s exercise ticked."' in written
    assert "Set-up and steps describe this movement" not in written
    assert module(ENGLISH) is None


def test_a_rule_of_plurals_is_an_expression_and_nothing_else() -> None:
    """It becomes a line of browser code."""
    wicked = Language("en", ENGLISH.locale, {}, plural_rule="alert(n)")

    with pytest.raises(ValueError, match="no rule of plurals"):
        module(wicked)
