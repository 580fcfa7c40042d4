"""Measures the window as a process: start to first picture, processor time when nothing moves and when time
runs, and memory. Usage: window_process.py PROGRAM [SECONDS]. Needs Xvfb and xdotool."""

import os
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "live"))
from window import Desktop, skip_without  # noqa: E402


def used_s(pid):
    """Processor time of a process so far [s]."""
    fields = Path(f"/proc/{pid}/stat").read_text(encoding="ascii").rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def memory_mb(pid, key):
    for line in Path(f"/proc/{pid}/status").read_text(encoding="ascii").splitlines():
        if line.startswith(key):
            return int(line.split()[1]) / 1024.0
    return 0.0


def load_percent(desk, seconds):
    pid = desk.program.pid
    before, begin = used_s(pid), time.monotonic()
    time.sleep(seconds)
    return 100.0 * (used_s(pid) - before) / (time.monotonic() - begin)


def main(program, seconds="10"):
    skip_without("Xvfb", "xdotool")
    with Desktop(program, size=(1920, 1080)) as desk:
        begin = time.monotonic()
        desk.start()
        print(f"first picture after {time.monotonic() - begin:.2f} s, X server's answer included")
        print(f"list, nothing moves: {load_percent(desk, float(seconds)):.1f} % of a core")
        desk.key("Return")
        desk.see("customer", "heading")
        print(f"house, time runs: {load_percent(desk, float(seconds)):.1f} %")
        desk.key("p")
        desk.shows("Time stands still")
        print(f"house, paused: {load_percent(desk, float(seconds)):.1f} %")
        pid = desk.program.pid
        print(f"memory {memory_mb(pid, 'VmRSS'):.0f} MB, at most {memory_mb(pid, 'VmHWM'):.0f} MB")
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
