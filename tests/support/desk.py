"""A programme in a folder of its own, with or without a git repository around it, for tests of signing."""

import shutil
import subprocess
from datetime import date
from pathlib import Path

from setwright import publish, reviewing
from setwright.review.status import Review, reviews
from setwright.source.finding import Finding
from support.reading import GOOD

GIT = shutil.which("git")
DAY = date(2027, 2, 1)


class Desk:
    """The small good programme, edited and signed as a coach and a physiotherapist would."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.program = folder / "program"
        shutil.copytree(GOOD, self.program)

    def sign(self, *idents: str, who: str = "A physiotherapist", on: date = DAY, note: str | None = None) -> list[str]:
        """Sign exercises off as they are now."""
        return reviewing.sign(self.program, idents, who, "Physiotherapist of the club", on, note)

    def edit(self, name: str, old: str, new: str) -> None:
        """Replace a piece of one file."""
        path = self.program / name
        text = path.read_text("utf-8")
        if old not in text:
            raise ValueError(f"{name} does not hold {old!r}")
        path.write_text(text.replace(old, new, 1), "utf-8")

    def review(self, ident: str) -> Review:
        """Return where an exercise stands."""
        looked = publish.look(self.program, "program")
        if looked.programme is None:
            raise ValueError(looked.findings)
        return reviews(looked.programme, looked.plans)[ident]

    def standing(self, ident: str) -> tuple[str, tuple[str, ...]]:
        """Return an exercise's status and the parts that changed."""
        review = self.review(ident)
        return review.status, review.changed

    def findings(self, *rules: str) -> list[Finding]:
        """Return what is found under some rules."""
        return [f for f in publish.look(self.program, "program").findings if f.rule in rules]

    def pages(self) -> dict[str, str]:
        """Return the text of every page, made as publishing makes them."""
        looked = publish.look(self.program, "program")
        publish.write(looked, self.folder / "docs_build", sheets="left out")
        return {
            path.relative_to(self.folder / "docs_build").as_posix(): path.read_text("utf-8")
            for path in (self.folder / "docs_build").rglob("*.md")
        }

    def git(self, *words: str) -> str:
        """Run git in the folder, with a name of its own and none of this machine's settings."""
        settings = ("-c", "user.name=A coach", "-c", "user.email=coach@club.example", "-c", "init.defaultBranch=main")
        done = subprocess.run(
            [str(GIT), *settings, *words], cwd=self.folder, capture_output=True, text=True, check=False
        )
        if done.returncode:
            raise ValueError(f"git {words[0]}: {done.stdout}{done.stderr}")
        return done.stdout

    def commit(self, message: str = "A state") -> None:
        """Keep everything as it is now."""
        self.git("add", "-A")
        self.git("commit", "-q", "-m", message)
