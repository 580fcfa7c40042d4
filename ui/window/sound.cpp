#include "ui/window/sound.hpp"

#include <SFML/Audio/SoundStream.hpp>
#include <SFML/System/Err.hpp>
#include <array>
#include <mutex>

namespace emberpath::window {

namespace {

class Stream final : public sf::SoundStream {
  public:
    Stream() { initialize(1, kit::Synth::rate_hz); }
    ~Stream() override { stop(); }
    void hear(const kit::SoundScene& scene) {
        const std::lock_guard lock(mutex_);
        synth_.hear(scene);
    }

  private:
    bool onGetData(Chunk& data) override {
        const std::lock_guard lock(mutex_);
        synth_.fill(samples_);
        data.samples = samples_.data();
        data.sampleCount = samples_.size();
        return true;
    }
    void onSeek(sf::Time) override {}

    std::mutex mutex_;
    kit::Synth synth_;
    std::array<std::int16_t, kit::Synth::rate_hz / 20> samples_{};
};

}  // namespace

struct Sound::Impl {
    std::unique_ptr<Stream> stream;
};

Sound::Sound() : impl_(std::make_unique<Impl>()) {}
Sound::~Sound() = default;

void Sound::hear(const kit::SoundScene& scene) {
    if (!impl_->stream) {
        if (scene == kit::SoundScene{}) return;
        sf::err().rdbuf(nullptr);  // no device, now or later: no complaint
        impl_->stream = std::make_unique<Stream>();
        impl_->stream->play();
    }
    impl_->stream->hear(scene);
}

}  // namespace emberpath::window
