"""Proves that a whole job can be worked in the real window with the pointer alone, to a passed debrief.

The same sensor is found and replaced by clicks on the sheet, the strip, the bench and the lists; words come
from the list of the box and from the record. No key is pressed.
"""

import sys

from window import Desktop, skip_without


class Pointer(Desktop):
    def press(self, name, role="button", region=None):
        self.see(name, role, region)
        self.settled()
        node = self.see(name, role, region)
        assert node.ready, f"{name}: {node.rest}"
        self.click(node)

    def select(self, name, role, tag):
        """A thing on the sheet, in the rail or at the panel; its actions come into the strip."""
        self.press(name, role)
        self.see(tag, "heading")
        self.settled()

    def act(self, tag, *names):
        """Actions of the selected thing, turning pages until they come."""
        region = f"Actions at {tag}"
        for name in names:
            self.turn_pages_to(name, region)
            self.next_act(lambda: self.press(name, "button", region))

    def turn_pages_to(self, beginning, region):
        def offered():
            return [n.name for n in self.nodes() if n.region == region and n.role == "button"]

        for _ in range(12):
            here, before = offered(), self.text()
            if any(name.startswith(beginning) for name in here):
                return
            self.press("More …" if "More …" in here else "Back to the first", "button", region)
            self.until(lambda: self.text() != before, f"further actions than {here}")
            self.settled()
        raise AssertionError(f"{beginning} is not offered in {region}")

    def wait(self, words):
        self.press("Choose a wait")
        self.next_act(lambda: self.press(words))


def find_the_cause(desk):
    desk.act("customer", "Ask: problem", "Ask customer for consent")
    desk.select("Display", "button", "panel")
    desk.act("panel", "Look")
    desk.select("A2 room air", "point", "A2")
    desk.act("A2", "Switch on analyser")
    desk.wait("2 minutes")
    desk.act("A2", "Read room air")
    desk.next_act(lambda: desk.press("Service readout"))
    desk.see("readout", "heading")
    desk.act("readout", "Read event", "Read outlet temperature")
    desk.select("power point", "part", "power point")
    desk.act("power point", "Switch power off", "Unplug heater", "Lock off plug")
    desk.select("You", "reading", "you")
    desk.act("you", "Put on gloves", "Put on glasses")
    desk.select("the heater and its cover", "part", "heater")
    desk.act("heater", "Take cover off")
    desk.select("E1 supply terminals", "point", "E1")
    desk.act("E1", "Prove tester", "Test for dead", "Prove tester")
    desk.select("T2 outlet pipe and its sensor", "point", "T2")
    desk.act("T2", "Unplug", "Attach multimeter")
    desk.press("multimeter", "choice")
    desk.next_act(lambda: desk.press("Record reading"))
    desk.act("T2", "Take multimeter off")


def write_the_cause(desk):
    desk.press("Write-up…")
    desk.press("Cause")
    row = desk.see("Outlet sensor open circuit", "row", "Choose the cause")
    assert row.ready, row.rest
    desk.next_act(lambda: desk.click(row))
    desk.press("Back to the house")
    desk.see("T2", "heading")


def set_it_right(desk):
    desk.act("T2", "Replace outlet sensor", "Plug in")
    desk.select("the heater and its cover", "part", "heater")
    desk.act("heater", "Refit cover")
    desk.select("power point", "part", "power point")
    desk.act("power point", "Unlock plug", "Plug in heater", "Switch power on")
    desk.next_act(lambda: desk.press("Reset"))
    desk.select("T4 kitchen tap", "point", "T4")
    desk.act("T4", "Open")
    desk.wait("2 minutes")
    desk.select("Display", "button", "panel")
    desk.act("panel", "Look")
    desk.select("T4 kitchen tap", "point", "T4")
    desk.act("T4", "Measure temperature", "Close")


def tell_the_customer(desk):
    desk.press("The customer and the job card")
    desk.see("customer", "heading")
    desk.turn_pages_to("Tell customer …", "Actions at customer")
    desk.press("Tell customer …")
    row = desk.until(
        lambda: next((n for n in desk.nodes() if n.role == "row"
                      and n.name.startswith("Tell customer what was found")), None),
        "what could be told")
    desk.next_act(lambda: desk.click(row))


def write_it_up(desk):
    desk.press("Write-up…")
    for number in (1, 2):
        row = desk.until(
            lambda: next((n for n in desk.nodes() if n.name.startswith(f"Reading {number},")), None),
            f"reading {number}")
        desk.click(row)
    for field in ("Done", "Proved by", "Told the customer"):
        desk.click(desk.until(
            lambda: next((n for n in desk.nodes() if n.name == "From the record"
                          and f"= {field}" in n.rest), None), f"{field} from the record"))
        desk.until(lambda: f'field "{field}" = ' in desk.text(), f"words in {field}")
    desk.press("Sign and hand in")
    desk.press("Hand in")


def main(program):
    skip_without("Xvfb", "xdotool")
    with Pointer(program) as desk:
        desk.start()
        desk.press("Job 1, 8 Tanager Court", "row")
        desk.press("Go to the house")
        desk.see("customer", "heading")
        desk.press("Pause")  # from here on only what is done changes the screen
        desk.see("Run")
        find_the_cause(desk)
        write_the_cause(desk)
        set_it_right(desk)
        tell_the_customer(desk)
        write_it_up(desk)
        score = desk.until(lambda: desk.find("Score", "reading"), "the debrief", 200)
        print(f"score{score.rest}")
        assert "Safety gates met" in score.rest, desk.text()
        assert "nothing stands against it" in score.rest, score.rest
        desk.verify()
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
