#include "ui/screens/screens.hpp"

namespace emberpath::screens {

// Order is that of the help. The first four are known to the kit itself and stand here for the help.
// clang-format off
const std::vector<kit::Binding>& key_table() {
    static const std::vector<kit::Binding> table{
        {"next region",     "",          "F6",         "next region; with Shift the one before", true},
        {"next thing",      "",          "Tab",        "next thing; with Shift the one before", true},
        {"activate",        "",          "Enter",      "do what is in focus", true},
        {"back",            "",          "Esc",        "one level back; nothing is lost", true},
        {"help",            "",          "?",          "all keys for where you are"},
        {"help",            "",          "F1",         "all keys for where you are"},
        {"text larger",     "",          "Ctrl +",     "larger text"},
        {"text smaller",    "",          "Ctrl -",     "smaller text"},
        {"text usual",      "",          "Ctrl 0",     "text of 100 %"},
        {"day or night",    "",          "Ctrl D",     "day or night colours"},
        {"settings",        "",          "F10",        "settings"},

        {"go to",             "job replay","/",           "go to a point or part by its tag or name"},
        {"action.1",          "job",       "1",           "first action on the selected thing"},
        {"action.2",          "job",       "2",           "second action on the selected thing"},
        {"action.3",          "job",       "3",           "third action on the selected thing"},
        {"action.4",          "job",       "4",           "fourth action on the selected thing"},
        {"action.5",          "job",       "5",           "fifth action on the selected thing"},
        {"action.6",          "job",       "6",           "sixth action on the selected thing, or the next page"},
        {"choice.1",          "dialog",    "1",           "first choice of the list in front"},
        {"choice.2",          "dialog",    "2",           "second choice of the list in front"},
        {"choice.3",          "dialog",    "3",           "third choice of the list in front"},
        {"choice.4",          "dialog",    "4",           "fourth choice of the list in front"},
        {"choice.5",          "dialog",    "5",           "fifth choice of the list in front"},
        {"prefix.tool",       "job",       "T",           "then 1 to 8: take that tool in hand"},
        {"record",            "job",       "R",           "record the reading in hand"},
        {"causes",            "job replay","C",           "causes and the last reading"},
        {"pause",             "job",       "P",           "pause or run, wherever the focus is"},
        {"pause",             "job",       "Space",       "pause or run; on a button it presses that"},
        {"speed",             "job",       "S",           "next speed"},
        {"wait",              "job",       "W",           "wait again"},
        {"choose wait",       "job",       "Shift W",     "choose a wait"},
        {"other sheet",       "job replay","Z",           "house or heater sheet"},
        {"zoom in",           "job replay","+",           "nearer"},
        {"zoom out",          "job replay","-",           "farther"},
        {"pan left",          "job replay","Shift Left",  "further left on a large drawing"},
        {"pan right",         "job replay","Shift Right", "further right"},
        {"pan up",            "job replay","Shift Up",    "further up"},
        {"pan down",          "job replay","Shift Down",  "further down"},
        {"job card",          "job replay","H",           "job card"},
        {"write-up",          "job",       "F2",          "write-up"},
        {"panel",             "job replay","F3",          "the heater's front panel"},

        {"house",             "write-up",  "F2",          "back to the house"},
        {"hand in",           "write-up",  "Ctrl Enter",  "sign and hand in"},

        {"step back",         "debrief",   "Left",        "previous step"},
        {"step back",         "debrief replay","Ctrl Left",   "previous step"},
        {"step on",           "debrief",   "Right",       "next step"},
        {"step on",           "debrief replay","Ctrl Right",  "next step"},
        {"mark back",         "debrief replay","Ctrl Up",     "previous reading or unsafe act"},
        {"mark on",           "debrief replay","Ctrl Down",   "next reading or unsafe act"},
        {"other lane",        "debrief",   "C",           "chart of the causes, or of the remedies left"},
        {"table",             "debrief",   "T",           "to the table"},
        {"replay",            "debrief",   "R",           "replay from this step"},

        {"look again",        "authoring", "F9",          "look at the file again"},
        {"play",              "authoring", "F5",          "play it as a trainee"},
        {"preview",           "choose",    "F9",          "back to the author's preview"},
    };
    return table;
}
// clang-format on

}  // namespace emberpath::screens
