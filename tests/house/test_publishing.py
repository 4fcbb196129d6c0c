"""The publishing workflow that a club copies."""

import json
import re
from importlib.resources import files
from pathlib import Path

import jsonschema
import yaml

ROOT = Path(__file__).resolve().parents[2]
WORKFLOW = ROOT / ".github" / "workflows" / "publish.yml"


def _workflow() -> dict[str, object]:
    loaded: dict[str, object] = yaml.load(WORKFLOW.read_text("utf-8"), Loader=_Yaml12)  # noqa: S506 - a safe loader
    return loaded


class _Yaml12(yaml.SafeLoader):
    """Reads `on` as a word, as YAML 1.2 does."""


_Yaml12.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in resolvers if tag != "tag:yaml.org,2002:bool"]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
_Yaml12.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile("^(true|false)$"), ["t", "f"])


def test_the_workflow_follows_its_format() -> None:
    """The file is valid by the published schema of workflow files, as check-jsonschema carries it."""
    schema = json.loads((files("check_jsonschema") / "builtin_schemas/vendor/github-workflows.json").read_text("utf-8"))
    workflow = _workflow()
    errors = [error.message for error in jsonschema.Draft7Validator(schema).iter_errors(workflow)]

    assert errors == []


def test_the_workflow_checks_builds_and_publishes() -> None:
    """It shows findings at their lines, builds, and publishes the built folder, in this order."""
    text = WORKFLOW.read_text("utf-8")
    order = [text.index(part) for part in ("setwright check --format annotations", "setwright build", "path: site")]

    assert order == sorted(order)
