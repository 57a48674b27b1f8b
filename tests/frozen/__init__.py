"""What the program answers, frozen: any change of an answer is named by scene, question and path (`python -m tests.frozen`)."""
