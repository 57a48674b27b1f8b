"""The kinds of motion, one folder each, and the one list of them; whoever adds a kind adds its line here."""

from . import approach, drop, hang, jump, let_go, lift, pour, roll, stand, throw, tumble, walk
from .kind import Kind

# in the order in which people are offered them
_IN_ORDER = (drop, throw, pour, roll, stand, hang, jump, walk, lift, let_go, approach, tumble)
KINDS: dict[str, Kind] = {module.KIND.name: module.KIND for module in _IN_ORDER}
