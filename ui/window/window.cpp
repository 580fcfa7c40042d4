#include "ui/window/window.hpp"

#include <SFML/Graphics/RenderWindow.hpp>
#include <SFML/Window/Clipboard.hpp>
#include <algorithm>
#include <cmath>

#include "ui/window/presenter.hpp"
#include "ui/window/translate.hpp"

namespace emberpath::window {

namespace {

class SystemClipboard final : public kit::Clipboard {
  public:
    [[nodiscard]] std::string get() const override {
        const auto bytes = sf::Clipboard::getString().toUtf8();
        return {bytes.begin(), bytes.end()};
    }
    void set(std::string_view utf8) override {
        sf::Clipboard::setString(sf::String::fromUtf8(utf8.begin(), utf8.end()));
    }
};

sf::String to_sf(const std::string& utf8) {
    return sf::String::fromUtf8(utf8.begin(), utf8.end());
}

}  // namespace

struct Window::Impl {
    sf::RenderWindow window;
    Presenter presenter;
    Translator translator;
    SystemClipboard clipboard;

    Impl(const std::string& title, kit::Size px, const kit::Typeface& typeface)
        : window(sf::VideoMode(static_cast<unsigned>(px.w), static_cast<unsigned>(px.h)),
                 to_sf(title)),
          presenter(typeface) {}
};

Window::Window(const std::string& title, kit::Size pixels, const kit::Typeface& typeface)
    : impl_(std::make_unique<Impl>(title, pixels, typeface)) {
    impl_->window.setKeyRepeatEnabled(true);
    // In the middle of the desktop: where no window manager puts it elsewhere, it may not hang over an edge.
    const kit::Size all = desktop();
    impl_->window.setPosition({static_cast<int>(std::max(0.0, (all.w - pixels.w) / 2.0)),
                               static_cast<int>(std::max(0.0, (all.h - pixels.h) / 2.0))});
}

Window::~Window() = default;

bool Window::is_open() const {
    return impl_->window.isOpen();
}
void Window::close() {
    impl_->window.close();
}
void Window::set_title(const std::string& utf8) {
    impl_->window.setTitle(to_sf(utf8));
}
kit::Clipboard& Window::clipboard() {
    return impl_->clipboard;
}
void Window::repeat_keys(bool on) {
    impl_->window.setKeyRepeatEnabled(on);
}

kit::Size Window::pixels() const {
    const auto size = impl_->window.getSize();
    return {static_cast<double>(size.x), static_cast<double>(size.y)};
}

std::vector<kit::Event> Window::events(double scale) {
    std::vector<kit::Event> found;
    sf::Event event;
    while (impl_->window.pollEvent(event))
        if (auto ours = impl_->translator.translate(event, scale)) found.push_back(*ours);
    return found;
}

void Window::show(const kit::Frame& frame, const View& view) {
    impl_->presenter.present(impl_->window, frame, {view.theme, view.scale});
    impl_->window.display();
}

bool Window::save_picture(const std::string& file) const {
    sf::Texture texture;
    const auto size = impl_->window.getSize();
    if (!texture.create(size.x, size.y)) return false;
    texture.update(impl_->window);
    return texture.copyToImage().saveToFile(file);
}

kit::Size Window::desktop() {
    const sf::VideoMode mode = sf::VideoMode::getDesktopMode();
    return {static_cast<double>(mode.width), static_cast<double>(mode.height)};
}

kit::Size first_size(kit::Size desktop, double scale) {
    return {std::min(1280.0 * scale, desktop.w), std::min(800.0 * scale, desktop.h)};
}

double suggested_scale(kit::Size desktop) {
    const double room = std::min(desktop.w / 1920.0, desktop.h / 1080.0);
    return std::clamp(std::floor(room * 4.0) / 4.0, 1.0, 2.0);
}

}  // namespace emberpath::window
