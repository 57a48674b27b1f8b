"""What a sentence must tell, without the words between: figures, sides and names. Exact words are held by frozen ones, not here."""


def tells(text, facts):
    """Whether the facts, parted by "…", stand in the text in this order; a space that does not break is a space."""
    rest = text.replace("\u00a0", " ")
    for fact in facts.replace("\u00a0", " ").split("…"):
        _, found, rest = rest.partition(fact.strip())
        if not found:
            return False
    return True
