"""The commands as a user types them, run in this process; `in_a_process` where a process of their own is the point."""

import contextlib
import io
import os
import subprocess
import sys
from pathlib import Path

from rimfall.cli.main import main

ROOT = Path(__file__).resolve().parent.parent


def rimfall(*arguments, given=""):
    """Runs a command on what is given to its standard input -> CompletedProcess of text."""
    was, sys.stdin = sys.stdin, _text(given.encode())
    said, complained = _text(), io.StringIO()
    try:
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(complained):
            code = main([*map(str, arguments)])
    except SystemExit as stop:  # argparse's way out
        code = stop.code
    finally:
        sys.stdin = was
    said.flush()
    return subprocess.CompletedProcess(arguments, code, said.buffer.getvalue().decode(), complained.getvalue())


def _text(data=b""):
    return io.TextIOWrapper(io.BytesIO(data), encoding="utf-8", newline="\n")


def in_a_process(*arguments, given=None, environment=None):
    """The same as a process: `python -m server`, whose whole start, streams and exit code are a user's."""
    command = [sys.executable, "-m", "rimfall", *map(str, arguments)]
    return subprocess.run(
        command, cwd=ROOT, capture_output=True, encoding="utf-8", input=given, env=os.environ | (environment or {})
    )
