// One heater, packs in baseline instructions, and the question whether wide ones may run here.
#include "sim/worksite/heater_impl.hpp"

EMBERPATH_INSTANTIATE_HEATER(double)
using BaselinePack = emberpath::math::Pack<8, emberpath::math::Baseline>;
EMBERPATH_INSTANTIATE_HEATER(BaselinePack)

namespace emberpath::worksite {

bool wide_is_supported() {
#if defined(__x86_64__)
    return __builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma") &&
           __builtin_cpu_supports("bmi") && __builtin_cpu_supports("bmi2");
#else
    return true;  // elsewhere both kinds are compiled for the same processor
#endif
}

bool widest_is_supported() {
#if defined(__x86_64__)
    return wide_is_supported() && __builtin_cpu_supports("avx512f") &&
           __builtin_cpu_supports("avx512bw") && __builtin_cpu_supports("avx512cd") &&
           __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512vl");
#else
    return true;
#endif
}

}  // namespace emberpath::worksite
