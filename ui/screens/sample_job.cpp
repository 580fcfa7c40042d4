#include <cmath>

#include "ui/screens/sample.hpp"

namespace emberpath::screens {

namespace {

using enum PointShape;

PointView mark(const char* tag, const char* name, const char* note, PointShape shape, Spot spot) {
    return {.tag = tag, .name = name, .note = note, .shape = shape, .spot = spot};
}
PointView thing(const char* tag, const char* note, Spot spot) {
    return {.tag = tag, .name = tag, .note = note, .shape = part, .spot = spot};
}

std::vector<PointView> heater_points() {
    return {
        mark("P1", "gas pressure at the heater inlet", "gas inlet", pressure, Spot::gas_inlet),
        mark("P2", "manifold pressure", "manifold", pressure, Spot::gas_manifold),
        mark("T1", "inlet pipe and its sensor", "cold in", temperature, Spot::inlet_pipe),
        mark("T2", "outlet pipe and its sensor", "hot out", temperature, Spot::outlet_pipe),
        mark("T3", "pipe leaving the exchanger", "exchanger", temperature, Spot::exchanger_pipe),
        mark("E1", "supply terminals", "supply terminals", electrical, Spot::supply_terminals),
        mark("E2", "flame lead", "flame lead", electrical, Spot::flame_lead),
        mark("A1", "flue gas", "", air, Spot::flue_sample),
        mark("A2", "room air", "", air, Spot::room_air),
        thing("flue terminal", "Flue terminal", Spot::flue_terminal),
        thing("power point", "Power point", Spot::power_point),
        thing("heater", "", Spot::heater),
        thing("gas valve at heater", "", Spot::heater_gas_valve),
        thing("water valve at heater", "", Spot::heater_water_valve),
        thing("heat exchanger fins", "Heat exchanger fins", Spot::exchanger_fins),
        thing("burner window", "Burner, nine bars", Spot::burner),
        thing("igniter", "Igniter", Spot::igniter),
        thing("control board", "Control board", Spot::control_board)};
}

void add_site_points(SiteView& site) {
    site.points = heater_points();
    site.points.push_back(
        mark("P3", "gas pressure at the regulator outlet", "", pressure, Spot::gas_regulator));
    const bool meter = site.gas == GasSource::meter;
    site.points.push_back(thing(meter ? "gas meter" : "cylinder", meter ? "Gas meter" : "Cylinder",
                                Spot::gas_source));
    site.points.push_back(
        thing(meter ? "gas valve at meter" : "gas valve at cylinder", "", Spot::source_valve));
    site.points.push_back(thing("stop valve", "Stop valve", Spot::water_main));
    int index = 0, tag = 4;
    for (const RoomView& room : site.rooms)
        for (const FixtureView& f : room.fixtures) {
            const bool tap = f.kind != FixtureKind::cooktop && f.kind != FixtureKind::oven &&
                             f.kind != FixtureKind::room_heater;
            PointView p{.tag = tap ? "T" + std::to_string(tag++) : f.name,
                        .name = f.name,
                        .shape = tap ? temperature : part,
                        .spot = tap ? Spot::tap : Spot::appliance,
                        .fixture = index++};
            site.points.push_back(p);
        }
}

PointView& point(SiteView& site, std::string_view tag) {
    for (PointView& p : site.points)
        if (p.tag == tag) return p;
    return site.points.front();
}

SiteView sample_site() {
    SiteView site;
    site.meter_figure = "03187";
    site.rooms = {{"Kitchen",
                   {{FixtureKind::cooktop, "cooktop", "on", 1.0, false},
                    {FixtureKind::sink, "kitchen tap", "off"}}},
                  {"Bathroom",
                   {{FixtureKind::basin, "basin tap", "off"},
                    {FixtureKind::shower, "shower", "½ open", 0.5, true}}}};
    add_site_points(site);
    point(site, "P1").tool = "manometer";
    point(site, "P1").balloons = {3, 5, 6};
    point(site, "T4").balloons = {2};
    point(site, "T6").balloons = {4};
    site.heater = {
        .cover_off = true, .flame = FlameView{.lit = true, .height = 0.8}, .fan_turns_per_s = 30.0};
    site.flow = {.cold_moving = true, .hot_moving = true, .gas_moving = true};
    site.seconds = 3.2;
    return site;
}

void close_cover(SiteView& site) {
    site.heater = {.cover_off = false};
    for (PointView& p : site.points)
        p.out_of_reach = p.spot == Spot::gas_manifold || p.spot == Spot::flame_lead ||
                         p.spot == Spot::supply_terminals || p.spot == Spot::exchanger_pipe ||
                         p.spot == Spot::exchanger_fins || p.spot == Spot::igniter ||
                         p.spot == Spot::control_board;
}

RailView sample_rail() {
    RailView rail{.job = "Sample job", .address = "8 Tanager Court", .mode = "coached"};
    rail.cells = {{"gas", "Gas", "Open at the meter", "Open", StateMark::on},
                  {"water", "Water", "Open at the heater", "Open", StateMark::on},
                  {"power", "Power", "On, cover off", "On, open", StateMark::hazard},
                  {"flue", "Flue", "Not checked", "Unknown", StateMark::unknown},
                  {"air", "Room air", "CO 0 ppm", "0 ppm", StateMark::on},
                  {"you", "You", "Glasses, gloves", "Both on", StateMark::on}};
    rail.wait = "30 s";
    rail.clock = "20:41";
    rail.on_site = "coached";
    return rail;
}

std::vector<ToolView> sample_tools() {
    return {{"manometer", ToolIcon::manometer, true, "on P1"},
            {"multimeter", ToolIcon::multimeter},
            {"voltage tester", ToolIcon::voltage_tester},
            {"flue gas analyser", ToolIcon::analyser},
            {"thermometer", ToolIcon::thermometer},
            {"flow cup and watch", ToolIcon::flow_cup},
            {"scale", ToolIcon::scale},
            {"leak test fluid", ToolIcon::leak_fluid}};
}

BenchView sample_bench() {
    InstrumentView in_hand{.name = "manometer", .place = "on P1", .rows = {{"", "1.84", "kPa"}}};
    in_hand.keys = {
        {"Zero", "zero manometer"}, {"Clear", "clear hold"}, {"Take off", "take manometer off"}};
    in_hand.has_scale = true;
    in_hand.scale = {0.0, 4.0, 1.84};
    return {sample_tools(), in_hand};
}

std::vector<ReadingView> sample_readings() {
    return {
        {6, "P1", "1.84 kPa", "full rate, cooktop on", "20:40", "gas pressure at the heater inlet"},
        {5, "P1", "2.31 kPa", "full rate, cooktop off", "16:05",
         "gas pressure at the heater inlet"},
        {4, "T6", "38.4 °C", "shower ½ open, cooktop on", "12:20",
         "water temperature at the shower"},
        {3, "P1", "2.76 kPa", "all burners off", "09:30", "gas pressure at the heater inlet"},
        {2, "T4", "8.9 L/min", "kitchen tap fully open", "06:10", "flow at the kitchen tap"},
        {1, "Panel", "weak flame, 4 times", "heater at rest", "03:30",
         "latest event on the service readout", "latest event"}};
}

std::vector<CauseView> sample_causes() {
    return {{"gas_pipe_restriction", "Gas pipe too small", Belief::held, {5, 6}},
            {"regulator_droop", "Supply regulator droops", Belief::held, {6}},
            {"outlet_sensor_drift", "Outlet sensor drifts", Belief::doubtful, {4}},
            {"flame_electrode_fouled", "Flame electrode fouled", Belief::doubtful, {}},
            {"exchanger_sooted", "Exchanger fins sooted", Belief::doubtful, {}},
            {"wind", "Wind at the flue terminal", Belief::struck, {5}},
            {"demand", "More asked than it can heat", Belief::struck, {2}},
            {"igniter_weak", "Igniter weak", Belief::struck, {1}}};
}

/// A value that settles towards another after a step.
std::vector<TracePoint> steps(std::initializer_list<TracePoint> levels, double settle_min) {
    std::vector<TracePoint> points;
    double value = levels.begin()->value;
    for (double ago = 8.0; ago >= -0.001; ago -= 0.1) {
        double wanted = value;
        for (const TracePoint& l : levels)
            if (ago <= l.minutes_ago) wanted = l.value;
        value += (wanted - value) * std::min(1.0, 0.1 / settle_min);
        points.push_back({std::max(0.0, ago), value});
    }
    return points;
}

RecorderView sample_recorder() {
    RecorderView recorder;
    const auto outlet = steps({{8.0, 18.0}, {7.6, 49.0}, {1.5, 38.2}}, 0.45);
    recorder.lanes = {
        {"Temperature",
         "°C",
         15.0,
         60.0,
         {20.0, 50.0},
         {{"50 set", 'i', {{8.0, 50.0}, {0.0, 50.0}}, true}, {"38.4 T2", 'h', outlet}},
         2.0},
        {"Water flow",
         "L/min",
         0.0,
         12.0,
         {},
         {{"7.9", 'c', steps({{8.0, 0.0}, {7.7, 7.9}}, 0.1)}},
         1.0},
        {"Gas P1",
         "kPa",
         1.0,
         3.2,
         {},
         {{"1.84", 'g', steps({{8.0, 2.76}, {7.6, 2.31}, {1.5, 1.84}}, 0.1)}},
         1.0},
        {"Fan", "rpm", 0.0, 5000.0, {}, {}, 1.0},
        {"Firing rate", "MJ/h", 0.0, 150.0, {}, {}, 1.0}};
    recorder.marks = {{5.1, 5, ""}, {0.6, 6, ""}, {1.5, 0, "cooktop on"}};
    return recorder;
}

SelectionView sample_selection() {
    return {"P1",
            "gas pressure at the heater inlet",
            {{"Read now", "read manometer", "10 s"},
             {"Read highest", "read manometer highest", "10 s"},
             {"Read lowest", "read manometer lowest", "10 s"},
             {"Take manometer off", "take manometer off", "20 s"},
             {"Close test point", "close test point inlet", "20 s", "needs the manometer off"}}};
}

}  // namespace

JobView sample_job() {
    JobView job;
    job.rail = sample_rail();
    job.site = sample_site();
    job.selected = "P1";
    job.selection = sample_selection();
    job.panel = {"HEAT", "50 °C", 1, false};
    job.card = {
        "natural gas",
        "The shower goes lukewarm when somebody cooks. It was fine until the kitchen was done up.",
        true,
        "Shower turns cold in the evening",
        {{"ask about problem", "The shower goes lukewarm when somebody cooks."},
         {"ask about changes", "It was fine until the kitchen was done up."}}};
    job.bench = sample_bench();
    job.readings = sample_readings();
    job.causes = sample_causes();
    job.recorder = sample_recorder();
    job.status_time = "20:40";
    job.status = "Reading 6 recorded: 1.84 kPa at P1, full rate, cooktop on.";
    job.sample = true;
    for (const PointView& p : job.site.points) {
        const bool part = p.shape == PointShape::part;
        job.found.push_back({part ? "" : p.tag, p.name, p.tag, "select", p.tag, ""});
    }
    job.found.insert(job.found.begin(),
                     {"", "Do it: open shower fully", "act", "act", "open shower fully", "5 s"});
    job.notice_title = "That was not safe";
    job.notice = "The inlet test point was opened with the gas on. Better: shut the gas first.";
    return job;
}

JobView sample_arrival() {
    JobView job = sample_job();
    for (ServiceCell& cell : job.rail.cells) {
        cell.mark = StateMark::unknown;
        cell.words = "Not checked";
        cell.short_words = "Unknown";
    }
    job.rail.clock = "00:06";
    job.rail.on_site = "coached";
    close_cover(job.site);
    job.site.flow = {};
    for (PointView& p : job.site.points) {
        p.tool.clear();
        p.balloons.clear();
    }
    for (RoomView& room : job.site.rooms)
        for (FixtureView& f : room.fixtures) {
            f.opening = 0.0;
            f.state = "off";
        }
    job.selected.clear();
    job.selection = {};
    job.bench.in_hand = {};
    for (ToolView& tool : job.bench.tools) {
        tool.in_hand = false;
        tool.busy.clear();
    }
    job.panel = {"WAIT", "50 °C", 0, false};
    job.readings.clear();
    job.record_refusal = "nothing in hand";
    for (CauseView& cause : job.causes) cause = {cause.word, cause.title, Belief::held, {}};
    for (LaneView& lane : job.recorder.lanes) lane.traces.clear();
    job.recorder.marks.clear();
    job.status_time = "00:06";
    job.status = "You are at the door. Ask the customer, look around, or press / and name a thing.";
    return job;
}

JobView sample_cottage() {
    JobView job = sample_job();
    job.rail.address = "Old Quarry Cottage";
    job.site.gas = GasSource::cylinder;
    job.site.outside = "North side";
    job.site.rooms = {
        {"Kitchen",
         {{FixtureKind::cooktop, "cooktop", "off"}, {FixtureKind::sink, "kitchen tap", "off"}}},
        {"Bathroom",
         {{FixtureKind::shower, "shower", "off"},
          {FixtureKind::bath, "bath tap", "fully open", 1.0, true}}}};
    add_site_points(job.site);
    point(job.site, "A1").tool = "flue gas analyser";
    point(job.site, "A1").balloons = {1, 2};
    job.selected = "A1";
    job.selection = {
        "A1",
        "flue gas",
        {{"Read now", "read analyser", "10 s"}, {"Take probe out", "take probe out", "10 s"}}};
    job.bench.in_hand = {
        .name = "flue gas analyser",
        .place = "in the flue",
        .rows = {{"O₂", "7.9", "%"},
                 {"CO₂", "8.6", "%"},
                 {"CO", "41", "ppm"},
                 {"Temp", "148", "°C"}},
        .note = "still moving, 12 s",
        .keys = {
            {"On", "switch on analyser"}, {"Out", "take probe out"}, {"Room", "read room air"}}};
    for (ToolView& tool : job.bench.tools) {
        tool.in_hand = tool.icon == ToolIcon::analyser;
        tool.busy = tool.in_hand ? "in the flue" : "";
    }
    job.record_refusal = "still moving, 12 s";
    return job;
}

}  // namespace emberpath::screens
