#include "sim/scoring/tape.hpp"

#include "sim/worksite/outlets.hpp"

namespace emberpath::scoring {

std::size_t Tape::arrival_event() const {
    for (std::size_t i = 0; i < events.size(); ++i)
        if (events[i].kind == Kind::arrival) return i + 1;
    return events.size();
}

void Recorder::tick(const worksite::TickInputs& inputs) {
    const bool drawing = worksite::hot_water_is_drawn(inputs.surroundings);
    if (drawing && !drawing_) ++cycle_;
    drawing_ = drawing;
    tape_.events.push_back({Tape::Kind::tick, tape_.ticks.size()});
    tape_.ticks.push_back(inputs);
}

void Recorder::tools(const worksite::ToolSetup& setup, bool hold_cleared) {
    tape_.events.push_back({Tape::Kind::tools, tape_.tools.size()});
    tape_.tools.push_back({setup, hold_cleared});
}

void Recorder::remedied(faults::Remedy remedy) {
    tape_.events.push_back({Tape::Kind::remedy, static_cast<std::size_t>(remedy)});
}

void Recorder::cylinder_changed() {
    tape_.events.push_back({Tape::Kind::cylinder, 0});
}

void Recorder::altered(const worksite::Alterations& alterations) {
    tape_.events.push_back({Tape::Kind::alteration, tape_.alterations.size()});
    tape_.alterations.push_back(alterations);
}

void Recorder::observed(const worksite::Observation& observation) {
    tape_.events.push_back({Tape::Kind::observation, tape_.observations.size()});
    tape_.observations.push_back(observation);
    tape_.cycles.push_back(cycle_);
}

void Recorder::arrived() {
    tape_.events.push_back({Tape::Kind::arrival, 0});
}

void Recorder::mark() {
    tape_.event_of_mark.push_back(tape_.events.size());
    tape_.events.push_back({Tape::Kind::mark, tape_.marks++});
    tape_.marked.push_back(tape_.observations.size());
}

}  // namespace emberpath::scoring
