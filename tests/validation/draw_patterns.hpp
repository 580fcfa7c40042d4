#pragma once
/// Days of hot water use as standards lay them down. All numbers below are recalled, not read again; the totals
/// agree with those the standards name (10, 38, 55 and 84 US gallons; 5.845 kWh).

#include <span>

namespace emberpath::validation {

/// 10 CFR 430 Subpart B Appendix E (2014 on), simulated use test: a volume at a flow.
struct Draw {
    int hour, minute;
    double gallons, gallons_per_min;
};

// clang-format off
inline constexpr Draw very_small_use[] = {
    {0,  0, 2.0, 1.0}, {1,  0, 1.0, 1.0}, {1,  5, 0.5, 1.0}, {1, 10, 0.5, 1.0}, {1, 15, 0.5, 1.0},
    {8,  0, 1.0, 1.0}, {8, 15, 2.0, 1.0}, {9,  0, 1.5, 1.0}, {9, 15, 1.0, 1.0}};
inline constexpr Draw low_use[] = {
    { 0,  0, 15.0, 1.7}, { 0, 30, 2.0, 1.0}, { 1,  0, 1.0, 1.0}, {10, 30, 6.0, 1.7}, {11, 30, 4.0, 1.7},
    {12,  0,  1.0, 1.0}, {12, 45, 1.0, 1.0}, {12, 50, 1.0, 1.0}, {16, 15, 2.0, 1.0}, {16, 45, 2.0, 1.7},
    {17,  0,  3.0, 1.7}};
inline constexpr Draw medium_use[] = {
    { 0,  0, 15.0, 1.7}, { 0, 30, 2.0, 1.0}, { 1, 40, 9.0, 1.7}, {10, 30, 9.0, 1.7}, {11, 30, 5.0, 1.7},
    {12,  0,  1.0, 1.0}, {12, 45, 1.0, 1.0}, {12, 50, 1.0, 1.0}, {16,  0, 1.0, 1.0}, {16, 15, 2.0, 1.0},
    {16, 45,  2.0, 1.7}, {17,  0, 7.0, 1.7}};
inline constexpr Draw high_use[] = {
    { 0,  0, 27.0, 3.0}, { 0, 30, 2.0, 1.0}, { 0, 40, 1.0, 1.0}, { 1, 40,  9.0, 1.7}, {10, 30, 15.0, 3.0},
    {11, 30,  5.0, 1.7}, {12,  0, 1.0, 1.0}, {12, 45, 1.0, 1.0}, {12, 50,  1.0, 1.0}, {16,  0,  2.0, 1.0},
    {16, 15,  2.0, 1.0}, {16, 30, 2.0, 1.7}, {16, 45, 2.0, 1.7}, {17,  0, 14.0, 3.0}};
/// The test before 2014: six equal draws an hour apart.
inline constexpr Draw six_large_draws[] = {
    {0, 0, 10.7, 3.0}, {1, 0, 10.7, 3.0}, {2, 0, 10.7, 3.0}, {3, 0, 10.7, 3.0}, {4, 0, 10.7, 3.0},
    {5, 0, 10.7, 3.0}};

/// Commission Regulation (EU) 814/2013, Annex III table 1, load profile M: useful energy at a flow, counted from
/// a least temperature on; some draws must reach a peak temperature (0: none).
struct Tapping {
    int hour, minute;
    double useful_kwh, litres_per_min, from_c, peak_c;
};
inline constexpr Tapping profile_m[] = {
    { 7,  0, 0.105, 3, 25,  0}, { 7,  5, 1.400, 6, 40,  0}, { 7, 30, 0.105, 3, 25,  0},
    { 8,  1, 0.105, 3, 25,  0}, { 8, 15, 0.105, 3, 25,  0}, { 8, 30, 0.105, 3, 25,  0},
    { 8, 45, 0.105, 3, 25,  0}, { 9,  0, 0.105, 3, 25,  0}, { 9, 30, 0.105, 3, 25,  0},
    {10, 30, 0.105, 3, 10, 40}, {11, 30, 0.105, 3, 25,  0}, {11, 45, 0.105, 3, 25,  0},
    {12, 45, 0.315, 4, 10, 55}, {14, 30, 0.105, 3, 25,  0}, {15, 30, 0.105, 3, 25,  0},
    {16, 30, 0.105, 3, 25,  0}, {18,  0, 0.105, 3, 25,  0}, {18, 15, 0.105, 3, 40,  0},
    {18, 30, 0.105, 3, 40,  0}, {19,  0, 0.105, 3, 25,  0}, {20, 30, 0.735, 4, 10, 55},
    {21, 15, 0.105, 3, 25,  0}, {21, 30, 1.400, 6, 40,  0}};
// clang-format on

}  // namespace emberpath::validation
