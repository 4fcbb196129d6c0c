"""From pages to Markdown files: pure, so that the same programme gives the same bytes."""

import json
from collections.abc import Mapping
from functools import partial
from types import MappingProxyType
from typing import Any, Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from setwright.outline import addresses, feeds, paper
from setwright.outline.site import Site
from setwright.pages import filters, pictures
from setwright.pages.page import Page
from setwright.phone import attributes
from setwright.wording import blocks, glance
from setwright.wording.effort import effort
from setwright.wording.explain import derivation
from setwright.wording.notice import notice
from setwright.wording.red_flags import red_flags

WITH_CONTENTS: Final = ("exposure", "plan", "session", "exercise", "find", "numbers", "week")
"""Kinds of pages long enough for a list of their sections beside them."""

AFTER: Final = "0.000001"
"""What a hit on a page of the coach weighs beside one on a member's: a title weighs a thousand times a text."""

SEARCH: Final[Mapping[str, str]] = MappingProxyType(
    {
        **dict.fromkeys(("session", "week", "check", "figures", "coach", "group", "hall"), "exclude: true"),
        **dict.fromkeys(
            ("review", "comparison", "data", "exposure", "checks", "numbers", "sources"), f"boost: {AFTER}"
        ),
    }
)
"""What the engine's search makes of some kinds of pages.

The whole index is fetched with every page, so it leaves out what says the same over and over and is found by another
page: the days of a plan, single checks, the sheet of all figures. Pages for coach and physiotherapist come after those
for members. Templates leave out sections by ``data-search-exclude``: of an exercise, the index holds what it is called,
is for, needs and asks to take care of, not every step.
"""


class Renderer:
    """Turns pages into Markdown files. Templates escape everything that they are not told is markup."""

    def __init__(self, site: Site) -> None:
        self.site = site
        language = site.language
        self.environment = Environment(
            loader=PackageLoader("setwright.pages"),
            extensions=["jinja2.ext.i18n"],
            autoescape=True,
            comment_start_string="{##",  # Markdown headings carry their ids as {#id}
            comment_end_string="##}",
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        i18n: Any = self.environment
        i18n.install_gettext_callables(
            lambda msgid: filters.marked_up(language.text(msgid)),
            lambda one, other, count: filters.marked_up(language.texts(one, other, count)),
            newstyle=True,
        )
        self.environment.filters.update(filters.filters(site))
        self.environment.globals.update(
            site=site,
            programme=site.programme,
            club=site.programme.club,
            language=language,
            paths=addresses,
            feeds=feeds,
            paper=paper,
            phone=attributes,
            pictures=pictures,
            blocks=blocks,
            glance=glance,
            derivation=derivation,
            efforts=partial(effort, language),
            safety_notice=notice(language),
            red_flags=red_flags(language, site.programme.club.safety),
            link=filters.link,
            strong=partial(filters.element, "strong"),
            code=partial(filters.element, "code"),
        )

    def render(self, one: Page) -> str:
        """Return one page as Markdown with front matter."""

        def url(to: str) -> str:
            return addresses.relative(one.path, to)

        def prose(text: str) -> Markup:
            return filters.prose(text, lambda ident: url(addresses.exercise_path(ident)))

        body = self.environment.get_template(one.template).render(**one.context, page=one, url=url, prose=prose)
        front = {"title": filters.safe_attribute(one.title), "description": filters.safe_attribute(one.description)}
        hidden = ["navigation"] if one.kind in WITH_CONTENTS else ["navigation", "toc"]
        lines = [f"{key}: {json.dumps(value, ensure_ascii=False)}" for key, value in front.items()]
        lines += [f"hide: [{', '.join(hidden)}]", f"kind: {one.kind}"]
        if one.kind in SEARCH:
            lines.append(f"search: {{{SEARCH[one.kind]}}}")
        return "\n".join(["---", *lines, "---", "", body.strip(), ""])
