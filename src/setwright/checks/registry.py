"""All checks, by hand and in order of their ids, and the run that sorts doubts into findings and accepted ones."""

from collections.abc import Iterator
from dataclasses import dataclass
from types import ModuleType
from typing import Final

from setwright.checks import (
    beginners_way,
    change_of_several,
    circles,
    contacts_many,
    contacts_step,
    easier,
    event_day,
    exercise_step,
    film_astray,
    first_load,
    harmful_words,
    height_unstated,
    home_option,
    jump_rest,
    jump_stretch,
    jump_warm_up,
    jump_weight,
    jumps_beginners,
    jumps_key,
    jumps_last,
    jumps_tired,
    jumps_together,
    key_session,
    knee_hip,
    lifted_step,
    lighter_week,
    limits,
    list_beyond_plan,
    load_escapes_limit,
    load_step,
    minors,
    name_like_formula,
    no_source,
    no_way_back,
    other_training,
    owned_weight,
    per_hand_missing,
    pose_balance,
    pose_fit,
    pose_inside,
    pose_range,
    pose_settled,
    push_pull,
    region_step,
    regions_too_close,
    reps_at_load,
    rest_too_short,
    short_phases,
    sign_off_astray,
    sign_off_due,
    slow_reps,
    sore_way,
    takes,
    taper,
    taper_start,
    teaching,
    time_budget,
    to_failure,
    too_little_kit,
    unused,
    volume_step,
    words_beyond,
    work_beyond_clock,
)
from setwright.checks.rule import COMMON, Rule, Subject
from setwright.model.acceptance import Acceptance
from setwright.model.session import path_in_block
from setwright.source.finding import Finding
from setwright.source.suggest import did_you_mean

_MODULES: Final = (
    beginners_way,
    change_of_several,
    circles,
    contacts_many,
    contacts_step,
    easier,
    event_day,
    exercise_step,
    film_astray,
    first_load,
    harmful_words,
    height_unstated,
    home_option,
    jump_rest,
    jump_stretch,
    jump_warm_up,
    jump_weight,
    jumps_beginners,
    jumps_key,
    jumps_last,
    jumps_tired,
    jumps_together,
    key_session,
    knee_hip,
    lifted_step,
    lighter_week,
    limits,
    list_beyond_plan,
    load_escapes_limit,
    load_step,
    minors,
    name_like_formula,
    no_source,
    no_way_back,
    other_training,
    owned_weight,
    per_hand_missing,
    pose_balance,
    pose_fit,
    pose_inside,
    pose_range,
    pose_settled,
    push_pull,
    region_step,
    regions_too_close,
    reps_at_load,
    rest_too_short,
    short_phases,
    sign_off_astray,
    sign_off_due,
    slow_reps,
    sore_way,
    takes,
    taper,
    taper_start,
    teaching,
    time_budget,
    to_failure,
    too_little_kit,
    unused,
    volume_step,
    words_beyond,
    work_beyond_clock,
)


def _rule(module: ModuleType) -> Rule:
    return Rule(
        module.ID,
        module.SEVERITY,
        module.SOURCE,
        module.check,
        module.__doc__ or "",
        getattr(module, "THRESHOLDS", ()),
        module.BAD,
        module.GOOD,
    )


RULES: Final = tuple(sorted(map(_rule, _MODULES), key=lambda rule: rule.ident))


OF_THE_KIT: Final = frozenset({"no-owned-weight-near", "missing-home-option"})
"""Warnings about what there is to train with: true of the whole club, so that club.yml may accept them once."""


@dataclass(frozen=True)
class Accepted:
    """A warning that the coach stands by, with the reason."""

    finding: Finding
    why: str

    @property
    def exercise(self) -> str | None:
        """The id of the exercise at whose file it stands; None for another kind of file."""
        _, _, below = self.finding.position.file.rpartition("exercises/")
        return below.removesuffix(".yml") if "exercises/" in self.finding.position.file else None


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
            of_club = subject.programme.club.accept if rule.ident in OF_THE_KIT else []
            reason = next((a for a in (*doubt.accept, *of_club) if a.rule == rule.ident), None)
            if reason is not None:
                used.add(id(reason))
            if reason is None or (doubt.severity or rule.severity) == "error":
                findings.append(rule.finding(doubt))
            else:
                accepted.append(Accepted(rule.finding(doubt), reason.why))
    findings += _idle_acceptances(subject, used)
    findings += _settings_astray(subject)
    return Verdict(tuple(sorted(findings)), tuple(sorted(accepted, key=lambda a: a.finding)))


