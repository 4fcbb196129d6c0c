"""The MkDocs plugin: plain ``mkdocs build`` and ``mkdocs serve`` do the whole job, and reload on a YAML edit.

A thin caller of ``publish``. Nothing on a page depends on it, since other engines that read the same tree run no
plugins.
"""

import os
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any, Literal

from mkdocs.config import config_options
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.pages import Page
from mkdocs.utils import clean_directory

from setwright import publish
from setwright.disk import folders, lock, swap
from setwright.disk.files import stopped
from setwright.errors import SetwrightError
from setwright.handouts import asked
from setwright.handouts.writing import Desk
from setwright.pages import search, verify
from setwright.phone import offline
from setwright.printers import clean, plain
from setwright.source.read import Cache

log = get_plugin_logger("setwright")


class SetwrightConfig(Config):
    """The plugin's settings in mkdocs.yml."""

    program = config_options.Type(str, default="program")
    """The folder with the programme, beside mkdocs.yml."""

    generate = config_options.Type(bool, default=True)
    """Whether the plugin writes the tree; false where `setwright render` has just done so."""


class SetwrightPlugin(BasePlugin[SetwrightConfig]):
    """Runs the generator before each build, and swaps the finished site in after it."""

    def __init__(self) -> None:
        self.serving = False
        self.site: Path | None = None
        self.cache: Cache = {}
        self.held = ExitStack()
        self.newest: publish.Looked | None = None
        self.dirty = False
        self.settings = b""
        self.built: set[str] = set()
        self.searched: bytes | None = None

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember what runs; being here keeps this object, and so the cache, across rebuilds."""
        self.serving, self.dirty = command == "serve", dirty

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Refuse folders that are not ours, hold them for this run, and let the engine build beside the site."""
        if not self.config.generate:
            return config
        if "SOURCE_DATE_EPOCH" in os.environ:
            publish.steady_dates()
        root, docs = Path(config.config_file_path).parent, Path(config.docs_dir)
        self.site = None if self.serving else Path(config.site_dir)
        with _said():
            folders.refuse_foreign(root, root / self.config.program, docs, Path(config.site_dir))
            self.held.enter_context(lock.held(docs, _waits if self.serving else None))
            if self.site is not None:
                folders.refuse_site(self.site, root)
                config.site_dir = str(self.held.enter_context(swap.beside(self.site)))
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Read, check and render; a mistake in the programme ends the build here and leaves the old site."""
        if not self.config.generate:
            return
        root, docs = Path(config.config_file_path).parent, Path(config.docs_dir)
        with _said():
            looked = publish.look(root / self.config.program, self.config.program, self.cache, docs)
            errors = [plain(f) for f in looked.findings if f.severity == "error"]
            for finding in looked.findings:
                if finding.severity == "warning":
                    log.warning(plain(finding))
            if errors:
                raise PluginError("\n".join(["the programme has mistakes", *errors]))
            address = _published_at(config)
            sheets: publish.Sheets = "as they are" if self.serving else "printed"
            written = publish.write(looked, docs, address, config.site_name, sheets, publish.edited_at(config))
            for remark in written.remarks:
                log.info(clean(remark))
            settings = Path(config.config_file_path).read_bytes()
            if self.dirty and (written.frames or settings != self.settings):
                clean_directory(config.site_dir)  # so that every page is built anew
            self.settings = settings
            self._forget_search(config)
            self.newest = looked

    def _forget_search(self, config: MkDocsConfig) -> None:
        """Keep the index for ``on_post_build``; the theme's own way of joining two mixes up pages."""
        index = Path(config.site_dir) / search.INDEX
        self.built = set()
        self.searched = index.read_bytes() if self.dirty and index.is_file() else None
        for name in ("search", "material/search"):
            plugin: Any = config.plugins.get(name)
            if self.dirty and hasattr(plugin, "search_index_prev"):
                plugin.search_index_prev = None

    def on_post_page(self, output: str, /, *, page: Page, config: MkDocsConfig) -> str:  # noqa: ARG002
        """Note which pages are built."""
        self.built.add(page.url.removeprefix("./"))
        return output

    @event_priority(-100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Follow every link, then swap the finished site in; in a preview, complete the search."""
        index = Path(config.site_dir) / search.INDEX
        if self.searched is not None and index.is_file():
            index.write_bytes(search.merged(self.searched, index.read_bytes(), self.built))
        if self.config.generate and self.site is not None:
            following = Path(config.site_dir)
            config.site_dir = str(self.site)
            with _said():
                for warning in offline.finish(following):
                    log.warning(clean(warning))
                broken = list(verify.broken(following, config.site_url))
                if broken:
                    raise PluginError("\n".join(["the site has broken links", *map(clean, broken)]))
                swap.swap(following, self.site)
        self.held.close()

    def on_build_error(self, *, error: Exception) -> None:
        """Let go of the folders; what the system refused is one sentence."""
        self.held.close()
        if isinstance(error, OSError):
            raise PluginError(clean(str(stopped(error)))) from error

    def on_serve(self, server: LiveReloadServer, /, *, config: MkDocsConfig, builder: object) -> LiveReloadServer:  # noqa: ARG002
        """Watch the programme, and not the tree that this plugin writes itself; print a sheet when it is asked for."""
        server.unwatch(config.docs_dir)
        server.watch(str(Path(config.config_file_path).parent / self.config.program))
        server.set_app(asked.sheets(server.serve_request, Path(config.docs_dir), lambda: self._desk(config)))
        return server

    def _desk(self, config: MkDocsConfig) -> Desk | None:
        """Return what the newest pages were made from, for a sheet that is asked for."""
        return None if self.newest is None else Desk(publish.site_of(self.newest), _published_at(config))


@contextmanager
def _said() -> Iterator[None]:
    """Turn what stops a run into an error that the engine prints as one sentence."""
    try:
        yield
    except SetwrightError as error:
        raise PluginError(clean(str(error))) from error
    except OSError as error:
        raise PluginError(clean(str(stopped(error)))) from error


def _waits() -> None:
    log.info("another run is at work in this folder: waiting until it has ended")


def _published_at(config: MkDocsConfig) -> str | None:
    """Return the site's address as mkdocs.yml has it: while serving, the engine puts this machine's in its place."""
    written = [source.get("site_url") for source in config.user_configs if source.get("site_url")]
    return str(written[0]) if written else None
