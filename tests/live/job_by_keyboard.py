"""Proves that a whole job can be worked in the real window by keyboard alone, to a passed debrief.

A sensor with a broken lead is found, replaced and proved: by tags, by numbers of actions, by tools, by
sentences, and by Tab and arrow keys. No pointer event is sent.
"""

import sys

from window import Desktop, skip_without


class Keyboard(Desktop):
    def say(self, sentence):
        """"/", an act in words, Enter."""

        def write():
            self.key("slash")
            self.see("Tag, name or act", "field")
            self.type(sentence)
            self.key("Return")

        assert self.next_act(write) == [sentence]

    def at(self, tag, *names):
        """Goes to a thing by its tag, and does actions there by their numbers."""
        if not self.find(tag, "heading"):
            self.key("slash")
            self.see("Tag, name or act", "field")
            self.type(tag)
            self.key("Return")
            self.see(tag, "heading")
        for name in names:
            self.next_act(lambda: self.key(str(self.number_of(tag, name))))

    def place_of_focus(self):
        node = self.focused()
        return node and (node.role, node.name, node.x, node.y)

    def number_of(self, tag, name):
        for _ in range(12):
            here = [n for n in self.nodes() if n.region == f"Actions at {tag}" and n.role == "button"]
            for number, node in enumerate(here, 1):
                if node.name == name:
                    assert node.ready, f"{name} at {tag}: {node.rest}"
                    return number
            before = self.text()
            self.key(str(len(here)))
            self.until(lambda: self.text() != before, f"further actions than {[n.name for n in here]}")
            self.settled()
        raise AssertionError(f"{name} is not offered at {tag}")

    def tab_to(self, name):
        self.settled()  # letters still on their way would change the screen and pass for a moved focus
        for _ in range(60):
            now = self.place_of_focus()
            if now and now[1].startswith(name):
                self.settled()
                assert self.place_of_focus() == now, f"the focus went on from {now} by itself"
                return
            self.key("Tab")
            self.until(lambda: self.place_of_focus() not in (None, now), "the focus to move")
        raise AssertionError(f"Tab does not lead to {name}")


def find_the_house(desk):
    """From the list to the house in Tanager Court, by arrow keys."""
    desk.see("Go to the house")
    while not desk.focused().name.endswith("Tanager Court"):
        here = desk.place_of_focus()
        if here[0] == "row":
            desk.key("Down")
            desk.until(lambda: desk.place_of_focus() not in (None, here), "the next job")
        else:
            desk.tab_to("Job ")
    desk.key("Return")
    desk.until(lambda: desk.focused() and desk.focused().says("selected"), "the house chosen")
    desk.key("Return")
    desk.see("customer", "heading")
    desk.key("p")  # from here on only what is done changes the screen
    desk.shows("Time stands still")


def find_the_cause(desk):
    desk.next_act(lambda: desk.key("1"))  # the customer is selected on arrival
    desk.at("customer", "Ask: when")
    desk.say("ask customer for consent")
    desk.say("look at display")
    desk.say("switch on analyser")
    desk.key("shift+w")
    desk.next_act(lambda: desk.key("2"))
    desk.say("wait 30 s")
    desk.say("read room air")
    desk.say("open service readout")
    desk.at("readout", "Read event", "Read outlet temperature")
    for sentence in ("switch power off", "unplug heater", "lock off plug", "put on gloves",
                     "put on glasses", "take cover off", "prove tester", "test for dead",
                     "prove tester"):
        desk.say(sentence)
    desk.at("T2", "Unplug", "Attach multimeter")
    desk.key("t", "2")
    desk.shows("In hand: multimeter")
    desk.next_act(lambda: desk.key("r"))
    desk.at("T2", "Take multimeter off")


def set_it_right(desk):
    for sentence in ("replace outlet sensor", "plug in outlet sensor", "refit cover", "unlock plug",
                     "plug in heater", "switch power on", "press reset", "open kitchen tap",
                     "wait 60 s", "look at display", "measure temperature at kitchen tap",
                     "close kitchen tap",
                     "tell customer the outlet sensor had a broken lead; it is replaced"):
        desk.say(sentence)


def type_cut_and_paste(desk, words):
    """Letters beyond the plain keys, and the clipboard, in the field that has the focus."""
    full = f'field "Done" = {words}'
    desk.type(words)
    desk.shows(full)
    desk.key("ctrl+a", "ctrl+x")
    desk.until(lambda: full not in desk.text(), "the words cut")
    desk.key("ctrl+v")
    desk.shows(full)


def write_it_up(desk):
    desk.key("F2")
    desk.see("Write-up", "heading")
    desk.key("Return")
    desk.see("Choose the cause", "region")
    while desk.focused().name != "Outlet sensor open circuit":
        before = desk.focused().name
        desk.key("Down")
        desk.until(lambda: desk.focused().name != before, "the next cause")
    desk.next_act(lambda: desk.key("Return"))
    desk.tab_to("Because")
    desk.type("The readout and the meter say so: #1 #2")
    desk.tab_to("Done")
    type_cut_and_paste(desk, "Replaced the outlet sensor; ½ h; pipe at 20 °C.")
    desk.tab_to("Proved by")
    desk.type("Hot water at the set temperature.")
    desk.tab_to("Told the customer")
    desk.type("What was wrong and what was done.")
    desk.key("ctrl+Return")
    desk.see("Hand in", "button")
    desk.tab_to("Hand in")
    desk.key("Return")


def main(program):
    skip_without("Xvfb", "xdotool")
    with Keyboard(program) as desk:
        desk.start()
        find_the_house(desk)
        find_the_cause(desk)
        set_it_right(desk)
        write_it_up(desk)
        score = desk.until(lambda: desk.find("Score", "reading"), "the debrief", 200)
        print(f"score{score.rest}")
        assert "Safety gates met" in score.rest, desk.text()
        assert "nothing stands against it" in score.rest, score.rest
        desk.key("Escape")
        desk.tab_to("Debrief of last time")
        desk.key("Return")
        again = desk.until(lambda: desk.find("Score", "reading"), "the same debrief again", 200)
        assert again.rest == score.rest, again.rest
        desk.verify()
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
