"""The motions a scene can hold, one file a kind. Each kind is a function (setting, motion) -> Plan."""

from . import approach, hang, jump, let_go, lift, pour, roll, throw, walk

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
