"""The commands by name, and what they share: a refusal printed line by line, and exit codes.

Exit codes: 0 done, 1 a fault of ours, 2 bad input (each reason a line on stderr) or an answer that cannot be
written, 130 stopped. A reader of the output who goes away, or none from the start, is nothing wrong.
"""

import argparse
import sys
from importlib import import_module

from .. import __version__
from ..errors import Refused
from ..language import ENGLISH, tr
from ..languages import speaking
from . import streams
from .common import add_language

DONE, BAD_INPUT = 0, 2  # 1, a fault of ours, is Python's own for what nobody caught; 130, stopped, is of `__main__`
COMMANDS = {
    "serve": "serve the page and open it",
    "trace": "say where everything in a scene goes",
    "feel": "say what people would feel, beside every published limit",
    "size": "find the smallest habitat that meets some wishes",
    "craft": "say whether the craft round a habitat would cope",
    "aim": "find every throw that arrives in somebody's hands",
    "landings": "find where a throw can come down",
    "match": "say whether a path that was seen could be",
    "talk": "say what the steps of a talk are, and how long it takes",
    "vary": "work out every combination of varied values",
}  # each a module beside this one


def main(arguments=None):
    """Run a command; returns the exit code. Raises KeyboardInterrupt where it is stopped."""
    arguments = sys.argv[1:] if arguments is None else arguments
    try:
        chosen = _parser(arguments).parse_args(arguments)
        sys.stdout.reconfigure(errors="replace")  # a title that the terminal cannot show is no reason to stop
        with speaking(getattr(chosen, "language", ENGLISH)):
            return _run(chosen)
    except streams.NotWritten as failed:
        return _not_written(failed)
    except Refused as refused:
        for one in refused.refusals:
            streams.complain(f"rimfall: {one.say}")
        return BAD_INPUT


def _run(chosen):
    try:
        return chosen.run(chosen)
    except streams.NotWritten as failed:
        return _not_written(failed)


def _not_written(failed):
    trouble = failed.__cause__
    if isinstance(trouble, BrokenPipeError):
        return DONE
    say = tr("Cannot write to standard output: {why}.", why=trouble.strerror or trouble)
    streams.complain(f"rimfall: {say}")
    return BAD_INPUT


class _Parser(argparse.ArgumentParser):
    """argparse's, whose help and complaints go the way of all that is printed: it would not say that they could not be written."""

    def _print_message(self, message, file=None):
        if file is not sys.stdout:
            streams.complain(message.rstrip("\n"))
        else:
            with streams.writing():
                file.write(message)


def _parser(arguments):
    """The parser of a command line. Only the command that is named is loaded: the others would cost a second of start."""
    parser = _Parser(prog="rimfall", description="Motion in a spinning habitat, seen from both frames.")
    parser.add_argument("--version", action="version", version=f"rimfall {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    for name, does in COMMANDS.items():
        as_written = argparse.RawDescriptionHelpFormatter
        command = commands.add_parser(
            name, help=does, description=f"{does[:1].upper()}{does[1:]}.", formatter_class=as_written
        )
        if name in arguments:
            module = import_module(f".{name}", __package__)
            module.add_to(command)
            if name != "serve":  # its page speaks to each in a language of their own
                add_language(command)
            command.epilog = "\n".join(["For example:", *(f"  {one}" for one in module.EXAMPLES)])
    return parser
