"""What runs came to, kept in a file, so that the same command goes on after a cut."""

import json
from collections import Counter
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any

from fuzz.faults import Fault
from fuzz.reads import Tally


@dataclass
class Kept:
    """The tallies by title, and the file that keeps them, if any; ``which`` are the numbers that name the runs."""

    file: Path | None
    which: dict[str, int]
    tallies: dict[str, Tally] = field(default_factory=dict)

    def keep(self, title: str, tally: Tally) -> None:
        """Write down how far runs are; the file is whole at any moment."""
        self.tallies[title] = tally
        if self.file is not None:
            beside = self.file.with_name(f"{self.file.name}.new")
            tallies = {name: _as_data(one) for name, one in self.tallies.items()}
            beside.write_text(json.dumps({"which": self.which, "tallies": tallies}), "utf-8")
            beside.replace(self.file)


def opened(file: Path | None, **which: int) -> Kept:
    """Return what a file kept, or nothing kept yet.

    Raises:
        SystemExit: where it kept other runs.
    """
    if file is None or not file.exists():
        return Kept(file, which)
    found = json.loads(file.read_text("utf-8"))
    if found["which"] != which:
        raise SystemExit(f"{file} keeps the runs of {found['which']}, not of {which}: name another file")
    return Kept(file, which, {title: _tally(one) for title, one in found["tallies"].items()})


def _as_data(tally: Tally) -> dict[str, Any]:
    return vars(tally) | {"faults": [asdict(fault) for fault in tally.faults]}


def _tally(found: dict[str, Any]) -> Tally:
    return Tally(
        runs=Counter(found["runs"]),
        accepted=found["accepted"],
        rules=Counter(found["rules"]),
        faults=[Fault(**fault) for fault in found["faults"]],
        slowest=[(cpu_s, run) for cpu_s, run in found["slowest"]],
    )
