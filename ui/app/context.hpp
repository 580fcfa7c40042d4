#pragma once
/// What every command needs: streams, places, whether somebody is looking.

#include <iosfwd>
#include <stdexcept>
#include <string>

#include "ui/app/places.hpp"

namespace emberpath::app {

/// Exit status of the program.
enum class Status { done = 0, not_so = 1, bad_input = 2, fault = 3 };

struct Context {
    std::istream& in;
    std::ostream& out;  // results
    std::ostream& err;  // talk
    Places places;
    bool in_is_terminal = false;
    bool err_is_terminal = false;
    bool may_open_window = false;  // the program itself may; tests may not
};

/// What a user gave cannot be used: the text says what, where and what would be right.
class BadInput : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

}  // namespace emberpath::app
