"""The publishing workflow that a club copies."""

import json
import re
import tomllib
from importlib.resources import files
from pathlib import Path
from typing import Any

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


def test_a_hook_checks_before_a_commit() -> None:
    """The keys are those of the hooks' format (from memory); what it runs is a command of this package."""
    (hook,) = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))
    package = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]

    assert hook.keys() == {"id", "name", "description", "entry", "language", "files", "pass_filenames"}
    assert hook["language"] == "python"
    assert hook["entry"].split() == [*package["scripts"], "check"]
    assert re.search(hook["files"], "program/plans/relay.yml")


def test_the_list_of_what_is_kept_new_follows_its_format() -> None:
    """Dependabot's file is valid by its published schema, and has the actions and the packages in it."""
    schema = json.loads((files("check_jsonschema") / "builtin_schemas/vendor/dependabot.json").read_text("utf-8"))
    told = yaml.safe_load((WORKFLOW.parents[1] / "dependabot.yml").read_text("utf-8"))

    assert [error.message for error in jsonschema.Draft7Validator(schema).iter_errors(told)] == []
    assert {one["package-ecosystem"] for one in told["updates"]} == {"github-actions", "pip"}


TAGGED = {"actions/upload-pages-artifact", "actions/deploy-pages"}
"""Actions whose commits could not be looked up: the workflow says so beside each."""


def test_an_action_is_named_by_its_commit() -> None:
    """A commit with its version beside it; a tag only where the file says that it is one."""
    for line in re.findall(r"uses: (.*)", WORKFLOW.read_text("utf-8")):
        name, at = line.split("@", 1)
        if name in TAGGED:
            assert re.fullmatch(r"v\d+  # a tag: see above", at), line
        else:
            assert re.fullmatch(r"[0-9a-f]{40}  # v\d+\.\d+\.\d+", at), line


def test_the_checkout_leaves_no_key_behind() -> None:
    """What runs after it cannot push (GitHub Docs, actions/checkout: persist-credentials)."""
    steps = [step for job in _jobs().values() for step in job["steps"]]

    checkouts = [step for step in steps if step.get("uses", "").startswith("actions/checkout@")]

    assert [step["with"]["persist-credentials"] for step in checkouts] == [False]


def test_a_deployment_is_never_stopped_half_way() -> None:
    """A newer run stops the checks of a pull request, which deploys nothing, and no other run."""
    concurrency = _workflow()["concurrency"]

    assert concurrency["cancel-in-progress"] == "${{ github.event_name == 'pull_request' }}"  # type: ignore[index]
    assert "github.event_name != 'pull_request'" in _jobs()["publish"]["if"]


def _jobs() -> dict[str, Any]:
    jobs: dict[str, Any] = _workflow()["jobs"]  # type: ignore[assignment]
    return jobs


PIN = re.compile(r"^([a-z0-9-]+)==(\S+)(?: ; (.*?))?(?: \\)?$", re.MULTILINE)


def test_both_lock_files_agree() -> None:
    """Each version of one is that of the other, and each has a digest where the workflow installs it."""
    plain = set(PIN.findall((ROOT / "requirements.lock").read_text("utf-8")))
    text = (ROOT / "requirements.hashed.lock").read_text("utf-8")
    hashed = set(PIN.findall(text))
    names = {name for name, _, _ in plain}
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    needed = {re.split(r"[<>=]", line)[0].strip() for line in project["dependencies"]}

    assert {pin for pin in hashed if pin[0] in names} <= plain
    assert needed | {"hatchling"} <= {name for name, _, _ in hashed}
    assert {name for name, _, _ in hashed} - names <= {"hatchling", "tomlkit", "trove-classifiers"}
    assert all("--hash=sha256:" in part for part in re.split(r"(?m)^(?=[a-z])", text)[1:])


def test_the_workflow_installs_nothing_without_its_digest() -> None:
    """Packages from the lock with digests, then the tool itself with nothing fetched for it."""
    installs = re.findall(r"^ *(?:run: )?(pip install .*)$", WORKFLOW.read_text("utf-8"), re.MULTILINE)

    assert installs == [
        "pip install --require-hashes -r requirements.hashed.lock",
        "pip install --no-deps --no-build-isolation .",
    ]


def test_the_tools_of_the_checks_lie_in_a_folder_of_their_own() -> None:
    """In a shared folder of a known name, another user of the machine could put other tools."""
    text = (ROOT / ".ci" / "run").read_text("utf-8")

    assert 'tools="${SETWRIGHT_TOOLS:-$PWD/.ci/tools}"' in text
    assert "TMPDIR" not in text
    assert ".ci/tools/" in (ROOT / ".gitignore").read_text("utf-8").splitlines()


def test_the_workflow_checks_builds_and_publishes() -> None:
    """It shows findings at their lines, builds, and publishes the built folder, in this order."""
    text = WORKFLOW.read_text("utf-8")
    order = [text.index(part) for part in ("setwright check --format annotations", "setwright build", "path: site")]

    assert order == sorted(order)
