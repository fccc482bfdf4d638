"""`wardwright serve`: the app, on this machine only."""

from __future__ import annotations

import socket
import webbrowser
from argparse import ArgumentParser, Namespace
from importlib.resources import as_file, files
from pathlib import Path

from wardwright.cli.command import FINE, Command, add_sheets
from wardwright.cli.given import catalogue_from
from wardwright.errors import InputError

HOST = "127.0.0.1"
"""Loopback: no other machine gets in."""
PORT = 8737
PAGE = "static"


def add_arguments(parser: ArgumentParser) -> None:
    """Declare what the command takes."""
    parser.add_argument(
        "folder", metavar="FOLDER", nargs="?", default=".", help="where the jobs are; here by default"
    )
    parser.add_argument(
        "--port",
        type=int,
        default=PORT,
        metavar="N",
        help=f"the port to listen on; {PORT} by default, 0: any free one",
    )
    parser.add_argument("--no-browser", action="store_true", help="do not open the browser")
    add_sheets(parser)


def run(arguments: Namespace) -> int:
    """Serve until it is stopped from the keyboard."""
    folder = Path(arguments.folder)
    if not folder.is_dir():
        raise InputError("there is no such folder", where=str(folder), cure="Name a folder that holds jobs")
    serve(arguments, folder)
    return FINE


def serve(arguments: Namespace, folder: Path) -> None:
    """Serve the jobs of a folder."""
    import uvicorn

    from wardwright.server.app import create_app

    catalogue = catalogue_from(arguments.sheet)
    listener = listening(arguments.port)
    port = listener.getsockname()[1]
    address = f"http://localhost:{port}/"
    with as_file(files("wardwright") / PAGE) as page:
        static = page if (page / "index.html").is_file() else None
        app = create_app(folder, catalogue, static=static)
        if static is None:
            print("The page was not built: only the interface answers. Install with Node.js to build it.")
        print(
            f"Wardwright is at {address} (stop it with Ctrl-C). Only this machine can reach it.", flush=True
        )
        if static is not None and not arguments.no_browser:
            job = getattr(arguments, "job", "")
            webbrowser.open(f"{address}#{job}" if job else address)
        settings = uvicorn.Config(app, log_level="warning", ws_per_message_deflate=False, lifespan="on")
        uvicorn.Server(settings).run(sockets=[listener])


def listening(port: int) -> socket.socket:
    """A socket of this machine alone; InputError if the port is taken."""
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((HOST, port))
    except (OSError, OverflowError) as fault:
        listener.close()
        raise InputError(
            f"the port {port} cannot be had ({fault})",
            where="--port",
            cure="Stop what has it, or name another",
        ) from None
    return listener


COMMAND = Command(
    name="serve",
    summary="the app, in the browser of this machine",
    description="Serve the jobs of a folder to the browser of this machine; nobody else can reach it.",
    add_arguments=add_arguments,
    run=run,
)
