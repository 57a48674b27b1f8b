"""A process that answers traces of the scenes to start from, for the benchmark: run by path, on whatever program PYTHONPATH has.

A line in, ["time", scene, times], ["count", scene] or ["again", scene] as JSON, the first two with the parts of the answer after it, if not
all of them; a line out: processor seconds of one, or counts of it. What the program keeps between traces it forgets before each, but
where it is asked again.
"""

import inspect
import json
import sys
import time

from rimfall.scene import examples
from rimfall.web import work
from rimfall.web.work import Asked, answered

# name → (ends of the file's name, ends of the function's): calls of these are counted
CALLS = {
    "force calls": (("physics/forces.py",), ("Force.at",)),
    "law calls": (("physics/rolling.py", "physics/cornered.py"), (".at", ".at_few")),
}
# a program that does not gave its page all of them, always
TELLS_PARTS = "parts" in inspect.signature(work.WORK["trace"]).parameters
OPTIONS = {"arrays": "f4", "units": "si", "hold": None, "held": None, "follower": "habitat.spin_rpm"}


def forget():
    """Have the program keep nothing, where it keeps anything."""
    if hasattr(work, "KEPT"):
        work.KEPT.clear()


def trace(scene, parts="all"):
    """The answer that the page gets, as bytes; parts: of an answer (`scene.questions.trace`)."""
    forget()
    return ask(examples.example(scene), **({"parts": parts} if TELLS_PARTS else {}))


def ask(text, **options):
    """The answer to a document."""
    answer = answered(Asked("trace", text.encode(), OPTIONS | options, 600.0), None, lambda: False)
    if answer.status != 200:
        raise RuntimeError(answer.body.decode())
    return answer.body


def seconds(scene, times, parts="all"):
    """Processor seconds of one of so many."""
    start = time.process_time()
    for _ in range(times):
        trace(scene, parts)
    return (time.process_time() - start) / times


def counts(scene, parts="all"):
    """Python calls of one trace, those in CALLS, and the bytes of its answer. What the clock calls is left out."""
    trace(scene, parts)  # what any trace loads
    return counted(lambda: trace(scene, parts))


def again(scene):
    """Counts of a trace of paths; of the same with words after it; of it once a name is another; of it once a figure of one motion is."""
    document = json.loads(examples.example(scene))
    renamed, moved = json.loads(examples.example(scene)), json.loads(examples.example(scene))
    renamed["motions"][0]["name"] = "Another name"
    moved["motions"][0]["start_s"] = moved["motions"][0].get("start_s", 0.0) + 0.125
    moving, out = {"parts": "own_paths"}, {}
    for name, one, options in (
        ("paths alone", document, moving),
        ("words after them", document, {}),
        ("another name", renamed, moving),
        ("one motion moved", moved, moving),
    ):
        forget()
        ask(json.dumps(document), **(options if name == "paths alone" else moving))
        if name == "paths alone":
            forget()
        out[name] = counted(lambda one=one, options=options: ask(json.dumps(one), **options))
    return out


def counted(answer):
    """Counts of what answer() does, and the bytes that it gives."""
    every, grounded = {}, [0.0]

    def called(frame, event, value):
        if event == "call":
            every[frame.f_code] = every.get(frame.f_code, 0) + 1
        elif event == "return" and value is not None and _is(frame.f_code, ("motions/ground.py",), ("go",)):
            grounded[0] += sum(one.path.end_s - one.path.begin_s for one in value)

    sys.setprofile(called)
    try:
        size = len(answer())
    finally:
        sys.setprofile(None)
    clocked = [code for code in every if code.co_filename == __file__ or code.co_name == "_look"]
    for code in clocked:
        del every[code]
    out = {"Python calls": sum(every.values())}
    for name, (files, functions) in CALLS.items():
        out[name] = sum(n for code, n in every.items() if _is(code, files, functions))
    return out | {"s of rolling": round(grounded[0], 3), "bytes": size}


def _is(code, files, functions):
    return code.co_filename.replace("\\", "/").endswith(files) and code.co_qualname.endswith(functions)


if __name__ == "__main__":
    for line in sys.stdin:
        what, *asked = json.loads(line)
        print(json.dumps({"time": seconds, "count": counts, "again": again}[what](*asked)), flush=True)
