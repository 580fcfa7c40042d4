"""Proves that a display that cannot draw, or that is gone, is answered by the terminal and a sentence."""

import os
import subprocess
import sys
import tempfile

from window import skip_without


def talk_of(program, display, folder):
    environment = dict(os.environ, DISPLAY=display, HOME=folder)
    for name in ("XDG_STATE_HOME", "XDG_CONFIG_HOME"):
        environment.pop(name, None)
    done = subprocess.run([program], env=environment, input="", capture_output=True, text=True,
                          timeout=60, check=False)
    assert done.returncode in (0, 2), f"{done.returncode}\n{done.stdout}\n{done.stderr}"
    return done.stdout + done.stderr


def main(program):
    skip_without("Xvfb")
    number_out, number_in = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(number_in), "-screen", "0", "1280x800x24", "-extension", "GLX",
         "-nolisten", "tcp", "-noreset"],
        pass_fds=[number_in], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    os.close(number_in)
    with tempfile.TemporaryDirectory() as folder, os.fdopen(number_out) as told:
        display = ":" + told.readline().strip()
        try:
            assert "no OpenGL" in talk_of(program, display, folder)
        finally:
            server.terminate()
            server.wait(timeout=20)
        assert "There is no display" in talk_of(program, display, folder)
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
