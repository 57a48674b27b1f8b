"""What all kinds of motion share: flight, ground, trajectory, track, the same over flat ground, and why a thing drifts."""
