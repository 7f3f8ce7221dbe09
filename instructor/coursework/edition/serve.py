"""The edition shown from this machine: to this browser only, or to the classroom's network."""

import functools
import http.server
import io
import socket

# Browsers run a module, and stream Python, only under these content types.
TYPES = {".mjs": "text/javascript", ".js": "text/javascript", ".wasm": "application/wasm",
         ".whl": "application/zip", ".ipynb": "application/json",
         ".json": "application/json"}  # fmt: skip
WHITE_ON_BLACK, OWN_COLOURS = "\x1b[97;40m", "\x1b[0m"  # ECMA-48, select graphic rendition
HOSTING = """\
To put it on a web host: copy the whole folder, into any folder there. It needs
- https, or pages cannot be kept for use without a network;
- .mjs and .js sent as text/javascript, .wasm as application/wasm, .whl as application/zip;
- leave to cache the files; nothing runs on the host, and nothing a student types goes there."""


class _Handler(http.server.SimpleHTTPRequestHandler):
    extensions_map = http.server.SimpleHTTPRequestHandler.extensions_map | TYPES
    protocol_version = "HTTP/1.1"

    def log_message(self, *_):
        """Who opened what is nobody's business."""


def server(folder, network=False, port=0):
    """A server that shows a folder.

    Parameters
    ----------
    folder : Path
    network : bool
        Whether other machines on this network may open it.
    port : int
        0 for a free one.

    Returns
    -------
    http.server.ThreadingHTTPServer
        Not running yet.
    """
    handler = functools.partial(_Handler, directory=str(folder))
    return http.server.ThreadingHTTPServer(("" if network else "127.0.0.1", port), handler)


def address_of(made, network=False):
    """The address to type.

    Parameters
    ----------
    made : http.server.ThreadingHTTPServer
    network : bool

    Returns
    -------
    str
    """
    return f"http://{_own_name() if network else '127.0.0.1'}:{made.server_address[1]}/"


def code_of(address):
    """The address as a QR code for a terminal, to be scanned off the screen.

    Its light and dark are set: not every phone reads it in a light terminal, the other way round.

    Parameters
    ----------
    address : str

    Returns
    -------
    str
    """
    import segno

    drawn = io.StringIO()
    segno.make(address, micro=False).terminal(drawn, compact=True)
    lines = drawn.getvalue().splitlines()
    return "\n".join(f"{WHITE_ON_BLACK}{line}{OWN_COLOURS}" for line in lines)


def _own_name():
    """This machine's address on the network that it would go out by; nothing is sent."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as trial:
        try:
            trial.connect(("192.0.2.1", 9))  # an address kept for examples: nobody is there
            return trial.getsockname()[0]
        except OSError:
            return socket.gethostbyname(socket.gethostname())
