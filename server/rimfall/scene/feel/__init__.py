"""What people would feel: the question, its answer and its words."""
