"""A person at the real window: finds things in the screen's text, and works with X events alone.

The program tells what is on its screen (role, name, value, place) in the file that EMBERPATH_SCREEN_TEXT
names. Here that file is read to know where things are, as eyes would; everything done goes through the X
server as keys and pointer events.
"""

import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SKIPPED = 77
NODE = re.compile(
    r'^(?P<indent> *)(?P<role>[a-z]+) "(?P<name>.*?)"(?P<rest>.*?)'
    r' \[(?P<x>-?\d+),(?P<y>-?\d+) (?P<w>\d+)x(?P<h>\d+)\]$'
)


class Node:
    def __init__(self, match):
        self.depth = len(match["indent"]) // 2
        self.role = match["role"]
        self.name = match["name"]
        self.rest = match["rest"]
        self.x, self.y, self.w, self.h = (int(match[k]) for k in "xywh")
        self.region = ""

    def says(self, mark):
        return f", {mark}" in self.rest

    @property
    def ready(self):
        return not self.says("not now") and not self.says("out of sight")

    @property
    def centre(self):
        return self.x + self.w // 2, self.y + self.h // 2


def parse(text):
    nodes, regions = [], []
    for line in text.splitlines():
        match = NODE.match(line)
        if not match:
            continue
        node = Node(match)
        while regions and regions[-1][0] >= node.depth:
            regions.pop()
        if node.role in ("region", "window"):
            regions.append((node.depth, node.name))
        node.region = regions[-1][1] if regions else ""
        nodes.append(node)
    return nodes


def skip_without(*programs):
    missing = [p for p in programs if not shutil.which(p)]
    if not missing:
        return
    print("needs " + ", ".join(missing) + " (Debian: xvfb, xdotool)")
    sys.exit(1 if os.environ.get("EMBERPATH_EVERY_TEST") else SKIPPED)


