"""A layer as text, .usda: from numpy, with the shortest digits that read back to the same 32-bit number."""

from io import BytesIO

import numpy as np

from ...physics.budget import spend
from .layer import is_array, ready

HEADER = "#usda 1.0"
STEP = "    "
_CHARGED_BYTES = 50_000  # of text, charged to the budget in one go


def text(layer):
    """The Layer as UTF-8 bytes."""
    lines = _Lines()
    lines += [HEADER, "(", f"{STEP}{quoted(layer.comment)}", f"{STEP}customLayerData = {{"]
    lines += [f"{STEP * 2}{_custom(name, value)}" for name, value in sorted(layer.custom.items())]
    lines += [f"{STEP}}}", *(f"{STEP}{name} = {_setting(v)}" for name, v in sorted(layer.settings.items())), ")", ""]
    _prim(layer.root, "", lines)
    return lines.written()


class _Lines:
    """Lines as they are written, UTF-8, so that no second copy of a long file is kept."""

    def __init__(self):
        self._out, self._charged = BytesIO(), 0

    def append(self, line):
        """A line more."""
        self._out.write(line.encode())
        self._out.write(b"\n")
        if self._out.tell() > self._charged + _CHARGED_BYTES:
            self._charge()

    def __iadd__(self, lines):
        for line in lines:
            self.append(line)
        return self

    def _charge(self):
        spend(bytes=self._out.tell() - self._charged)
        self._charged = self._out.tell()

    def written(self):
        """All of them, as bytes."""
        self._charge()
        return self._out.getvalue()


def quoted(words):
    """A text between quotes, on one line."""
    plain = words.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{plain}"'.replace("\n", "\\n").replace("\r", "\\r").replace("\t", "\\t")


def _setting(value):
    return quoted(value) if isinstance(value, str) else repr(value)


def _custom(name, value):
    if isinstance(value, str):
        return f"string {name} = {quoted(value)}"
    of = value[0] if isinstance(value, list) else value
    kind = "int" if isinstance(of, int) else "double"
    return f"{kind}{'[]' if isinstance(value, list) else ''} {name} = {value!r}"


def _prim(prim, indent, lines):
    kind = f"def {prim.kind}" if prim.kind else "def"
    about = _about(prim)
    lines.append(f'{indent}{kind} "{prim.name}"' + (" (" if about else ""))
    if about:
        lines += [f"{indent}{STEP}{line}" for line in about] + [f"{indent})"]
    lines.append(f"{indent}{{")
    inside = indent + STEP
    for attribute in prim.attributes:
        _attribute(attribute, inside, lines)
    lines += [f"{inside}rel {name} = <{path}>" for name, path in prim.relations.items()]
    for child in prim.children:
        lines.append("")
        _prim(child, inside, lines)
    lines.append(f"{indent}}}")


def _about(prim):
    about = [f"prepend apiSchemas = [{', '.join(quoted(a) for a in prim.apis)}]"] if prim.apis else []
    about += [f"displayName = {quoted(prim.shown_name)}"] if prim.shown_name else []
    return about + ([f"kind = {quoted(prim.model)}"] if prim.model else [])


def _attribute(a, indent, lines):
    head = f"{indent}{'uniform ' if a.uniform else ''}{a.kind} {a.name}"
    said = f" (\n{indent}{STEP}interpolation = {quoted(a.interpolation)}\n{indent})" if a.interpolation else ""
    if a.connect:
        lines.append(f"{head}.connect = <{a.connect}>")
    elif a.at is None:
        lines.append(head + ("" if a.value is None else f" = {_value(a.kind, a.value)}") + said)
    else:
        lines += [head + said] if said else []
        lines.append(f"{head}.timeSamples = {{")
        codes = zip(np.asarray(a.at).tolist(), _values(a.kind, a.values), strict=True)
        lines += (f"{indent}{STEP}{_code(code)}: {value}," for code, value in codes)
        lines.append(f"{indent}}}")


def _code(code):
    return str(int(code)) if code == int(code) else repr(code)


def _values(kind, values):
    """The texts of samples: small ones made ready all at once, arrays one by one, so that a large cloud needs little room."""
    if _is_words(kind) or is_array(kind):
        return (_value(kind, value) for value in values)
    return (_numbers(value, False) for value in _plain(kind, values))


def _value(kind, value):
    if _is_words(kind):
        return f"[{', '.join(map(quoted, value))}]" if is_array(kind) else quoted(value)
    return _numbers(_plain(kind, value), is_array(kind))


def _is_words(kind):
    return kind.removesuffix("[]") == "token"


def _plain(kind, value):
    """Numbers whose repr is what is written."""
    numbers = ready(kind, value)
    if numbers.dtype == np.bool_:
        return numbers.astype(int)
    return shortest(numbers) if numbers.dtype == np.float32 else numbers


def _numbers(numbers, of_many):
    """repr of Python's own lists and tuples, which is USD's own way of writing arrays and tuples."""
    if of_many:
        return repr(numbers.tolist() if numbers.ndim == 1 else list(map(tuple, numbers.tolist())))
    return repr(_tuples(numbers.tolist()))


def _tuples(value):
    return tuple(map(_tuples, value)) if isinstance(value, list) else value


def shortest(numbers):
    """float32 (...) -> float64 whose shortest decimals are the shortest that name the same float32: 6 to 9 digits."""
    wide = numbers.astype(np.float64)
    size = np.abs(wide)
    plain = (size > 1e-13) & (size < 1e6)
    places = -np.floor(np.log10(np.where(plain, size, 1.0))).astype(int)
    out, open_ = wide.copy(), plain
    for digits in (6, 7, 8, 9):
        scale = 10.0 ** (places + digits - 1)
        short = np.round(wide * scale) / scale
        same = open_ & (short.astype(np.float32) == numbers)
        out = np.where(same, short, out)
        open_ = open_ & ~same
    return out
