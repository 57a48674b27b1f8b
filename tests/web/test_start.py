"""What starts the server loads as little as it can: the first byte of the page waits for it."""

import subprocess
import sys

CORE = {"numpy", "fpdf", "rimfall.scene.document", "rimfall.kinds", "rimfall.web.work"}


def test_the_server_itself_loads_nothing_of_the_work():
    """Numpy, the core and the models of documents are its workers'; they made up half of its start."""
    told = "import sys, rimfall.cli.serve; print(*sys.modules)"
    loaded = subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, check=True).stdout.split()
    assert "rimfall.web.app" in loaded
    assert not CORE & set(loaded)
