"""Verdicts kept in a file as they come, one a line, so that the same command goes on after a cut."""

import hashlib
import json
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, Final

from benchmarks.mutants.judging import Judged, Module
from benchmarks.mutants.mutating import Mutant

_VERDICTS: Final = ("killed", "timed out", "survived")


class Kept:
    """What is known of the chosen mutants. A module whose text changed since is judged anew."""

    def __init__(self, file: Path | None, chosen: Sequence[Module], which: dict[str, Any]) -> None:
        """Read what a file kept of them.

        Raises:
            SystemExit: where it kept mutants of another choice; ``which`` are the options that make one.
        """
        self._file = file
        self._keys = {(module.name, id(mutant)): key for module in chosen for mutant, key in _keys(module)}
        self._verdicts: dict[str, str] = {}
        if file is None:
            return
        if not file.exists():
            file.write_text(json.dumps(which) + "\n", "utf-8")
        first, *rows = file.read_text("utf-8").splitlines()
        if json.loads(first) != which:
            raise SystemExit(f"{file} keeps the mutants of {first}: name another file")
        for row in rows:
            key, _, verdict = row.rpartition(" = ")
            if verdict in _VERDICTS:  # a line that was cut says nothing
                self._verdicts[key] = verdict

    def known(self, chosen: Sequence[Module]) -> Iterator[Judged]:
        """Yield the mutants that are judged already."""
        for module in chosen:
            for mutant in module.mutants:
                if (verdict := self._verdicts.get(self._key(module, mutant))) is not None:
                    yield Judged(module, mutant, verdict)  # type: ignore[arg-type]

    def unknown(self, chosen: Sequence[Module]) -> list[Module]:
        """Return the modules with those mutants that are still to be judged."""
        left = [module.only(lambda one, m=module: self._key(m, one) not in self._verdicts) for module in chosen]
        return [module for module in left if module.mutants]

    def keep(self, one: Judged) -> None:
        """Write down what became of a mutant."""
        if self._file is not None:
            with self._file.open("a", encoding="utf-8") as rows:
                rows.write(f"\n{self._key(one.module, one.mutant)} = {one.verdict}")

    def _key(self, module: Module, mutant: Mutant) -> str:
        return self._keys[module.name, id(mutant)]


def _keys(module: Module) -> Iterator[tuple[Mutant, str]]:
    """Yield each mutant with what names it as long as the module's text stays as it is."""
    digest = hashlib.sha256(module.file.read_bytes()).hexdigest()[:12]
    twins: Counter[tuple[int, str]] = Counter()
    for mutant in module.mutants:
        twins[mutant.line, mutant.change] += 1
        nth = twins[mutant.line, mutant.change]
        yield mutant, f"{module.name} {digest} {mutant.line} {nth} {' '.join(mutant.change.split())}"
