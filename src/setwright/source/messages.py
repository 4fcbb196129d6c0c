"""From a model's complaint to a finding: the words a coach reads, and the place they point at."""

from collections.abc import Iterable
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError

from setwright.model.units import shown
from setwright.source.finding import Finding
from setwright.source.suggest import did_you_mean
from setwright.source.tree import Path, Tree


def findings_of(error: ValidationError, model: type[BaseModel], tree: Tree) -> list[Finding]:
    """Return one finding for each complaint about one file, each at the place it is about."""
    found = []
    for complaint in error.errors(include_url=False):
        path = tuple(step for step in complaint["loc"] if not str(step).startswith("‹"))
        finding = _word(complaint, path, model, tree)
        if finding is not None and finding not in found:
            found.append(finding)
    return found


def _word(complaint: Any, path: Path, model: type[BaseModel], tree: Tree) -> Finding | None:
    kind, context = complaint["type"], complaint.get("ctx", {})
    if kind == "coach":
        place = tree.place((*path, *context["at"]))
        return Finding(place, context["rule"], context["message"], context["hint"])
    if path in tree.empty:
        return None  # already reported as having no value
    if kind == "missing":
        about = _about(model, path)
        return Finding(
            tree.place(path[:-1]), "missing-key", f"'{path[-1]}' is missing", f"add '{path[-1]}: ...'{about}"
        )
    if kind == "extra_forbidden":
        known = keys_of(models_at(model, path[:-1]))
        hint = _KEY_HINTS.get(str(path[-1])) or did_you_mean(str(path[-1]), known)
        return Finding(tree.place(path, key=True), "unknown-key", f"unknown key '{path[-1]}'", hint)
    if kind == "literal_error":
        return _choice(complaint, path, context, tree)
    if kind in ("too_short", "too_long"):
        return _length(kind, path, context, tree)
    return Finding(tree.place(path), *_TYPES.get(kind, ("not-valid", complaint["msg"], "")))


def _choice(complaint: Any, path: Path, context: Any, tree: Tree) -> Finding:
    choices = [part.strip("' ") for part in context["expected"].replace(" or ", ", ").split(", ")]
    written = complaint["input"]
    if not isinstance(written, str):
        return Finding(tree.place(path), "not-a-choice", "expected one word here", did_you_mean("", choices))
    is_key = path[-1] == "[key]"
    place = tree.place(path[:-1], key=True) if is_key else tree.place(path)
    return Finding(place, "not-a-choice", f"{shown(written)} is not known here", did_you_mean(written, choices))


def _length(kind: str, path: Path, context: Any, tree: Tree) -> Finding:
    limit = context.get("min_length") if kind == "too_short" else context.get("max_length")
    words = "at least" if kind == "too_short" else "at most"
    rule = "too-few" if kind == "too_short" else "too-many"
    return Finding(tree.place(path), rule, f"this list takes {words} {limit}, it has {context['actual_length']}", "")


_TYPES = {
    "list_type": ("not-a-list", "expected a list here", "put each item on its own line after a dash: '- item'"),
    "dict_type": ("not-a-mapping", "expected keys and values here", "write 'key: value' lines, indented"),
    "model_type": ("not-a-mapping", "expected keys and values here", "write 'key: value' lines, indented"),
    "model_attributes_type": ("not-a-mapping", "expected keys and values here", "write 'key: value' lines, indented"),
}

_KEY_HINTS = {
    "<<": "merge keys are not used; write the keys out",
    "title": "did you mean 'name'?",
    "id": "an id is the file's name; delete the line",
    "weight": "did you mean 'load'?",
    "comment": "write comments after a '#'",
}


def _about(model: type[BaseModel], path: Path) -> str:
    for owner in models_at(model, path[:-1]):
        for name, field in owner.model_fields.items():
            if path[-1] in (name, field.alias) and field.description:
                return f" ({field.description.rstrip('.')})"
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
