"""All checks, by hand and in order of their ids, and the run that sorts doubts into findings and accepted ones."""

from dataclasses import dataclass
from types import ModuleType
from typing import Final

from setwright.checks import (
    easier,
    event_day,
    home_option,
    lighter_week,
    limits,
    load_step,
    owned_weight,
    reps_at_load,
    taper,
    teaching,
    time_budget,
    unused,
)
from setwright.checks.rule import COMMON, Rule, Subject
from setwright.model.acceptance import Acceptance
from setwright.source.finding import Finding


def _rule(module: ModuleType) -> Rule:
    return Rule(module.ID, module.SEVERITY, module.SOURCE, module.check, module.__doc__ or "")


RULES: Final = tuple(
    sorted(
        map(
            _rule,
            (
                easier,
                event_day,
                home_option,
                lighter_week,
                limits,
                load_step,
                owned_weight,
                reps_at_load,
                taper,
                teaching,
                time_budget,
                unused,
            ),
        ),
        key=lambda rule: rule.ident,
    )
)


@dataclass(frozen=True)
class Accepted:
    """A warning that the coach stands by, with the reason."""

    finding: Finding
    why: str


@dataclass(frozen=True)
class Verdict:
    """What the checks found, and what was accepted."""

    findings: tuple[Finding, ...]
    accepted: tuple[Accepted, ...]


def run(subject: Subject) -> Verdict:
    """Run every check. A warning that is accepted beside the thing it is about moves to the accepted ones."""
    findings: list[Finding] = []
    accepted: list[Accepted] = []
    used: set[int] = set()
    for rule in RULES:
        for doubt in rule.check(subject):
            reason = next((a for a in doubt.accept if a.rule == rule.ident), None)
            if reason is None or rule.severity == "error":
                findings.append(rule.finding(doubt))
            else:
                used.add(id(reason))
                accepted.append(Accepted(rule.finding(doubt), reason.why))
    findings += _idle_acceptances(subject, used)
    return Verdict(tuple(sorted(findings)), tuple(sorted(accepted, key=lambda a: a.finding)))


def _idle_acceptances(subject: Subject, used: set[int]) -> list[Finding]:
    """Return a finding for each acceptance that no warning needs, or whose rule does not exist."""
    known = {rule.ident for rule in RULES if rule.severity == "warning"}
    found = []
    for file, path, acceptance in _acceptances(subject):
        place = subject.at(file, *path)
        if acceptance.rule not in known:
            message, hint = f"no warning is called '{acceptance.rule}'", f"one of: {', '.join(sorted(known))}"
            found.append(Finding(place, "unknown-rule", message, hint))
        elif id(acceptance) not in used:
            message = f"'{acceptance.rule}' is accepted here, but nothing raises it"
            found.append(Finding(place, "acceptance-without-warning", message, "delete it", "warning"))
    return found


def _acceptances(subject: Subject) -> list[tuple[str, tuple[str | int, ...], Acceptance]]:
    programme = subject.programme
    found: list[tuple[str, tuple[str | int, ...], Acceptance]] = []
    for folder, things in (
        ("exercises", programme.exercises),
        ("sessions", programme.sessions),
        ("plans", programme.plans),
    ):
        for ident, thing in things.items():
            found += [(f"{folder}/{ident}.yml", ("accept", i), a) for i, a in enumerate(thing.accept)]
    for ident, session in programme.sessions.items():
        for b, block in enumerate(session.blocks):
            for e, written in enumerate(block.exercises):
                path = ("blocks", b, "exercises", e, "accept")
                found += [(f"sessions/{ident}.yml", (*path, i), a) for i, a in enumerate(written.accept)]
    return found


__all__ = ["COMMON", "RULES", "Accepted", "Verdict", "run"]
