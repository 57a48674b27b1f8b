"""How things move in a turning frame. numpy and the standard library only."""
