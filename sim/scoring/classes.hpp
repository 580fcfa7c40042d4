#pragma once
/// What has to be done: one remedy, or the two remedies of a chosen pair of causes. Every probability that a
/// score uses is that of a class, so nobody loses points for a distinction that no remedy needs.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sim/faults/faults.hpp"

namespace emberpath::scoring {

/// Two causes that are found together often enough to be thought of. Chosen for their reasons and by no
/// job; the weights are invented like all others (docs/scoring.md).
struct ChosenPair {
    faults::Cause first, second;  // the second is there or not: one severity
    double frequency;             // trade weight, as CauseInfo::frequency
    int severities;               // of the first, evenly over its symptomatic range
    std::string_view because;     // why they come together
};
inline constexpr std::array chosen_pairs{
    ChosenPair{faults::Cause::gas_pipe_restriction, faults::Cause::outlet_sensor_open, 0.1, 7,
               "a poor bath is borne for years, until a part ends all hot water"},
    ChosenPair{faults::Cause::exchanger_scaled, faults::Cause::limiter_open, 0.2, 4,
               "scale overheats the tubes until the limiter has opened for good"},
    ChosenPair{faults::Cause::wrong_injectors, faults::Cause::gas_setting_wrong, 0.02, 1,
               "a change of gas that was forgotten whole"},
    ChosenPair{faults::Cause::moisture_in_heater, faults::Cause::earth_missing, 0.05, 5,
               "without an earth nothing trips while damp makes the casing live"},
};

inline constexpr std::size_t class_count = faults::remedy_count + chosen_pairs.size();

/// A remedy is a class by itself.
class Class {
  public:
    constexpr Class(faults::Remedy remedy)  // NOLINT: a remedy stands for its class
        : index_(static_cast<std::size_t>(remedy)) {}
    /// By its place in every list that has one entry per class: remedies in their order, then pairs.
    [[nodiscard]] static constexpr Class at(std::size_t index) {
        Class one(faults::Remedy{});
        one.index_ = index;
        return one;
    }
    [[nodiscard]] static constexpr Class of_pair(std::size_t pair) {
        return at(faults::remedy_count + pair);
    }
    [[nodiscard]] constexpr std::size_t index() const { return index_; }
    [[nodiscard]] constexpr bool is_pair() const { return index_ >= faults::remedy_count; }
    bool operator==(const Class&) const = default;

  private:
    std::size_t index_;
};

/// The class of a house with these faults; nothing where two of them are no chosen pair, or there are more.
/// Two causes of one remedy are one class.
[[nodiscard]] std::optional<Class> class_of(std::span<const faults::Fault> faults);

/// The same; of faults that no class stands for together, that of the first.
[[nodiscard]] Class class_or_first_of(std::span<const faults::Fault> faults);
/// The first of the likeliest. `classes`: one entry per class.
[[nodiscard]] Class likeliest(std::span<const double> classes);

/// Its one remedy, or the pair's two in their order.
[[nodiscard]] std::vector<faults::Remedy> remedies_of(Class one);
/// Does this class need that remedy?
[[nodiscard]] bool needs(Class one, faults::Remedy remedy);
/// Does it need everything that the other one needs? The first of two faults may hide the second.
[[nodiscard]] bool covers(Class all, Class part);
/// Probability that a remedy is needed: of all classes that need it. `classes`: one entry per class.
[[nodiscard]] double needing(std::span<const double> classes, faults::Remedy remedy);
/// "igniter failed"; "heat exchanger scaled and overheat limiter open for good".
[[nodiscard]] std::string class_title(Class one);
/// "replace the igniter"; of a pair both, joined by "and".
[[nodiscard]] std::string remedy_title(Class one);

}  // namespace emberpath::scoring
