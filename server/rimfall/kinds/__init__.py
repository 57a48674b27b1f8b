"""The motions a scene can hold, one folder a kind. Each kind is a function (setting, motion) -> Plan."""

from .approach import plan as approach
from .hang import plan as hang
from .jump import plan as jump
from .let_go import plan as let_go
from .lift import plan as lift
from .pour import plan as pour
from .roll import plan as roll
from .throw import plan as throw
from .walk import plan as walk

KINDS = {
    "drop": throw.plan,
    "throw": throw.plan,
    "pour": pour.plan,
    "roll": roll.plan,
    "stand": roll.plan_standing,
    "hang": hang.plan,
    "jump": jump.plan,
    "walk": walk.plan,
    "lift": lift.plan,
    "let_go": let_go.plan,
    "approach": approach.plan,
}
