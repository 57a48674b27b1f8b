"""The motions a scene can hold, one file a kind. Each kind is a function (setting, motion) -> Plan."""

from . import pour, roll, throw

KINDS = {
    "drop": throw.plan,
    "throw": throw.plan,
    "pour": pour.plan,
    "roll": roll.plan,
    "stand": roll.plan_standing,
}
