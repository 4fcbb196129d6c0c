"""The browser's code agrees with its own types."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest

from support.browsing import missing
from support.site import ROOT

PHONE = ROOT / "src" / "setwright" / "phone"
STRICT = [
    "--noEmit", "--allowJs", "--checkJs", "--strict", "--noUnusedLocals", "--noUnusedParameters", "--noImplicitReturns",
    "--target", "es2022", "--module", "esnext", "--moduleResolution", "bundler",
]  # fmt: skip


@pytest.mark.parametrize(
    ("libraries", "files"),
    [
        ("es2023,dom,dom.iterable", sorted((PHONE / "assets" / "js").rglob("*.js"))),
        ("es2023,webworker", [PHONE / "root" / "service-worker.js"]),
    ],
    ids=["pages", "service worker"],
)
def test_the_typescript_compiler_finds_nothing(libraries: str, files: list[Path]) -> None:
    """Strict, from the comments alone: the files run in the browser as they are."""
    compiler, node = os.environ.get("SETWRIGHT_TSC"), shutil.which("node")
    if not compiler or not Path(compiler).is_file() or node is None:
        missing("the TypeScript compiler (SETWRIGHT_TSC, and node)")
    done = subprocess.run(
        [str(node), str(compiler), *STRICT, "--lib", libraries, *map(str, files)], capture_output=True, text=True
    )

    assert done.stdout == ""
    assert done.returncode == 0
