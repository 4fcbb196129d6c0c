"""The files laid over the site engine's theme, their few sentences in the site's language."""

from markupsafe import Markup, escape

from setwright.pages.filters import link
from setwright.wording.catalogue import IN_THEME
from setwright.wording.language import Language


def said(raw: bytes, language: Language) -> bytes:
    """Return a file of the theme with its sentences in a language.

    The engine renders these files and knows no catalogue, so a sentence is put in before, whatever is round it. A page
    for an address that leads nowhere knows only the site's root.
    """
    links = {
        "home": link(Markup("{{ '.' | url }}"), language.say("the home page")),
        "plans": link(Markup("{{ 'plans/' | url }}"), language.say("the plans")),
    }

    return IN_THEME.sub(lambda match: str(escape(language.text(match[1])) % links), raw.decode()).encode()