def _idle_acceptances(subject: Subject, used: set[int]) -> list[Finding]:
    """Return a finding for each acceptance that no warning needs, or whose rule does not exist."""
    known = {rule.ident for rule in RULES if rule.severity == "warning"}
    found = []
    for file, path, acceptance in _acceptances(subject):
        place = subject.at(file, *path)
        if acceptance.rule not in known:
            message, hint = f"no warning is called '{acceptance.rule}'", did_you_mean(acceptance.rule, known)
            found.append(Finding(place, "unknown-rule", message, hint))
        elif file == "club.yml" and acceptance.rule not in OF_THE_KIT:
            message = f"'{acceptance.rule}' is not about the kit, and cannot be accepted for the whole club"
            hint = f"accept it where it is raised; for the club: {', '.join(sorted(OF_THE_KIT))}"
            found.append(Finding(place, "acceptance-too-wide", message, hint))
        elif id(acceptance) not in used:
            message = f"'{acceptance.rule}' is accepted here, but nothing raises it"
            found.append(Finding(place, "acceptance-without-warning", message, "delete it", "warning"))
    return list(dict.fromkeys(found))  # what a file repeats by an alias stands in one place


def _acceptances(subject: Subject) -> list[tuple[str, tuple[str | int, ...], Acceptance]]:
    programme = subject.programme
    found: list[tuple[str, tuple[str | int, ...], Acceptance]] = [
        ("club.yml", ("accept", i), a) for i, a in enumerate(programme.club.accept)
    ]
    for folder, things in (
        ("exercises", programme.exercises),
        ("sessions", programme.sessions),
        ("plans", programme.plans),
    ):
        for ident, thing in things.items():
            found += [(f"{folder}/{ident}.yml", ("accept", i), a) for i, a in enumerate(thing.accept)]
    for ident, session in programme.sessions.items():
        for b, block in enumerate(session.blocks):
            for where, written in block.prescriptions():
                path = ("blocks", b, *path_in_block(where), "accept")
                found += [(f"sessions/{ident}.yml", (*path, i), a) for i, a in enumerate(written.accept)]
    return found


def _settings_astray(subject: Subject) -> Iterator[Finding]:
    """Yield a finding for each setting of the club that sets nothing: no such check, number, unit or range."""
    rules = {rule.ident: rule for rule in RULES if rule.thresholds}
    seen: set[tuple[str, str]] = set()
    for index, setting in enumerate(subject.programme.club.checks):
        rule = rules.get(setting.rule)
        if rule is None:
            hint = did_you_mean(setting.rule, rules)
            place = subject.at("club.yml", "checks", index, "rule")
            yield Finding(place, "unknown-rule", f"no check with a threshold is called '{setting.rule}'", hint)
            continue
        thresholds = {one.key: one for one in rule.thresholds}
        for key in ("least", "most"):
            written: str | None = getattr(setting, key)
            if written is None:
                continue
            place = subject.at("club.yml", "checks", index, key)
            threshold = thresholds.get(key)
            if threshold is None:
                hint = f"it has {' and '.join(thresholds)}"
                yield Finding(place, "unknown-threshold", f"'{setting.rule}' has no '{key}'", hint)
                continue
            if (setting.rule, key) in seen:
                yield Finding(place, "duplicate-key", f"'{key}' of '{setting.rule}' is set twice", "keep one of them")
            seen.add((setting.rule, key))
            try:
                threshold.parse(written)
            except ValueError as error:
                usual = f"write it as '{threshold.said(threshold.default)}', which is the default"
                message = f"'{written}' does not fit here: {error}"
                yield Finding(place, "threshold-unclear", message, usual)


__all__ = ["COMMON", "RULES", "Accepted", "Verdict", "run"]
