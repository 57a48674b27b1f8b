"""The commands by name, and what they share: a refusal printed line by line, and exit codes.

Exit codes: 0 done, 1 a fault of ours, 2 bad input (each reason a line on stderr), 130 stopped.
"""

import argparse
import os
import sys
from importlib import import_module

from .. import __version__
from ..errors import Refused

DONE, BAD_INPUT = 0, 2  # 1, a fault of ours, is Python's own for what nobody caught; 130, stopped, is of `__main__`
COMMANDS = {
    "serve": "serve the page and open it",
    "trace": "say where everything in a scene goes",
    "feel": "say what people would feel, beside every published limit",
    "size": "find the smallest habitat that meets some wishes",
    "vary": "work out every combination of varied values",
}  # each a module beside this one


def main(arguments=None):
    """Run a command; returns the exit code. Raises KeyboardInterrupt where it is stopped."""
    arguments = sys.argv[1:] if arguments is None else arguments
    chosen = _parser(arguments).parse_args(arguments)
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


def _parser(arguments):
    """The parser of a command line. Only the command that is named is loaded: the others would cost a second of start."""
    parser = argparse.ArgumentParser(prog="rimfall", description="Motion in a spinning habitat, seen from both frames.")
    parser.add_argument("--version", action="version", version=f"rimfall {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    for name, does in COMMANDS.items():
        command = commands.add_parser(name, help=does)
        if name in arguments:
            import_module(f".{name}", __package__).add_to(command)
    return parser
