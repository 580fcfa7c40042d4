#include "sim/exposure/contact.hpp"

#include <array>

#include "sim/math/functions.hpp"

namespace emberpath::exposure {

namespace {

struct Point {
    double celsius, seconds;
};
constexpr std::array points{Point{51.0, 60.0}, Point{56.0, 10.0}, Point{65.0, 1.0}};

}  // namespace

double time_to_contact_burn_s(double metal_k) {
    const double celsius = metal_k - 273.15;
    const std::size_t i = celsius > points[1].celsius ? 1 : 0;
    const Point& a = points[i];
    const Point& b = points[i + 1];
    const double slope = math::log(b.seconds / a.seconds) / (b.celsius - a.celsius);
    return a.seconds * math::exp(slope * (celsius - a.celsius));
}

double contact_burn_share(double metal_k, double seconds) {
    return seconds / time_to_contact_burn_s(metal_k);
}

}  // namespace emberpath::exposure
