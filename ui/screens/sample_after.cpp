#include "ui/screens/sample.hpp"

namespace emberpath::screens {

namespace {

ServiceLane lane(const char* name, const char* rest, char ink, std::vector<SpanView> spans) {
    return {name, rest, ink, std::move(spans)};
}

std::vector<AreaView> sample_areas() {
    return {{"Safe work", 0.48, "48", "28 min: hand in the case before the power was proved off.",
             true},
            {"Evidence", 0.84, "84", "The shower and reading 6 told you almost the same."},
            {"Path", 0.90, "90", "Two readings could have been saved."},
            {"Remedy", 1.0, "100", "The pipe was handed on, with limits of use until then."},
            {"Proof", 0.53, "53", "Readings are there. The reason is not."}};
}

std::vector<StepView> sample_steps() {
    return {{2.0, "Ask about the problem", "0.2 bits, nothing fell", 0.2, 0},
            {6.0, "Service readout, events", "weak flame 4 times, 0.5 bits, 1 cause fell", 0.5, 1},
            {9.0, "Take cover off", "nothing learnt", 0.0, 0},
            {14.0, "Kitchen tap, flow", "8.9 L/min, 0.8 bits, 2 remedies fell", 0.8, 2},
            {21.0, "P1, all burners off", "2.76 kPa, 0.3 bits, nothing fell", 0.3, 3},
            {26.0, "Shower", "38.4 °C, 0.2 bits", 0.2, 4},
            {36.0, "P1, full rate, cooktop off", "2.31 kPa, 1.3 bits, 3 remedies fell", 1.3, 5},
            {40.0, "P1, full rate, cooktop on", "1.84 kPa, 0.1 bits", 0.1, 6},
            {47.0, "P3, full rate, cooktop on", "2.62 kPa, 0.9 bits, 1 cause fell", 0.9, 7},
            {63.0, "Quote larger gas pipe", "remedy", 0.0, 0},
            {72.0, "Tightness", "held, no bits", 0.0, 8, false},
            {80.0, "P1 after the remedy", "2.55 kPa, 0.7 bits", 0.7, 9}};
}

std::vector<StandView> sample_stands() {
    return {
        {0.0, 0, {0.10, 0.12, 0.16, 0.14, 0.48}, {"10 %", "12 %", "16 %", "14 %", "48 %"}},
        {6.0, 2, {0.14, 0.16, 0.17, 0.33, 0.20}, {"14 %", "16 %", "17 %", "33 %", "20 %"}},
        {14.0, 4, {0.19, 0.22, 0.16, 0.35, 0.08}, {"19 %", "22 %", "16 %", "35 %", "8 %"}},
        {21.0, 5, {0.24, 0.27, 0.18, 0.26, 0.05}, {"24 %", "27 %", "18 %", "26 %", "5 %"}},
        {26.0, 6, {0.27, 0.30, 0.13, 0.26, 0.04}, {"27 %", "30 %", "13 %", "26 %", "4 %"}},
        {36.0, 7, {0.45, 0.51, 0.01, 0.02, 0.01}, {"45 %", "51 %", "1 %", "2 %", "1 %"}},
        {40.0, 8, {0.47, 0.50, 0.01, 0.01, 0.01}, {"47 %", "50 %", "1 %", "1 %", "1 %"}},
        {47.0, 9, {0.96, 0.02, 0.01, 0.005, 0.005}, {"96 %", "2 %", "1 %", "<1 %", "<1 %"}},
        {80.0, 12, {0.99, 0.004, 0.002, 0.002, 0.002}, {"99 %", "<1 %", "<1 %", "<1 %", "<1 %"}}};
}

std::vector<ComparedRow> sample_rows() {
    return {{2,
             "T4",
             "flow, L/min",
             "8.9",
             {{"8.9"}, {"8.9"}, {"8.9"}, {"8.9"}, {"8.9"}, {"11.6", true}}},
            {3,
             "P1",
             "all off, kPa",
             "2.76",
             {{"2.76"}, {"2.76"}, {"2.76"}, {"2.76"}, {"2.76"}, {"2.76"}}},
            {5,
             "P1",
             "full rate, kPa",
             "2.31",
             {{"2.31"}, {"2.28"}, {"2.66", true}, {"2.67", true}, {"2.66", true}, {"2.66", true}}},
            {6,
             "P1",
             "and cooktop, kPa",
             "1.84",
             {{"1.84"}, {"1.80"}, {"2.58", true}, {"2.58", true}, {"2.57", true}, {"2.58", true}}},
            {7,
             "P3",
             "and cooktop, kPa",
             "2.62",
             {{"2.62"}, {"1.91", true}, {"2.66"}, {"2.66"}, {"2.66"}, {"2.66"}}}};
}

}  // namespace

DebriefView sample_debrief() {
    DebriefView v;
    v.job = "Sample job";
    v.outcome = "Rightly handed on, and the readings show why.";
    v.outcome_detail = "What it was: gas pipe too small.";
    v.outcome_good = true;
    v.unsafe = "1 unsafe act";
    v.unsafe_detail = "Power on with a hand in the case";
    v.score = "70";
    v.of = "of 100";
    v.floor =
        "A person decides. Suggested: not yet, because a safety gate was broken: power on with a "
        "hand in the case.";
    v.verdict = "Gates not met";
    v.areas = sample_areas();
    v.sections = {
        {"A short way",
         {"Service readout, events; kitchen tap, flow; P1, full rate, cooktop off; P3, full rate, "
          "cooktop on"}}};
    v.minutes = 90.0;
    v.steps = sample_steps();
    v.step = 6;
    v.causes = 8;
    v.left = {{0.0, 8, 8},  {6.0, 7, 8},  {14.0, 5, 8}, {22.0, 5, 6},
              {36.0, 2, 6}, {38.0, 2, 3}, {47.0, 1, 2}, {57.0, 1, 1}};
    v.likely = {"gas pipe too small", "gas regulator", "outlet sensor", "flame electrode fouled",
                "all others"};
    v.stands = sample_stands();
    v.services = {lane("Gas", "on", 'g', {{55.0, 76.0, "off, proved"}}),
                  lane("Power", "on", 'p', {{30.0, 34.0, "off"}, {54.0, 78.0, "off, proved"}}),
                  lane("Cover", "", 'i', {{26.0, 34.0, "off"}, {46.0, 84.0, "off"}})};
    v.hazards = {{27.0, 30.0, "power on, hand in the case"}};
    v.columns = {
        "Quote a larger gas pipe",   "Escalate the gas regulator",
        "Replace the outlet sensor", "Clean the flame electrode",
        "Clean the heat exchanger",  "Turn the mixer's stop back and replace its cartridge, both"};
    v.rows = sample_rows();
    v.status = "Step 7 of 12 told you most.";
    return v;
}

WriteUpView sample_write_up() {
    WriteUpView v;
    const JobView job = sample_job();
    v.rail = job.rail;
    for (ServiceCell& cell : v.rail.cells)
        if (cell.id == "power") cell = {"power", "Power", "On, cover on", "On", StateMark::on};
    for (const CauseView& cause : job.causes)
        if (cause.belief != Belief::struck) v.held.push_back(cause);
    v.cause = "Gas pipe too small";
    v.confidence = "80 %";
    for (const CauseView& cause : v.held)
        if (cause.title == v.cause) v.written.push_back(cause.word);
    v.because =
        "With everything off the heater sees 2.76 kPa #3. At full rate it drops to 2.31 #5, and "
        "with the cooktop to 1.84 #6. "
        "The meter outlet holds 2.62, so the loss is in the pipe and not in the regulator.";
    v.done = "Quoted a larger pipe from the meter to the heater. Until then: one thing at a time.";
    v.proved = "";
    v.told = "";
    for (const ReadingView& r : job.readings)
        v.readings.push_back({r, r.number == 3 || r.number == 5 || r.number == 6});
    v.hint = "Two things a reader will ask: how it was proved, and what the customer was told.";
    v.hint_is_warning = true;
    v.status = "Because: 41 words, 3 readings cited.";
    return v;
}

ChooseView sample_choose() {
    ChooseView v;
    v.jobs = {
        {"tanager", "Job 1", "8 Tanager Court", "natural gas",
         "Water runs hot, then goes cold in the shower.", "82, propose competent", false, true},
        {"linnet", "Job 2", "5 Linnet Close", "natural gas",
         "No hot water since yesterday evening.", "left after 12 min", true},
        {"quarry", "Job 3", "Old Quarry Cottage", "propane cylinder",
         "Fine in the morning, useless by the second bath.", "not tried", false},
        {"petrel", "petrel", "petrel.toml", "", "line 9: found 2.35, a number without a unit",
         "cannot be opened", false, false, true},
        {"fennel", "Job 4", "30 Fennel Walk", "natural gas", "Not hot enough anywhere.",
         "not tried", false},
        {"sorrel", "Job 5", "14 Sorrel Street", "natural gas", "Lukewarm when somebody cooks.",
         "not tried", false},
        {"harrier", "Job 6", "3 Harrier Rise", "natural gas", "Goes out on windy days.",
         "not tried", false}};
    v.selected = "linnet";
    return v;
}

SettingsView sample_settings() {
    SettingsView v;
    const kit::KeyMap map(key_table());
    for (const kit::Binding& b : map.all()) v.keys.push_back({b.id, b.chord, b.words, b.fixed});
    v.changing = "record";
    return v;
}

LoadingView sample_loading() {
    return {"Settling the house", "18 of 30 minutes before you arrive", 0.6, true, "12 s so far"};
}

ErrorView sample_error() {
    return {"This job file cannot be opened",
            "sample.toml, line 42",
            "42",
            "static_pressure = 2.35",
            18,
            4,
            "A number without a unit. Expected a pressure from 0 to 7 kPa, such as \"2.35 kPa\".",
            {{"Choose another job", {"back"}},
             {"Open in editor", {"open file"}},
             {"Copy details", {"copy details"}}},
            "Nothing was changed. Your other attempts are safe."};
}

namespace {

/// A lane that rises from one value to another in the first minute and keeps there.
LaneView sample_lane(const char* name, const char* unit, double high, char ink, double to,
                     const char* label) {
    LaneView lane{name, unit, 0.0, high, {}, {{label, ink, {}}}, 1.0};
    for (int s = 0; s <= 180; s += 5)
        lane.traces[0].points.push_back({(180.0 - s) / 60.0, to * std::min(1.0, s / 60.0)});
    return lane;
}

LoopView sample_loop() {
    LoopView loop;
    loop.words = "kitchen tap: light-up, then full draw";
    auto& lanes = loop.traces.lanes;
    loop.traces.minutes = 3.0;
    loop.traces.marks = {{2.75, 0, "half open"}, {1.5, 0, "fully open"}};
    lanes = {sample_lane("Temperature", "°C", 60.0, 'h', 38.0, "38.0 [50.0]"),
             sample_lane("Water flow", "L/min", 15.0, 'c', 8.9, "8.9 [8.9]"),
             sample_lane("Gas at inlet", "kPa", 3.0, 'g', 1.84, "1.84 [2.61]"),
             sample_lane("Gas at burner", "kPa", 3.0, 'g', 1.21, "1.21 [1.45]"),
             sample_lane("Fan", "rpm", 5000.0, 'f', 4000.0, "4000 [3900]"),
             sample_lane("Firing rate", "MJ/h", 150.0, 'i', 140.0, "140 [131]")};
    lanes[0].weight = 2.0;
    lanes[0].ticks = {20.0, 50.0};
    for (const LaneView& lane : lanes) {
        loop.sound.push_back(lane.traces);
        for (auto& point : loop.sound.back()[0].points) point.value *= 1.1;
    }
    lanes[0].traces.insert(lanes[0].traces.begin(),
                           {"50 set", 'i', {{3.0, 50.0}, {0.0, 50.0}}, true});
    return loop;
}

}  // namespace

AuthorView sample_author() {
    AuthorView v;
    v.title = "Sample job";
    v.file = "sample.toml";
    v.facts = {{"Cause", "Gas pipe too small"},
               {"Severity", "0.6 of 1"},
               {"Since", "long before arrival"},
               {"House", "8 Tanager Court"},
               {"Cooktop", "28 MJ/h"},
               {"Supply pressure", "2.75 kPa"},
               {"History before arrival", "8 min"}};
    v.customer =
        "The shower goes lukewarm when somebody cooks. It was fine until the kitchen was done up.";
    v.house = sample_arrival();
    v.fault_tag = "gas valve at heater";
    v.fault_words = "set right here: pipe too small";
    v.columns = {{"standby"}, {"low draw"}, {"full draw"}};
    v.lines = {
        {"P1",
         "gas inlet, kPa",
         {{"2.76", "2.76"}, {"2.58", "2.70", true}, {"1.84", "2.61", true}}},
        {"P3", "regulator outlet, kPa", {{"2.76", "2.76"}, {"2.72", "2.72"}, {"2.62", "2.64"}}},
        {"T2", "outlet, °C", {{"18", "18"}, {"50", "50"}, {"38", "50", true}}},
        {"T4", "flow, L/min", {{"0", "0"}, {"4.1", "4.1"}, {"8.9", "8.9"}}},
        {"A1", "CO in the flue, ppm", {{"0", "0"}, {"35", "32"}, {"96", "38", true}}},
        {"E2", "flame current, µA", {{"0", "0"}, {"3.1", "3.2"}, {"1.9", "3.1", true}}}};
    v.checks = {
        {"4 readings leave one remedy",
         "One step ahead, the best reading each time: 31 minutes, then 97 % for the likeliest."},
        {"Causes look alike", "No readings tell this fault from: Scale in the heat exchanger.",
         false},
        {"The files load", "Scenario, site and heater have no problem."},
        {"The fault can be measured",
         "4 of 6 readings differ from the sound house by more than the instrument can hide."},
        {"Are bad habits rated apart?", "emberpath rate JOB lets simulated trainees play it.", true,
         true}};
    v.causes = {"This job", "Gas regulator droops", "Outlet sensor drifts",
                "Flame electrode coated by deposits", "Scale in the heat exchanger"};
    v.pairs = {{},
               {{1, "P3"}},
               {{1, ""}, {1, ""}},
               {{1, ""}, {1, ""}, {2, ""}},
               {{0, ""}, {1, ""}, {2, ""}, {2, ""}}};
    v.loop = sample_loop();
    v.quirks = {"Flow cup: reads 4 % low", "Laundry window stands open"};
    v.status = "Every other cause was simulated too. Save the file, and it is looked at again.";
    return v;
}

}  // namespace emberpath::screens
