# Writes build_mark.cpp: a hash over the simulation's sources, so that a record can say which build made it.
# cmake -DROOT=... -DOUT=... -P build_mark.cmake; the file is left alone while nothing has changed.
file(GLOB_RECURSE sources RELATIVE ${ROOT} ${ROOT}/sim/*.cpp ${ROOT}/sim/*.hpp)
list(SORT sources)
foreach(source IN LISTS sources)
    file(SHA256 ${ROOT}/${source} hash)
    string(APPEND all "${source} ${hash}\n")
endforeach()
string(SHA256 mark "${all}")
string(SUBSTRING ${mark} 0 16 mark)
file(CONFIGURE OUTPUT ${OUT} @ONLY CONTENT [[#include "sim/records/version.hpp"

std::string_view emberpath::records::build_mark() {
    return "@mark@";
}
]])
