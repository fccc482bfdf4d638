"""A server of this machine for tests: started as a program of its own, killed and started again."""

from __future__ import annotations

import http.client
import json
import socket
import subprocess
import sys
import time
from pathlib import Path
from typing import Any


class Served:
    """`wardwright serve` on a free port."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        self.url = f"http://localhost:{self.port}/"
        self.process: subprocess.Popen[bytes] | None = None
        self.start()

    def start(self) -> None:
        command = [
            sys.executable,
            "-m",
            "wardwright",
            "serve",
            str(self.folder),
            "--port",
            str(self.port),
            "--no-browser",
        ]
        self.process = subprocess.Popen(command, stdout=subprocess.DEVNULL)
        for _ in range(600):
            try:
                self.said("")
            except OSError:
                time.sleep(0.05)
            else:
                return
        raise RuntimeError("the server did not start")

    def kill(self) -> None:
        assert self.process is not None
        self.process.kill()
        self.process.wait(10)

    def stop(self) -> None:
        assert self.process is not None
        self.process.terminate()
        self.process.wait(10)

    def said(self, path: str) -> Any:
        link = http.client.HTTPConnection("127.0.0.1", self.port, timeout=20)
        try:
            link.request("GET", f"/api/jobs{path}")
            return json.load(link.getresponse())
        finally:
            link.close()

    def device(self, job: str, ident: str) -> dict[str, Any]:
        return next(one for one in self.said(f"/{job}")["site"]["devices"] if one["id"] == ident)
