"""The checks: a list of them, and a page for each with its reason, its source, its numbers and its two examples."""

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.checks.example import Example
from setwright.checks.registry import RULES
from setwright.checks.rule import Rule
from setwright.checks.threshold import Threshold
from setwright.checks.trial import finding_on_bad
from setwright.outline.addresses import CHECKS, REVIEW, check_path
from setwright.outline.site import Site
from setwright.pages.page import Crumb, Page


@dataclass(frozen=True)
class ThresholdView:
    """A threshold with its default and the club's own value and reason, if it set one."""

    threshold: Threshold
    usual: str
    lowest: str
    highest: str
    own: str
    why: str


@dataclass(frozen=True)
class File:
    """One file of an example."""

    name: str
    text: str


def pages(site: Site) -> Iterator[Page]:
    """Yield the list and every check's page."""
    settings = {rule.ident: thresholds(site, rule) for rule in RULES}
    yield Page(
        path=CHECKS,
        title="Checks",
        description="What is looked at before the programme is published.",
        template="checks.md.jinja",
        context={
            "rules": RULES,
            "own": {ident: [v for v in views if v.own] for ident, views in settings.items()},
        },
        crumbs=(Crumb(site.language.say("Review"), REVIEW),),
        kind="checks",
    )
    for rule in RULES:
        yield Page(
            path=check_path(rule.ident),
            title=rule.title,
            description=f"The check {rule.ident}: what it looks at, why, and an example.",
            template="check.md.jinja",
            context={
                "rule": rule,
                "thresholds": settings[rule.ident],
                "bad": files(rule.bad),
                "good": files(rule.good),
                "says": finding_on_bad(rule.ident),
                "accepted": [one for one in site.accepted if one.finding.rule == rule.ident],
            },
            crumbs=(Crumb(site.language.say("Review"), REVIEW), Crumb("Checks", CHECKS)),
            kind="check",
        )


def thresholds(site: Site, rule: Rule) -> list[ThresholdView]:
    """Return a check's thresholds as this club uses them."""
    views = []
    for threshold in rule.thresholds:
        value = threshold.set_by(site.programme.club.checks)
        why = next(
            (s.why for s in site.programme.club.checks if s.rule == rule.ident and getattr(s, threshold.key)), ""
        )
        views.append(
            ThresholdView(
                threshold,
                threshold.said(threshold.default),
                threshold.said(threshold.lowest),
                threshold.said(threshold.highest),
                threshold.said(value) if why else "",
                why,
            )
        )
    return views


def files(example: Example) -> list[File]:
    """Return an example file by file, its text as a coach would type it."""
    return [File(f"{name}.yml", text.strip()) for name, text in example.items()]
