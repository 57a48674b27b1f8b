"""A habitat for some wishes: the question, its answer and its words."""