class Desktop:
    """A display of its own, in software, and the program on it."""

    def __init__(self, program, size=(1920, 1400)):
        self.folder = Path(tempfile.mkdtemp(prefix="emberpath-live-"))
        self.text_file = self.folder / "screen.txt"
        self.server = self.program = self.talk = None
        number_out, number_in = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(number_in), "-screen", "0", f"{size[0]}x{size[1]}x24",
             "-nolisten", "tcp", "-noreset"],
            pass_fds=[number_in], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(number_in)
        with os.fdopen(number_out) as told:
            number = told.readline().strip()
        self.environment = dict(
            os.environ, DISPLAY=f":{number}", LIBGL_ALWAYS_SOFTWARE="1", HOME=str(self.folder),
            XDG_STATE_HOME=str(self.folder / "state"), XDG_CONFIG_HOME=str(self.folder / "config"),
            EMBERPATH_SCREEN_TEXT=str(self.text_file))
        self.environment.pop("WAYLAND_DISPLAY", None)
        self.path = program
        self.left = self.top = 0

    def __enter__(self):
        return self

    def __exit__(self, kind, problem, trace):
        if problem is not None and kind is not SystemExit:
            print(f"While working: {problem}\nThe acts: {self.acts()}\nThe screen then:\n{self.text()}",
                  file=sys.stderr)
        for process in (self.program, self.server):
            if process is not None and process.poll() is None:
                process.terminate()
                process.wait(timeout=20)
        if self.talk is not None:
            self.talk.close()
        shutil.rmtree(self.folder, ignore_errors=True)

    def start(self, *arguments):
        self.text_file.unlink(missing_ok=True)
        self.talk = open(self.folder / "talk.txt", "w+", encoding="utf-8")
        self.program = subprocess.Popen([self.path, *arguments], env=self.environment,
                                        stderr=self.talk)
        self.until(lambda: self.text_file.exists(), "the first picture", 120)
        found = self.until(lambda: self.xdotool("search", "--name", "Emberpath").split(),
                           "a window of that name")
        self.xdotool("windowfocus", "--sync", found[0])
        place = dict(line.split("=") for line in self.xdotool(
            "getwindowgeometry", "--shell", found[0]).split() if "=" in line)
        self.left, self.top = int(place["X"]), int(place["Y"])

    def xdotool(self, *words):
        done = subprocess.run(["xdotool", *words], env=self.environment, capture_output=True,
                              text=True, timeout=60, check=False)
        return done.stdout

    # What is on the screen.

    def text(self):
        try:
            return self.text_file.read_text(encoding="utf-8")
        except FileNotFoundError:
            return ""

    def nodes(self):
        return parse(self.text())

    def find(self, name, role=None, region=None):
        for node in self.nodes():
            if (node.name == name and role in (None, node.role)
                    and region in (None, node.region)):
                return node
        return None

    def focused(self):
        return next((node for node in self.nodes() if node.says("focused")), None)

    def until(self, true, what, seconds=90.0):
        """Waits for something to become true of the screen; a slow machine gets its time."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            found = true()
            if found:
                return found
            if self.program is not None and self.program.poll() is not None:
                self.talk.seek(0)
                raise AssertionError(f"the program ended with {self.program.returncode} while "
                                     f"waiting for {what}: {self.talk.read()}")
            time.sleep(0.01)
        raise AssertionError(f"waited {seconds:.0f} s in vain for {what}")

    def shows(self, words, seconds=90.0):
        self.until(lambda: words in self.text(), f'"{words}"', seconds)

    def settled(self, quiet=0.2):
        """Waits for a screen that keeps still. A press and its release can fall into two pictures, the first
        of which only moves the focus; what is read between them has moved by the time a hand gets there."""
        text, since = self.text(), time.monotonic()

        def still():
            nonlocal text, since
            if self.text() != text:
                text, since = self.text(), time.monotonic()
            return time.monotonic() - since >= quiet

        self.until(still, "a screen that keeps still")

    def see(self, name, role=None, region=None):
        return self.until(lambda: self.find(name, role, region), f'"{name}"')

    # What hands do.

    def key(self, *names):
        self.xdotool("key", "--delay", "12", *names)

    def type(self, words):
        # Two presses of a key within 2 ms are held for its repeat by the window library: no hand is as quick.
        for run in re.findall(r"[ -~]+|.", words):
            if run.isascii():
                self.xdotool("type", "--delay", "12", run)
            else:
                self.type_lent(run)

    def type_lent(self, letter):
        """A letter no key carries is lent one for a moment. A busy program may hear of the loan too late and
        miss the letter; whoever does not see it come types it again."""

        def count():
            node = self.focused()
            return node.rest.count(letter) if node else 0

        self.settled()
        before = count()
        for _ in range(6):
            self.xdotool("type", "--delay", "150", letter)
            end = time.monotonic() + 5.0
            while time.monotonic() < end:
                if count() > before:
                    return
                time.sleep(0.02)
        raise AssertionError(f"typed {letter} in vain")

    def click(self, node):
        x, y = node.centre[0] + self.left, node.centre[1] + self.top
        self.xdotool("mousemove", str(x), str(y), "click", "1")

    # What was done: the record on disk.

    def records(self):
        return sorted((self.folder / "state/emberpath/records").glob("*.jsonl"))

    def acts(self):
        found = []
        for record in self.records():
            for line in record.read_text(encoding="utf-8").splitlines():
                entry = json.loads(line)
                if "sentence" in entry:
                    found.append(entry["sentence"])
        return found

    def next_act(self, done):
        """Does something, and returns the acts that came into the record of it."""
        before, screen = len(self.acts()), self.text()
        done()
        self.until(lambda: len(self.acts()) > before, "an act in the record")
        self.until(lambda: self.text() != screen, "the screen to show it")
        self.settled()
        return self.acts()[before:]

    def verify(self):
        """The record on disk comes out the same when it is simulated again."""
        for record in self.records():
            done = subprocess.run([self.path, "verify", str(record)], env=self.environment,
                                  capture_output=True, text=True, timeout=120, check=False)
            assert done.returncode == 0, done.stdout + done.stderr
