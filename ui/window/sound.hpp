#pragma once
/// Plays what is to be heard. A machine without a sound device stays silent and says nothing about it:
/// every sound is also in the words of the status line.

#include <memory>

#include "ui/kit/synth.hpp"

namespace emberpath::window {

class Sound {
  public:
    Sound();
    ~Sound();
    Sound(const Sound&) = delete;
    Sound& operator=(const Sound&) = delete;

    /// Begins with the first thing to hear; silence before that opens no device.
    void hear(const kit::SoundScene& scene);

  private:
    struct Impl;
    std::unique_ptr<Impl> impl_;
};

}  // namespace emberpath::window
