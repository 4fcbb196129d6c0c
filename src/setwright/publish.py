"""The whole job on one screen: read, resolve, check, render, build, verify, swap."""

import logging
import os
import re
import shutil
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from contextvars import copy_context
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final, Literal

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, BuildError, ConfigurationError

from setwright.disk import folders, lock, swap
from setwright.disk.files import stopped
from setwright.errors import ProjectError
from setwright.feeds import calendar, data, webvtt
from setwright.feeds.revisions import revisions
from setwright.figure import kept
from setwright.handouts import tree as handouts
from setwright.handouts.writing import Desk
from setwright.looking import Looked as Looked
from setwright.looking import look as look
from setwright.model.units import shown
from setwright.outline import feeds, paper
from setwright.outline.site import Site
from setwright.pages import tree, verify
from setwright.phone import offline
from setwright.review.before import committed, seen

Progress = Callable[[str], None]
Sheets = Literal["printed", "as they are", "left out"]
"""What becomes of PDF sheets: printed where they changed; left as they lie there, for who prints one when it is asked
for, as the programme's data then is too; left out, so that no page leads to one."""


_OF_THE_ENGINE: Final = ("edit/master/docs/", "src/default/docs/")
"""What MkDocs takes for ``edit_uri`` where a forge that it knows is named and mkdocs.yml says nothing."""


@dataclass(frozen=True)
class Built:
    """What a build came to. ``site`` is None where it failed; then the site published before is still there."""

    looked: Looked
    site: Path | None = None
    written: tree.Written | None = None
    pages: int = 0
    warnings: tuple[str, ...] = ()
    broken: tuple[str, ...] = ()


def render(looked: Looked, config: MkDocsConfig) -> tree.Written:
    """Write the tree as ``write`` does, for an engine that runs later; no other run may write into it meanwhile."""
    docs = Path(config.docs_dir)
    with lock.held(docs):
        return write(looked, docs, config.site_url, config.site_name, edited_at=edited_at(config))


def write(
    looked: Looked,
    docs_build: Path,
    site_url: str | None = None,
    called: str | None = None,
    sheets: Sheets = "printed",
    edited_at: str | None = None,
) -> tree.Written:
    """Write the tree of a publishable programme, pages and sheets; only what changed is made again and touched.

    Args:
        looked: the programme with its resolved plans.
        docs_build: the folder of the tree.
        site_url: where the site is published; sheets then lead back to their pages.
        called: what mkdocs.yml calls the club; where that is not its name, there is a remark.
        sheets: what becomes of them.
        edited_at: the address below which the files of the programme can be changed.
    """
    if looked.programme is None:
        raise ProjectError("a programme with errors cannot be rendered")
    with kept.beside(docs_build):
        site = site_of(looked, sheets != "left out", edited_at)
        files, lacking = _rendered(site, site_url, docs_build) if sheets == "printed" else (tree.of(site), ())
        calendars = dict(calendar.files(site, site_url, revisions(looked.folder, looked.programme)))
        calendars |= dict(webvtt.files(site))
        stays = sheets == "as they are" and all((docs_build / path).is_file() for path in data.FILES)
        staying = (*(() if sheets == "printed" else handouts.FOLDERS), *((f"{feeds.FOLDER}/",) if stays else ()))
        written = tree.write(files | calendars | ({} if stays else data.files(site)), docs_build, staying)
    return replace(written, remarks=tuple(_remarks(lacking, looked.programme.club.name, called)))


def _rendered(site: Site, site_url: str | None, docs_build: Path) -> tuple[dict[str, bytes], tuple[str, ...]]:
    """Return pages and sheets, made side by side, and the characters that sheets cannot show."""
    with ThreadPoolExecutor(1) as beside:
        printing = beside.submit(copy_context().run, handouts.render, Desk(site, site_url), docs_build)
        pages = tree.of(site)
        printed = printing.result()
    return pages | printed.files, printed.lacking


def site_of(looked: Looked, on_paper: bool = True, edited_at: str | None = None) -> Site:
    """Return what pages and sheets of a publishable programme are made from."""
    if looked.programme is None:
        raise ProjectError("a programme with errors cannot be rendered")
    before = seen(looked.folder, looked.reviews)
    lines = [looked.places.of("sign-offs.yml", index).line for index in range(len(looked.programme.sign_offs))]
    by = committed(looked.folder, lines)
    return Site(
        looked.programme,
        looked.plans,
        looked.accepted,
        before,
        committed=by,
        reviewed=looked.reviews,
        on_paper=on_paper,
        edited_at=edited_at,
    )


def edited_at(config: MkDocsConfig) -> str | None:
    """Return the address below which the programme's files can be changed, with a slash at its end; None without any.

    It is the engine's ``repo_url`` with ``edit_uri`` behind it. What the engine puts for ``edit_uri`` by itself leads
    to another folder, so it does not count.
    """
    if not config.repo_url or not config.edit_uri or config.edit_uri in _OF_THE_ENGINE:
        return None
    if not config.repo_url.startswith(("https://", "http://")):
        return None
    return f"{config.repo_url.rstrip('/')}/{config.edit_uri.strip('/')}/"


