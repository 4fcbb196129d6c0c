"""Browser code says sentences as pages do, from the same catalogue."""

from fractions import Fraction
from io import BytesIO
from typing import Any

import pytest
from babel.messages.pofile import read_po
from playwright.sync_api import Browser

from setwright.phone.catalogue import module
from setwright.wording.catalogue import spoken
from setwright.wording.language import ENGLISH, Language

POLISH = r"""
msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<12 || n%100>14) ? 1 : 2);\n"

msgid "This plan has ended."
msgstr "Ten plan się skończył."

msgid "You: %(weight)s in each hand"
msgstr "W każdej ręce %(weight)s"

msgid "%(num)s set"
msgid_plural "%(num)s sets"
msgstr[0] "%(num)s seria"
msgstr[1] "%(num)s serie"
msgstr[2] "%(num)s serii"
"""
"""The rule of plurals is that of the gettext manual, section 'Plural forms'. The words are from memory."""

SAID = """async ({words, counts}) => {
  const {say, many, pieces, weightSaid} = await import(words);
  const piece = pieces("You: %(weight)s in each hand", {weight: "10"});
  return [
    say("This plan has ended."), say("Rest"), say("about %(share)s %%", {share: 5}), piece.join("|"),
    weightSaid("12.5 kg"),
    ...counts.map((count) => many("%(num)s set", "%(num)s sets", count)),
  ];
}"""
COUNTS = [0, 1, 2, 5, 12, 22, 25]


def in_the_browser(browser: Browser, address: str, language: Language) -> list[Any]:
    """Return what a page says whose site has a language."""
    context = browser.new_context(service_workers="block")
    if (sentences := module(language)) is not None:
        context.route(
            "**/assets/js/catalogue.js", lambda route: route.fulfill(body=sentences, content_type="text/javascript")
        )
    page = context.new_page()
    page.goto(f"{address}safety/")
    said: list[Any] = page.evaluate(SAID, {"words": f"{address}assets/js/words.js", "counts": COUNTS})
    context.close()
    return said


def expected(language: Language) -> list[str]:
    return [
        language.say("This plan has ended."),
        language.say("Rest"),
        language.say("about %(share)s %%", share=5),
        language.say("You: %(weight)s in each hand", weight="|10|").strip("|"),
        language.say("%(number)s kg", number=language.number(Fraction(25, 2))),
        *(language.many("%(num)s set", "%(num)s sets", count) for count in COUNTS),
    ]


@pytest.mark.parametrize(
    "language", [ENGLISH, spoken("pl", read_po(BytesIO(POLISH.encode()), locale="pl"))], ids=["en", "pl"]
)
def test_a_page_says_in_the_browser_what_it_says_in_python(browser: Browser, address: str, language: Language) -> None:
    """Sentences, untranslated ones too, signs, elements inside a sentence, weights, and every form of a plural."""
    assert in_the_browser(browser, address, language) == expected(language)
