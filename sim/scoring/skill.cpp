#include "sim/scoring/skill.hpp"

#include "sim/math/functions.hpp"

namespace emberpath::scoring {

double known_after(double known, bool right, const Tracing& t) {
    const double if_known = known * (right ? 1.0 - t.slips : t.slips);
    const double if_not = (1.0 - known) * (right ? t.guesses : 1.0 - t.guesses);
    const double then = if_known / (if_known + if_not);
    return then + (1.0 - then) * t.learns;
}

}  // namespace emberpath::scoring