def _remarks(lacking: Sequence[str], club: str, called: str | None) -> Iterator[str]:
    """Yield what a reader of the log should know: characters that sheets cannot show, a club with two names."""
    if lacking:
        signs = " ".join(lacking[:40]) + (" …" if len(lacking) > 40 else "")
        yield f"sheets: the fonts lack {signs}; a sign stands for them there, pages show them"
    if called is not None and called != club:
        said = f"mkdocs.yml calls the club {shown(called)}, club.yml '{club}', and so do pages"
        yield f"{said}: change the line 'site_name' in mkdocs.yml"


def build(
    config: MkDocsConfig,
    program: Path,
    label: str | None = None,
    progress: Progress = lambda _: None,
    sheets: Sheets = "printed",
) -> Built:
    """Build the site: everything is made beside the published one, which is swapped for it at the very end."""
    docs, site = Path(config.docs_dir), Path(config.site_dir)
    folders.refuse_site(site, Path(config.config_file_path).parent)
    with lock.held(docs), swap.beside(site) as following:
        progress("reading and checking")
        looked = look(program, label, None, docs)
        if not looked.publishable:
            return Built(looked)
        progress("rendering pages and sheets" if sheets == "printed" else "rendering pages")
        written = write(looked, docs, config.site_url, config.site_name, sheets, edited_at(config))
        progress("building the site")
        warnings = run_engine(config, following)
        if sheets == "left out":
            shutil.rmtree(following / paper.FOLDER, ignore_errors=True)
        warnings = (*warnings, *offline.finish(following))
        progress("following every link")
        broken = tuple(verify.broken(following, config.site_url))
        if broken:
            return Built(looked, None, written, 0, warnings, broken)
        pages = sum(1 for _ in following.rglob("*.html"))
        swap.swap(following, site)
        return Built(looked, site, written, pages, warnings)


def project(config_file: Path) -> tuple[MkDocsConfig, Path]:
    """Return the engine's settings and the programme's folder of the project around an mkdocs.yml.

    Raises:
        ProjectError: where the settings are missing, unreadable, do not name this tool's plugin, or name a folder
            to write into that is not this tool's own.
    """
    # The theme prints a notice about the engine's future at every build; DEVELOPERS.md says what to do about it.
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
    if not config_file.is_file():
        raise ProjectError(f"there is no {config_file.name} in {config_file.parent.resolve()}")
    with _collected() as lines:
        try:
            config = load_config(config_file=str(config_file))
        except (Abort, ConfigurationError) as error:
            hint = "; make that folder, this tool fills it" if any("custom_dir" in line for line in lines) else ""
            raise ProjectError(f"{config_file}: {'; '.join(lines) or error}{hint}") from error
        except (ValueError, RecursionError) as error:  # an address that is none, a file that inherits from itself
            raise ProjectError(f"{config_file}: the site engine cannot read it: {error}") from error
    plugin = config.plugins.get("setwright")
    if plugin is None:
        raise ProjectError(f"{config_file}: add 'setwright' to 'plugins'")
    program = config_file.parent / plugin.config.program
    folders.refuse_foreign(config_file.parent, program, Path(config.docs_dir), Path(config.site_dir))
    return config, program


class _Collector(logging.Handler):
    """Keeps the engine's warnings, so that none is swallowed and none is printed in the middle of ours."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.lines.append(record.getMessage())


@contextmanager
def _collected() -> Iterator[list[str]]:
    """Give what the engine has to say, line by line, until it is done."""
    logger, collector = logging.getLogger("mkdocs"), _Collector()
    level, propagate = logger.level, logger.propagate
    logger.addHandler(collector)
    logger.setLevel(logging.WARNING)
    logger.propagate = False
    try:
        yield collector.lines
    finally:
        logger.removeHandler(collector)
        logger.setLevel(level)
        logger.propagate = propagate


def steady_dates() -> None:
    """Have the engine write one date into sitemap and archive: the caller's, if it is one, or always the same."""
    given = os.environ.get("SOURCE_DATE_EPOCH", "")
    if not re.fullmatch("[0-9]{1,10}", given, re.ASCII) or int(given) >= 2**32:  # an archive holds no later date
        os.environ["SOURCE_DATE_EPOCH"] = "315532800"


def run_engine(config: MkDocsConfig, site: Path) -> tuple[str, ...]:
    """Build with MkDocs into a folder, its plugin left out of the pipeline that this module runs itself."""
    steady_dates()
    config.plugins["setwright"].config.generate = False
    config.site_dir = str(site)
    with _collected() as lines:
        try:
            config.plugins.on_startup(command="build", dirty=False)
            mkdocs_build(config)
        except (BuildError, Abort) as error:
            raise ProjectError(f"the site engine stopped: {'; '.join(lines) or error}") from error
        except OSError as error:
            raise stopped(error, str(site)) from error
        finally:
            config.plugins.on_shutdown()
    return tuple(lines)
