"""Small programmes from the examples of the checks, laid over their common base."""

from typing import Any

from setwright.checks.example import BASE, USUAL, Example
from setwright.checks.registry import Verdict, run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.model.club import Club
from setwright.model.programme import Programme
from setwright.model.sign_off import SignOffs
from setwright.source.read import FOLDERS, Places, References
from setwright.source.tree import read_tree


def data(snippet: str) -> Any:
    """Return plain data from YAML, read as the tool reads it."""
    tree = read_tree("example.yml", snippet.encode())
    if tree.root is None or tree.findings:
        raise ValueError(f"not YAML: {tree.findings}")
    return tree.root.data()


def programme_of(example: Example) -> Programme:
    """Return the base programme with an example laid over it, key by key."""
    things: dict[str, dict[str, Any]] = {kind: {} for kind in FOLDERS}
    for name in {**BASE, **example}:
        kind, _, ident = name.partition("/")
        if ident:
            whole = {**data(BASE.get(name, USUAL[kind])), **(data(example[name]) if name in example else {})}
            things[kind][ident] = FOLDERS[kind].model_validate(whole)
    club = Club.model_validate({**data(BASE["club"]), **(data(example["club"]) if "club" in example else {})})
    signed = data(example["sign-offs"]) if "sign-offs" in example else []
    return Programme(
        club,
        **things,
        references=References.model_validate({"references": data(BASE["references"])}).references,
        sign_offs=tuple(SignOffs.model_validate({"sign_offs": signed}).sign_offs),
    )


def verdict_of(example: Example) -> Verdict:
    """Run every check over such a programme."""
    made = programme_of(example)
    return run(Subject(made, resolve(made), Places("program")))
