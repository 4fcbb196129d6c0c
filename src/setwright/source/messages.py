"""From a model's complaint to a finding: the words a coach reads, and the place they point at."""

from collections.abc import Iterable
from dataclasses import dataclass
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError

from setwright.model.units import shown
from setwright.source.finding import MOST_FINDINGS, Finding, Position
from setwright.source.suggest import closest, did_you_mean, which_word
from setwright.source.tree import Path, Tree


def findings_of(error: ValidationError, model: type[BaseModel], tree: Tree) -> list[Finding]:
    """Return one finding for each mistake in one file, each at the place it is about.

    What only follows from another mistake is left out: a key that is missing because it is misspelt, or a whole that
    does not add up because one of its values was left empty.
    """
    complaints = [_Complaint(c, _path(c)) for c in error.errors(include_url=False)]
    missing: dict[Path, list[str]] = {}
    for complaint in complaints:
        if complaint.kind == "missing" and complaint.path not in tree.empty:
            missing.setdefault(complaint.path[:-1], []).append(str(complaint.path[-1]))
    # An empty value is reported already, and nothing is complained of below one.
    above_empty = {empty[:length] for empty in tree.empty for length in range(len(empty) + 1)}
    found: list[Finding] = []
    for complaint in complaints:
        if len(found) > MOST_FINDINGS:
            break
        if complaint.kind == "extra_forbidden":
            found.append(_unknown_key(complaint.path, model, tree, missing.get(complaint.path[:-1], [])))
        elif complaint.kind != "missing" and complaint.path not in above_empty:
            found.append(_word(complaint, tree))
    found += [_missing_keys(path, keys, model, tree) for path, keys in missing.items() if keys]
    return list(dict.fromkeys(found))


@dataclass(frozen=True)
class _Complaint:
    """One of pydantic's errors, with the path that a coach's file has."""

    error: Any
    path: Path

    @property
    def kind(self) -> str:
        """Pydantic's name for this error; "coach" for our own."""
        return str(self.error["type"])


def _path(error: Any) -> Path:
    return tuple(step for step in error["loc"] if not str(step).startswith("‹"))


def _missing_keys(path: Path, keys: list[str], model: type[BaseModel], tree: Tree) -> Finding:
    names = [f"'{key}'" for key in keys]
    if len(keys) == 1:
        return Finding(
            tree.place(path),
            "missing-key",
            f"{names[0]} is missing",
            f"add '{keys[0]}: ...'{_about(model, path, keys[0])}",
        )
    said = f"{', '.join(names[:-1])} and {names[-1]} are missing"
    return Finding(tree.place(path), "missing-key", said, "add each on a line of its own, such as 'name: ...'")


def _unknown_key(path: Path, model: type[BaseModel], tree: Tree, missing: list[str]) -> Finding:
    """Return the finding for an unknown key; take the key it stands for off the missing ones."""
    written = str(path[-1])
    known = keys_of(models_at(model, path[:-1]))
    meant = _KEYS_MEANT.get(written) or closest(written, missing) or closest(written, known)
    hint = _KEY_HINTS.get(written) or (f"did you mean '{meant}'?" if meant in known else did_you_mean(written, known))
    if meant in missing:
        missing.remove(meant)
    return Finding(tree.place(path, key=True), "unknown-key", f"unknown key {shown(written)}", hint)


def _word(complaint: _Complaint, tree: Tree) -> Finding:
    error, path = complaint.error, complaint.path
    context = error.get("ctx", {})
    is_key = bool(path) and path[-1] == "[key]"
    place = tree.place(path[:-1], key=True) if is_key else tree.place(path)
    match complaint.kind:
        case "coach":
            place = tree.place((*path, *context["at"])) if context["at"] else place
            return Finding(place, context["rule"], context["message"], context["hint"])
        case "literal_error":
            return _choice(place, error["input"], context)
        case "too_short":
            said = f"at least {context['min_length']} wanted here, found {context['actual_length']}"
            return Finding(place, "too-few", said, "add what is missing, or delete the key")
        case "too_long":
            said = f"at most {context['max_length']} fit here, found {context['actual_length']}"
            return Finding(place, "too-many", said, "shorten it")
    return Finding(place, *_TYPES.get(complaint.kind, ("not-valid", error["msg"], "")))


def _choice(place: Position, written: Any, context: Any) -> Finding:
    choices = [part.strip("' ") for part in context["expected"].replace(" or ", ", ").split(", ")]
    if not isinstance(written, str):
        return Finding(place, "not-a-choice", "expected one word here", which_word("", choices))
    return Finding(place, "not-a-choice", f"{shown(written)} is not known here", which_word(written, choices))


_TYPES = {
    "list_type": ("not-a-list", "expected a list here", "put each item on its own line after a dash: '- item'"),
    "dict_type": ("not-a-mapping", "expected keys and values here", "write 'key: value' lines, indented"),
    "model_type": ("not-a-mapping", "expected keys and values here", "write 'key: value' lines, indented"),
    "model_attributes_type": ("not-a-mapping", "expected keys and values here", "write 'key: value' lines, indented"),
}

_KEYS_MEANT = {"title": "name", "weight": "load", "kilograms": "load", "duration": "hold", "seconds": "hold"}
"""What a coach may call a key: the key that the language knows."""

_KEY_HINTS = {
    "<<": "merge keys are not used; write the keys out",
    "id": "an id is the file's name; delete the line",
    "comment": "write comments after a '#'",
}


def _about(model: type[BaseModel], path: Path, key: str) -> str:
    for owner in models_at(model, path):
        for name, field in owner.model_fields.items():
            if key in (name, field.alias) and field.description:
                about = field.description.rstrip(".")
                return f", {about[0].lower()}{about[1:]}"
    return ""


def keys_of(models: Iterable[type[BaseModel]]) -> list[str]:
    """Return every key that these models know, as a coach writes them."""
    return [field.alias or name for model in models for name, field in model.model_fields.items()]


def models_at(model: type[BaseModel], path: Path) -> list[type[BaseModel]]:
    """Return the models that may stand at a path below a model."""
    here = [model]
    for step in path:
        fields = [
            field.annotation
            for owner in here
            for name, field in owner.model_fields.items()
            if step in (name, field.alias)
        ]
        # An index, a key of a free mapping or a union's tag leads no further down the models.
        here = [found for annotation in fields for found in _models_in(annotation)] if fields else here
    return here


def _models_in(annotation: Any) -> list[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    origin = get_origin(annotation)
    if origin is Annotated:
        return _models_in(get_args(annotation)[0])
    if origin in (Union, UnionType, list, dict):
        return [model for part in get_args(annotation) for model in _models_in(part)]
    return []
