#pragma once
/// For who follows an attempt's ticks and nothing else.

#include "sim/worksite/attempt.hpp"

namespace emberpath::worksite {

class TickFollower : public Follower {
  public:
    void tools(const ToolSetup&, bool) final {}
    void remedied(faults::Remedy) final {}
    void cylinder_changed() final {}
    void observed(const Observation&) final {}
    void arrived() final {}
};

}  // namespace emberpath::worksite
