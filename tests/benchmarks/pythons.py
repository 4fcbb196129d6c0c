"""Build the example on every Python given, and compare every byte. Not a test: it makes environments, run it by hand.

    .venv/bin/python tests/benchmarks/pythons.py python3.11 python3.12 python3.13

Each Python gets an environment of its own with the versions of the lock file. Prints one line a Python: its version,
how many files its site has, and how many of them differ from the first one's.
"""

import hashlib
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from support.site import ROOT, copy_project, digests


def built(python: str, folder: Path) -> tuple[str, dict[str, str]]:
    """Return a Python's version, and a digest of every file of the site that it builds."""
    venv, project = folder / "venv", copy_project(folder / "club")
    run(python, "-m", "venv", str(venv))
    inside = str(venv / "bin" / "python")
    run(inside, "-m", "pip", "install", "-q", "-c", str(ROOT / "requirements.lock"), str(ROOT))
    run(str(venv / "bin" / "setwright"), "build", "-f", str(project / "mkdocs.yml"))
    version = run(inside, "--version").strip()
    return version, digests(project / "site")


def run(*words: str) -> str:
    """Run a command and return what it prints; stop with its own words where it fails."""
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(f"{' '.join(words)}:\n{done.stdout}{done.stderr}")
    return done.stdout


def main(pythons: list[str]) -> None:
    """Compare the Pythons, the first with all others."""
    first: dict[str, str] = {}
    for number, python in enumerate(pythons):
        with tempfile.TemporaryDirectory() as folder:
            version, site = built(python, Path(folder))
        first = first or site
        differ = sorted(name for name in first.keys() | site.keys() if first.get(name) != site.get(name))
        whole = hashlib.sha256(repr(sorted(site.items())).encode()).hexdigest()[:12]
        told = "" if not number else f", {len(differ)} differ {differ[:3] or ''}"
        print(f"{version}: {len(site)} files, {whole}{told}")  # noqa: T201


if __name__ == "__main__":
    main(sys.argv[1:] or [sys.executable])
