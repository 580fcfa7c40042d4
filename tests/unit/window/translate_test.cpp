// Proves that keys, characters and pointers of the window system arrive as the kit's plain events.

#include "ui/window/translate.hpp"

#include <gtest/gtest.h>

#include "ui/window/window.hpp"

namespace emberpath::window {
namespace {

sf::Event key(sf::Keyboard::Key code, bool control = false) {
    sf::Event e{};
    e.type = sf::Event::KeyPressed;
    e.key.code = code;
    e.key.control = control;
    return e;
}
sf::Event typed(sf::Uint32 code) {
    sf::Event e{};
    e.type = sf::Event::TextEntered;
    e.text.unicode = code;
    return e;
}
sf::Event button(sf::Event::EventType type, int x, int y) {
    sf::Event e{};
    e.type = type;
    e.mouseButton = {sf::Mouse::Left, x, y};
    return e;
}

TEST(Translating, KeysKeepTheirNamesAndModifiers) {
    Translator t;
    const auto event = t.translate(key(sf::Keyboard::Enter, true), 1.0);
    ASSERT_TRUE(event);
    const auto& press = std::get<kit::KeyPress>(*event);
    EXPECT_EQ(press.key, kit::Key::enter);
    EXPECT_TRUE(press.modifiers.control);
    EXPECT_FALSE(press.repeated);
    EXPECT_EQ(std::get<kit::KeyPress>(*t.translate(key(sf::Keyboard::Z), 1.0)).key, kit::Key::z);
    EXPECT_EQ(std::get<kit::KeyPress>(*t.translate(key(sf::Keyboard::F6), 1.0)).key, kit::Key::f6);
}

TEST(Translating, AHeldKeyIsARepeatUntilItIsReleased) {
    Translator t;
    (void)t.translate(key(sf::Keyboard::R), 1.0);
    EXPECT_FALSE(std::get<kit::Character>(*t.translate(typed('r'), 1.0)).repeated);
    EXPECT_TRUE(std::get<kit::KeyPress>(*t.translate(key(sf::Keyboard::R), 1.0)).repeated);
    EXPECT_TRUE(std::get<kit::Character>(*t.translate(typed('r'), 1.0)).repeated);
    sf::Event up = key(sf::Keyboard::R);
    up.type = sf::Event::KeyReleased;
    EXPECT_FALSE(t.translate(up, 1.0));
    EXPECT_FALSE(std::get<kit::KeyPress>(*t.translate(key(sf::Keyboard::R), 1.0)).repeated);
}

TEST(Translating, ACharacterWithoutAKnownKeyStillArrives) {
    Translator t;
    EXPECT_FALSE(t.translate(key(sf::Keyboard::Unknown), 1.0));
    EXPECT_EQ(std::get<kit::Character>(*t.translate(typed(0xBD), 1.0)).code, U'½');
}

TEST(Translating, ControlCharactersAreNotText) {
    Translator t;
    for (const sf::Uint32 code : {8U, 9U, 13U, 27U, 127U})
        EXPECT_FALSE(t.translate(typed(code), 1.0));
}

TEST(Translating, WithControlACharacterIsNoText) {
    Translator t;
    ASSERT_TRUE(t.translate(key(sf::Keyboard::Hyphen, true), 1.0));
    EXPECT_FALSE(t.translate(typed('-'), 1.0)) << "else it would also mean minus alone";
    (void)t.translate(key(sf::Keyboard::Hyphen), 1.0);
    EXPECT_TRUE(t.translate(typed('-'), 1.0));
}

TEST(Translating, ControlAndAPlusOfItsOwnAreTheKeyThatHasNoName) {
    Translator t;
    EXPECT_FALSE(t.translate(key(sf::Keyboard::Unknown, true), 1.0));
    const auto plus = t.translate(typed('+'), 1.0);
    ASSERT_TRUE(plus);
    EXPECT_EQ(std::get<kit::KeyPress>(*plus).key, kit::Key::plus);
    EXPECT_TRUE(std::get<kit::KeyPress>(*plus).modifiers.control);
    EXPECT_FALSE(t.translate(typed('*'), 1.0));
}

TEST(Translating, TheMiddleButtonIsKnown) {
    Translator t;
    sf::Event e = button(sf::Event::MouseButtonPressed, 10, 10);
    e.mouseButton.button = sf::Mouse::Middle;
    EXPECT_TRUE(std::get<kit::PointerPress>(*t.translate(e, 1.0)).middle);
    e.type = sf::Event::MouseButtonReleased;
    EXPECT_TRUE(std::get<kit::PointerRelease>(*t.translate(e, 1.0)).middle);
}

TEST(Translating, PlacesAreDividedByTheScale) {
    Translator t;
    const auto event = t.translate(button(sf::Event::MouseButtonPressed, 300, 150), 1.5);
    EXPECT_EQ(std::get<kit::PointerPress>(*event).at, (kit::Point{200.0, 100.0}));
}

TEST(FirstWindow, HasTheSameRoomAtEveryScale) {
    EXPECT_EQ(first_size({1920, 1400}, 1.0), (kit::Size{1280.0, 800.0}));
    EXPECT_EQ(first_size({3840, 2160}, 2.0), (kit::Size{2560.0, 1600.0}));
    EXPECT_EQ(first_size({2560, 1440}, 1.25), (kit::Size{1600.0, 1000.0}));
    EXPECT_EQ(first_size({1920, 1080}, 2.0), (kit::Size{1920.0, 1080.0}))
        << "never over the desktop";
    EXPECT_EQ(first_size({1024, 600}, 1.0), (kit::Size{1024.0, 600.0}));
}

TEST(FirstScale, FollowsTheDesktopInSteps) {
    EXPECT_DOUBLE_EQ(suggested_scale({1366, 768}), 1.0);
    EXPECT_DOUBLE_EQ(suggested_scale({1920, 1080}), 1.0);
    EXPECT_DOUBLE_EQ(suggested_scale({2560, 1440}), 1.25);
    EXPECT_DOUBLE_EQ(suggested_scale({3840, 2160}), 2.0);
    EXPECT_DOUBLE_EQ(suggested_scale({7680, 4320}), 2.0);
}

}  // namespace
}  // namespace emberpath::window
