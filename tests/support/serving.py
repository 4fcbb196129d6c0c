"""A folder of files served on this machine."""

import functools
import http.server
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


class Server(http.server.ThreadingHTTPServer):
    """A web server with room for all that a browser asks for at once.

    Python's own keeps five callers waiting and turns the next away; those come again after 1, 3, 7, 15 seconds, so that
    on a busy machine a page may take half a minute.
    """

    request_queue_size = 128


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Hands out files and prints nothing."""

    def log_message(self, *args: object) -> None:
        pass


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """Serve a folder, and give the address at which it stands."""
    server = Server(("127.0.0.1", 0), functools.partial(Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
