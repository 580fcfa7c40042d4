#pragma once
/// Sounds of a heater as samples: the fan's pitch, the igniter's clicks, the burner's roar, the personal
/// alarm. Made from numbers, no recordings. The timbres are chosen to be told apart, not measured.

#include <cstddef>
#include <cstdint>
#include <span>

namespace emberpath::kit {

/// What can be heard at one moment.
struct SoundScene {
    double fan_rev_per_s = 0.0;  // 0: silent
    bool spark = false;
    double flame_share = 0.0;  // of the burner area, 0 to 1
    bool alarm = false;
    bool operator==(const SoundScene&) const = default;
};

class Synth {
  public:
    static constexpr unsigned rate_hz = 22050;
    static constexpr double blades = 9.0;  // tone of the fan: turns a second times blades [Hz]

    void hear(const SoundScene& scene) { wanted_ = scene; }
    /// The next samples, one channel; loudness slides, so that nothing clicks that should not.
    void fill(std::span<std::int16_t> samples);

  private:
    [[nodiscard]] double next();
    [[nodiscard]] double noise();

    SoundScene wanted_;
    double fan_hz_ = 0.0, fan_loud_ = 0.0, roar_loud_ = 0.0, alarm_loud_ = 0.0;
    double fan_phase_ = 0.0, alarm_phase_ = 0.0, roar_ = 0.0;
    std::uint64_t sample_ = 0;
    std::uint32_t noise_ = 0x9e3779b9U;
};

}  // namespace emberpath::kit
