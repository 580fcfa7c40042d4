#include "sim/exposure/shock.hpp"

#include <algorithm>

namespace emberpath::exposure {
namespace {

struct Row {
    double at_100_v, at_225_v;  // ohm
};
constexpr Row few{990.0, 775.0}, half{1725.0, 1225.0}, most{3125.0, 1900.0};

Row row_of(double share) {
    if (share < 0.275) return few;
    return share < 0.725 ? half : most;
}

}  // namespace

double body_impedance_ohm(double touch_v, double share) {
    const Row row = row_of(share);
    const double along = std::clamp((touch_v - 100.0) / 125.0, 0.0, 1.0);
    return row.at_100_v + along * (row.at_225_v - row.at_100_v);
}

double touch_current_a(double touch_v, double body_ohm, double path_ohm) {
    return touch_v / (body_ohm + path_ohm);
}

Effect effect_of(double current_a) {
    if (current_a < felt_a) return Effect::nothing_felt;
    if (current_a < holds_a) return Effect::felt;
    return current_a < stops_a ? Effect::cannot_let_go : Effect::heart_may_stop;
}

}  // namespace emberpath::exposure
