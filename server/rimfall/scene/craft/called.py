"""What people call the groups of a craft in sentences: by their one part, or as a whole. A language may bend that as "of" it, or "with" it."""

from ...language import tr, tr_as


def as_group(group, bent=""):
    """ "the turning part"; group: or "craft", where it is all of it."""
    if bent == "of":
        return {
            "turning": tr_as("of", "the turning part"),
            "still": tr_as("of", "the still part"),
            "counter": tr_as("of", "the counter-turning part"),
            "craft": tr_as("of", "the craft"),
        }[group]
    if bent == "with":
        return {
            "turning": tr_as("with", "the turning part"),
            "still": tr_as("with", "the still part"),
            "counter": tr_as("with", "the counter-turning part"),
            "craft": tr_as("with", "the craft"),
        }[group]
    return {
        "turning": tr("the turning part"),
        "still": tr("the still part"),
        "counter": tr("the counter-turning part"),
        "craft": tr("the craft"),
    }[group]


def as_part(name, bent=""):
    """ "the ring"; what has a name of its own as that alone."""
    if not name[0].islower():
        if bent == "of":
            return tr_as("of a part with a name of its own", "{name}", name=name)
        if bent == "with":
            return tr_as("with a part with a name of its own", "{name}", name=name)
        return tr_as("a part with a name of its own", "{name}", name=name)
    if bent == "of":
        return tr_as("of", "the {name}", name=name)
    return tr_as("with", "the {name}", name=name) if bent == "with" else tr("the {name}", name=name)


def as_still_part(name, bent=""):
    """ "the still keel"."""
    if "still" in name or not name[0].islower():
        return as_part(name, bent)
    if bent == "of":
        return tr_as("of", "the still {name}", name=name)
    return tr_as("with", "the still {name}", name=name) if bent == "with" else tr("the still {name}", name=name)
