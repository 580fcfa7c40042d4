#pragma once
/// Readings that come from the electrical network: in the true house and in every shadow alike.

#include "sim/plant/electrical_network.hpp"
#include "sim/worksite/observation.hpp"

namespace emberpath::worksite {

/// Is the value of this quantity found in the network?
[[nodiscard]] bool is_electrical(Quantity quantity);

/// The error-free value in one lane [V, A, ohm]; resistances end at the range of what measures them.
[[nodiscard]] double electrical_value(Quantity quantity, const HeaterView& heater,
                                      const TickInputs& inputs, const ToolSetup& tools);
/// A voltage that has a name of its own, without asking the network again [V].
[[nodiscard]] double named_volts(Quantity quantity, const HeaterView& heater);
/// What eye and hand make of switchboard, fuse, spark and tap.
[[nodiscard]] std::size_t electrical_category(Quantity quantity, const HeaterView& heater,
                                              const Senses& senses, const TickInputs& inputs);

/// The quantity with a name of its own that this pair of terminals is, or volts_between.
[[nodiscard]] Quantity volts_of(const plant::Pair& pair);
/// The same for a resistance with plug and leads apart, or ohms_between.
[[nodiscard]] Quantity ohms_of(const plant::Pair& pair);
/// And for insulation.
[[nodiscard]] Quantity insulation_of(const plant::Pair& pair);

inline constexpr double floor_path_ohm = 5000.0;  // dry floor with shoes: chosen
/// Current through somebody who stands on such a floor and touches this voltage
/// [A]; the body is the median one of exposure::body_impedance_ohm.
[[nodiscard]] double hand_to_floor_a(double touch_v);
/// The same from hand to hand.
[[nodiscard]] double hand_to_hand_a(double touch_v);

/// How a terminal and a conductor are called in sentences and lines.
[[nodiscard]] std::string_view terminal_name(std::size_t terminal);
[[nodiscard]] std::string_view conductor_name(std::size_t conductor);

}  // namespace emberpath::worksite
