"""How the program's code asks for words: each call fills the places of its text, and none is made where no language is spoken: while a module is
loaded, or for a cache that outlives who asked."""

import ast
import re

from tests.catalogues import ROOT

TEXTS = {"tr", "tr_as", "tr_many"}
SPOKEN = {*TEXTS, "written", "in_signs", "spoken"}
CACHES = {"cache", "lru_cache"}
PLACE = re.compile(r"\{(\w+)\}")
FILES = {
    file.relative_to(ROOT).as_posix(): ast.parse(file.read_text(encoding="utf-8"))
    for file in sorted((ROOT / "server/rimfall").rglob("*.py"))
    if "language" not in file.parts
}


def name_of(node):
    """Of what is called, or of a decorator."""
    called = node.func if isinstance(node, ast.Call) else node
    return getattr(called, "id", getattr(called, "attr", ""))


def calls(tree, names):
    return [node for node in ast.walk(tree) if isinstance(node, ast.Call) and name_of(node) in names]


def test_every_call_fills_the_places_of_its_text():
    looked_at = 0
    for file, tree in FILES.items():
        for call in calls(tree, TEXTS):
            given = {one.arg for one in call.keywords}
            several, counted = (call.args[:2], {"count"}) if name_of(call) == "tr_many" else (call.args[-1:], set())
            texts = [one.value for one in several if isinstance(one, ast.Constant)]
            if None in given or len(texts) < len(several):
                continue  # of a table
            looked_at += 1
            places = {place for text in texts for place in PLACE.findall(text)}
            where = f"{file}:{call.lineno} {texts}"
            assert places | counted == given | counted, where
            assert not given or not re.search(r"[{}]", "".join(PLACE.sub("", text) for text in texts)), where
    assert looked_at > 1_000


def at_import(tree):
    """The nodes that are worked out while a module is loaded: all but what functions do."""
    waiting = [tree]
    while waiting:
        node = waiting.pop()
        yield node
        if isinstance(node, ast.Lambda):
            waiting += [one for one in (*node.args.defaults, *node.args.kw_defaults) if one]
        elif isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)):
            waiting += [one for one in (*node.args.defaults, *node.args.kw_defaults, *node.decorator_list) if one]
        else:
            waiting += ast.iter_child_nodes(node)


def test_no_word_is_told_where_no_language_is_spoken():
    cached = 0
    for file, tree in FILES.items():
        early = [ast.unparse(one) for one in at_import(tree) if isinstance(one, ast.Call) and name_of(one) in SPOKEN]
        assert early == [], file
        for function in ast.walk(tree):
            if isinstance(function, ast.FunctionDef) and any(name_of(one) in CACHES for one in function.decorator_list):
                cached += 1
                assert [ast.unparse(call) for call in calls(function, SPOKEN)] == [], f"{file}: {function.name}"
    assert cached > 10
