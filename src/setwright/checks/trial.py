"""Trying a check on an example: the small programme that the example makes, and what the checks say of it."""

from functools import cache
from typing import Any

from setwright.checks.example import BASE, USUAL, Example
from setwright.checks.registry import RULES, Verdict, run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.model.club import Club
from setwright.model.programme import Programme
from setwright.model.sign_off import SignOffs
from setwright.source.finding import Finding
from setwright.source.read import FOLDERS, Places, References
from setwright.source.tree import Tree, read_tree


def programme_of(example: Example) -> tuple[Programme, Places]:
    """Return the base programme with an example laid over it, key by key, and where the example's values stand.

    Raises:
        ValueError: for an example that the reader would refuse.
    """
    things: dict[str, dict[str, Any]] = {kind: {} for kind in FOLDERS}
    for name in {**BASE, **example}:
        kind, _, ident = name.partition("/")
        if ident:
            usual = _data(name, BASE.get(name, USUAL.get(kind, "")))
            things[kind][ident] = FOLDERS[kind].model_validate({**usual, **_said(name, example)})
    references = References.model_validate({"references": _data("references", BASE["references"])})
    sign_offs = SignOffs.model_validate({"sign_offs": _data("sign-offs", example.get("sign-offs", "")) or []})
    club = Club.model_validate({**_data("club", BASE["club"]), **_said("club", example)})
    made = Programme(club, **things, references=references.references, sign_offs=tuple(sign_offs.sign_offs))
    return made, Places("program", {f"{name}.yml": _tree(name, text) for name, text in example.items()})


def verdict_of(example: Example) -> Verdict:
    """Return what all checks say of an example."""
    return run(_subject(example))


@cache
def finding_on_bad(ident: str) -> Finding:
    """Return what a check says of its own bad example, as its page shows it."""
    rule = next(rule for rule in RULES if rule.ident == ident)
    return min(rule.finding(doubt) for doubt in rule.check(_subject(rule.bad)))


def _subject(example: Example) -> Subject:
    made, places = programme_of(example)
    return Subject(made, resolve(made), places)


def _said(name: str, example: Example) -> Any:
    return _data(name, example[name]) if name in example else {}


def _data(name: str, text: str) -> Any:
    if not text:
        return {}
    tree = _tree(name, text)
    return tree.root.data() if tree.root is not None else {}


def _tree(name: str, text: str) -> Tree:
    tree = read_tree(f"program/{name}.yml", text.strip().encode())
    if tree.findings:
        raise ValueError(f"the example {name} is not YAML: {tree.findings}")
    return tree
