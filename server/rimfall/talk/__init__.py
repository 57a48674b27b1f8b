"""A talk: an ordered list of steps before an audience, each a scene, from where it is seen, what is shown of it, a line and notes."""
