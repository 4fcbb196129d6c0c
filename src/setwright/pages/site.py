"""The whole site as a mapping from path to bytes: pure, so that the same programme gives the same bytes."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property
from importlib.resources import files
from typing import Any, Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from setwright.checks.registry import Accepted
from setwright.dose import words
from setwright.dose.explain import derivation
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.model.programme import Programme
from setwright.pages import filters, page, paper, phone, pictures
from setwright.pages.notice import NOTICE
from setwright.pages.page import Page
from setwright.review.parts import Line
from setwright.review.status import Review, reviews

WITH_CONTENTS: Final = ("exposure", "plan", "session", "exercise", "find", "numbers", "week")
"""Kinds of pages long enough for a list of their sections beside them."""


Seen = Mapping[str, Mapping[str, tuple[Line, ...]]]
"""By exercise and part: the lines that a reviewer saw."""


@dataclass(frozen=True)
class Site:
    """What every page kind is made from.

    ``accepted`` are the warnings that the coach stands by; ``seen`` holds, by exercise and part, what a reviewer saw
    where that has changed since.
    """

    programme: Programme
    plans: tuple[ResolvedPlan, ...]
    accepted: tuple[Accepted, ...] = ()
    seen: Seen = field(default_factory=dict)

    @cached_property
    def uses(self) -> dict[str, list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]]:
        """Every place where an exercise stands, by exercise, in order of plan and date."""
        found: dict[str, list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]] = {}
        for plan in self.plans:
            for session in plan.sessions:
                for item in session.items:
                    found.setdefault(item.exercise, []).append((plan, session, item))
        return found

    @cached_property
    def reviews(self) -> dict[str, Review]:
        """Where each exercise stands with its reviewers."""
        return reviews(self.programme, self.plans)

    def kit_of(self, session: ResolvedSession) -> list[str]:
        """Return the kit that a session needs, in order of first use."""
        kit: dict[str, None] = {}
        for item in session.items:
            written = self.programme.sessions[session.session].blocks[item.slot[0]].exercises[item.slot[1]]
            kit.update(dict.fromkeys(written.kit or self.programme.exercises[item.exercise].kit))
        return list(kit)


class Renderer:
    """Turns pages into Markdown files. Templates escape everything that they are not told is markup."""

    def __init__(self, site: Site) -> None:
        self.site = site
        self.environment = Environment(
            loader=PackageLoader("setwright.pages"),
            autoescape=True,
            comment_start_string="{##",  # Markdown headings carry their ids as {#id}
            comment_end_string="##}",
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        self.environment.filters.update(filters.filters())
        self.environment.globals.update(
            site=site,
            programme=site.programme,
            club=site.programme.club,
            paths=page,
            paper=paper,
            phone=phone,
            pictures=pictures,
            words=words,
            derivation=derivation,
            safety_notice=NOTICE,
            big_amount=filters.big_amount,
            span_of_days=filters.span_of_days,
        )

    def render(self, one: Page) -> str:
        """Return one page as Markdown with front matter."""

        def url(to: str) -> str:
            return page.relative(one.path, to)

        def prose(text: str) -> Markup:
            return filters.prose(text, lambda ident: url(page.exercise_path(ident)))

        def kg(number: Fraction) -> str:
            return filters.mass(number, self.site.programme.club.units)

        body = self.environment.get_template(one.template).render(**one.context, page=one, url=url, prose=prose, kg=kg)
        front = {"title": filters.safe_attribute(one.title), "description": filters.safe_attribute(one.description)}
        hidden = ["navigation"] if one.kind in WITH_CONTENTS else ["navigation", "toc"]
        lines = [f"{key}: {json.dumps(value, ensure_ascii=False)}" for key, value in front.items()]
        return "\n".join(
            ["---", *lines, f"hide: [{', '.join(hidden)}]", f"kind: {one.kind}", "---", "", body.strip(), ""]
        )


def package_files(folder: str) -> Iterator[tuple[str, bytes]]:
    """Yield the files below a folder of this package, by relative path, in order."""
    root = files("setwright.pages") / folder
    waiting: list[tuple[str, Any]] = [("", root)]
    while waiting:
        prefix, place = waiting.pop()
        for child in sorted(place.iterdir(), key=lambda entry: entry.name):
            name = f"{prefix}{child.name}"
            if child.is_dir():
                waiting.append((f"{name}/", child))
            elif not child.name.startswith((".", "__")):
                yield name, child.read_bytes()
