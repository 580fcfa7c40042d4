#include <unistd.h>

#include <iostream>

#include "ui/app/run.hpp"

int main(int argc, char** argv) {
    emberpath::app::Context context{std::cin,
                                    std::cout,
                                    std::cerr,
                                    emberpath::app::find_places(),
                                    ::isatty(STDIN_FILENO) != 0 && ::isatty(STDOUT_FILENO) != 0,
                                    ::isatty(STDERR_FILENO) != 0,
                                    true};
    return emberpath::app::run({argv + 1, argv + argc}, context);
}
