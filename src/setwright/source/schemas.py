"""JSON Schema 2020-12 files, so that editors complete and check the coach's YAML while it is typed."""

import json
from typing import Any, Final

from pydantic import BaseModel

from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.plan import Plan
from setwright.model.reference import Reference
from setwright.model.routine import Routine
from setwright.model.session import Session
from setwright.model.sign_off import SignOff

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"

_MODELS: Final[dict[str, type[BaseModel]]] = {
    "club": Club,
    "exercise": Exercise,
    "plan": Plan,
    "routine": Routine,
    "session": Session,
}


def schemas() -> dict[str, str]:
    """Return every schema file of ``program/schema/`` by name."""
    files = {f"{name}.json": _written(model.model_json_schema(mode="validation")) for name, model in _MODELS.items()}
    one = Reference.model_json_schema(mode="validation")
    definitions = one.pop("$defs", {})
    listed = {
        "title": "References",
        "description": "Published sources, by id.",
        "type": "object",
        "additionalProperties": {"$ref": "#/$defs/Reference"},
        "$defs": {**definitions, "Reference": one},
    }
    files["references.json"] = _written(listed)
    signed = SignOff.model_json_schema(mode="validation")
    definitions = signed.pop("$defs", {})
    entries = {
        "title": "SignOffs",
        "description": "Who reviewed which exercise, and what was there to be read.",
        "type": "array",
        "items": {"$ref": "#/$defs/SignOff"},
        "$defs": {**definitions, "SignOff": signed},
    }
    files["sign-offs.json"] = _written(entries)
    return files


def _written(schema: dict[str, Any]) -> str:
    whole = {"$schema": DIALECT, **_for_people(schema)}
    return json.dumps(whole, ensure_ascii=False, indent=1) + "\n"


def _for_people(part: Any) -> Any:
    """Take out what a coach cannot write (null) and what an editor does not show (generated titles of fields)."""
    if isinstance(part, list):
        return [_for_people(item) for item in part]
    if not isinstance(part, dict):
        return part
    part = {key: _for_people(value) for key, value in part.items()}
    if part.get("default", "") is None:
        del part["default"]
    if "oneOf" in part:  # kinds of kit overlap in form, such as a list of weights and a list of names
        part["anyOf"] = part.pop("oneOf")
    branches = part.get("anyOf")
    if branches:
        branches = [branch for branch in branches if branch != {"type": "null"}]
        del part["anyOf"]
        part = {**branches[0], **part} if len(branches) == 1 else {**part, "anyOf": branches}
    if "description" in part and part.get("type") != "object":
        part.pop("title", None)
    return part
