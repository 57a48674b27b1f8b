"""What is brought in from other programs: how a node of their files moves, as matrices in metres with Y up, and cameras among them."""
