"""The commands: serve the page, trace a scene, and those that have a module of their own. Documents in; words and a table, or JSON, out.

Exit codes: 0 done, 1 a fault of ours, 2 bad input (each reason a line on stderr), 130 stopped.
"""

import argparse
import os
import socket
import sys
import threading
import webbrowser
from pathlib import Path

from .. import __version__, phrases
from ..errors import BadInput, Refused, refusal
from ..exports.options import read_options
from ..exports.writing import write_all
from ..scene import answers, questions, words
from ..scene.reading import read
from . import export_options, vary
from . import feel as feel_commands
from .tables import aligned

DONE, BAD_INPUT = 0, 2  # 1, a fault of ours, is Python's own for what nobody caught; 130, stopped, is of `__main__`


def main(arguments=None):
    """Run a command; returns the exit code. Raises KeyboardInterrupt where it is stopped."""
    chosen = _parser().parse_args(arguments)
    sys.stdout.reconfigure(errors="replace")  # a title that the terminal cannot show is no reason to stop
    try:
        return chosen.run(chosen)
    except Refused as refused:
        for one in refused.refusals:
            print(f"rimfall: {one.say}", file=sys.stderr)
        return BAD_INPUT
    except BrokenPipeError:  # the reader of our output went away: nothing is wrong
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE


def _parser():
    parser = argparse.ArgumentParser(prog="rimfall", description="Motion in a spinning habitat, seen from both frames.")
    parser.add_argument("--version", action="version", version=f"rimfall {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    serve = commands.add_parser("serve", help="serve the page and open it")
    serve.add_argument(
        "--host", default="127.0.0.1", help="address to serve on (default: %(default)s, this machine only)"
    )
    serve.add_argument(
        "--port", type=int, default=8150, help="port to serve on (default: %(default)s; 0 takes a free one)"
    )
    serve.add_argument(
        "--open", action=argparse.BooleanOptionalAction, default=True, help="open the page in the browser"
    )
    serve.set_defaults(run=_serve)
    trace = commands.add_parser("trace", help="say where everything in a scene goes")
    trace.add_argument("scene", metavar="SCENE.json", help="a scene document; - reads standard input")
    trace.add_argument("--json", action="store_true", help="print the whole answer as JSON")
    trace.add_argument("--units", choices=("si", "us"), default="si", help="units of the words (default: %(default)s)")
    trace.add_argument(
        "--export",
        metavar="FILE",
        action="append",
        default=[],
        help="write a file, its format told by its name (.csv, .json, .glb, .usda, .forces.csv, …); may be repeated",
    )
    export_options.add_to(trace)
    trace.set_defaults(run=_trace)
    feel_commands.add_to(commands)
    vary.add_to(commands)
    return parser


def _serve(chosen):
    # The web is imported here so that a trace from the command line need not wait for it.
    import uvicorn

    from ..web.app import make_app

    listening = _listen(chosen.host, chosen.port)
    host = f"[{chosen.host}]" if ":" in chosen.host else chosen.host
    address = f"http://{host}:{listening.getsockname()[1]}/"
    print(f"Rimfall is at {address} (Ctrl+C stops it)", flush=True)
    if chosen.open:
        threading.Timer(0.5, webbrowser.open, [address]).start()
    config = uvicorn.Config(
        make_app(chosen.host), log_level="warning", access_log=False, ws="none", server_header=False
    )
    uvicorn.Server(config).run(sockets=[listening])
    return DONE


def _listen(host, port):
    """A bound socket, or a refusal that says what is in the way."""
    if not 0 <= port <= 65535:
        raise BadInput(refusal("port", port, "0 to 65535", f"Port was {port}; it may be 0 to 65535."))
    try:
        family = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0][0]
        # The protocol is named, or asyncio would not switch off the delay that costs every answer 40 ms.
        listening = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
        if os.name == "posix":
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind((host, port))
        listening.listen(128)
    except (OSError, UnicodeError) as error:  # a host that no name can be is a UnicodeError
        say = f"Cannot serve on {host} port {port}: {getattr(error, 'strerror', None) or error}. Choose another with --port."
        raise BadInput(refusal("port", port, "a free port", say)) from None
    return listening


def _trace(chosen):
    scene = read(export_options.source(chosen.scene))
    options = read_options(export_options.asked(chosen), scene)
    wanted = {Path(name): export_options.format_of(Path(name)) for name in chosen.export}
    traced = questions.trace(scene)
    files = {}
    for path, kind in wanted.items():
        files |= export_options.files_of(traced, options, path, kind)
    write_all(files)
    if chosen.json:
        sys.stdout.buffer.write(answers.of_trace(traced, chosen.units) + b"\n")  # UTF-8, whatever the terminal speaks
    else:
        print(_as_text(traced, chosen.units))
    return DONE


def _as_text(traced, units):
    """Words for each motion, then a table of its landing or its end."""
    figures = answers.habitat_figures(traced)
    period = "not turning" if figures["period_s"] is None else f"one turn in {figures['period_s']:.4g} s"
    lines = [
        traced.scene.title or "Untitled scene",
        f"{figures['deck_gravity_g']:.4g} g on deck, rim at {phrases.speed(figures['rim_speed_m_s'], units)}, {period}",
        "",
    ]
    lines += [*_told(traced, units), "", *_table(traced)]
    for name, other in traced.others:
        lines += ["", f"In the habitat {name}:", *_told(other, units), "", *_table(other)]
    return "\n".join(lines).replace("\u00a0", " ")


def _told(traced, units):
    """Each motion in words, and what its answer leaves out."""
    lines = []
    for one in traced.motions:
        lines += [f"{one.motion.name} ({one.motion.kind}): " + " ".join(words.outcome(one, units))]
        lines += [f"    {said}" for said in words.assumptions(one, traced)]
    return lines


_COLUMNS = ("motion", "event", "time s", "along m", "height m", "axial m", "speed m/s")


def _table(traced):
    rows = [_COLUMNS]
    for one in traced.motions:
        for event in one.track.events:
            state = event.state
            speed = float((state.local_m_s[0] ** 2).sum() ** 0.5)
            figures = (state.time_s[0], state.along_m[0], state.height_m[0], state.axial_m[0], speed)
            rows.append((one.motion.name, event.kind, *(f"{v:.4f}" for v in figures)))
    return aligned(rows, left=2)
