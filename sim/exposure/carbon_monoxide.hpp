#pragma once
/// Carbon monoxide: what gathers in a room, and what gathers in the blood of somebody who stands there.
/// A teaching aid, not a medical device: people differ, and the equations hold for a healthy adult.
/// Checked   tests/reference/exposure_reference_test.cpp

namespace emberpath::exposure {

/// How somebody breathes. The standard adult of the Coburn-Forster-Kane equation, in the units in which
/// its sources print the parameters.
struct Breathing {
    double ventilation_ml_per_min = 6000.0;   // alveolar, at rest    [peterson1975], from memory
    double diffusing_ml_per_min_mmhg = 30.0;  // at rest              [peterson1975], from memory
    double blood_ml = 5500.0;                 // [coburn1965]
    double produced_ml_per_min = 0.007;       // by the body itself   [coburn1965]
    double affinity = 218.0;                  // Haldane's ratio M    [coburn1965]
    double capillary_oxygen_mmhg = 100.0;     // [peterson1975], from memory
    double oxygen_capacity = 0.20;            // mL gas per mL blood  [peterson1975], from memory
    double barometer_mmhg = 760.0, vapour_mmhg = 47.0;
};
/// Somebody who carries tools about. Source: light work of the same papers, from memory.
[[nodiscard]] constexpr Breathing light_work() {
    Breathing b;
    b.ventilation_ml_per_min = 15000.0;
    b.diffusing_ml_per_min_mmhg = 45.0;
    return b;
}

inline constexpr double blood_on_arrival =
    0.0075;  // share; a non-smoker [peterson1975], from memory

/// Share of haemoglobin that carries carbon monoxide [-] after breathing air with `co_share` for a time.
///
/// Equation  Vb d[COHb]/dt = Vco + (PIco - [COHb] PcO2 / (M [O2Hb])) / B,  B = 1/DL + (PB - 47)/VA,
///           [O2Hb] = capacity - [COHb]; fourth-order Runge-Kutta, steps of a second or less
/// Source    [coburn1965]
/// Range     start 0 to 0.99, co_share 0 to 0.1, seconds >= 0
[[nodiscard]] double carboxyhaemoglobin_after(double start, double co_share, double seconds,
                                              const Breathing& breathing = {});

/// The same with the oxygen held at capacity: a straight-line equation with a closed solution, good for
/// small shares. Source [coburn1965], linear form.
[[nodiscard]] double linear_carboxyhaemoglobin_after(double start, double co_share, double seconds,
                                                     const Breathing& breathing = {});

/// What the share tends to when the air never changes [-].
[[nodiscard]] double carboxyhaemoglobin_at_last(double co_share, const Breathing& breathing = {});

/// Time in clean air until half has left [s], straight-line form.
[[nodiscard]] double elimination_half_life_s(const Breathing& breathing = {});

/// Rise of the share during a short spell in high concentrations [-].
/// Equation  3.317e-5 ppm^1.036 RMV t [%]      Source [stewart1973]      Range well below saturation
[[nodiscard]] double short_spell_rise(double co_share, double litres_per_min, double seconds);

/// Share after a spell of rest, by regression [-].
/// Equation  log10 % = 0.85753 log10 ppm + 0.62995 log10 min - 2.29519      Source [peterson1970], from memory
[[nodiscard]] double regressed_share(double co_share, double seconds);

/// A room whose air is mixed at once.
struct Room {
    double volume_m3 = 30.0;
    double air_changes_per_s = 0.0;
};
/// Share of a gas in the room after it flows in for a time, the air outside being free of it [-].
/// Equation  V dC/dt = G - n V C, solved for constant G      Source: single-zone mass balance
/// Range     release_m3_per_s >= 0, volume > 0, air changes >= 0 (0: it only gathers)
[[nodiscard]] double share_in_room_after(double start, double release_m3_per_s, const Room& room,
                                         double seconds);

}  // namespace emberpath::exposure
