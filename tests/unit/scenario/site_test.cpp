// Proves that a site file sets the whole of a house's services, in SI, and that keys which mean nothing on that
// house are refused.

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "sim/scenario/fields.hpp"
#include "tests/unit/scenario/written.hpp"

namespace emberpath::scenario {
namespace {

/// The sound job with further keys of its site.
std::string at_site(std::string_view keys) {
    return with(sound_job, "arrival = \"10 min\"", "arrival = \"10 min\"\n" + std::string(keys));
}

worksite::Job job_with(std::string_view keys) {
    const Loaded loaded = load_text(at_site(keys));
    EXPECT_EQ(problems_of(loaded), "");
    return loaded.job;
}

void expect_refused(std::string_view keys, std::string_view found) {
    const std::string problems = problems_of(load_text(at_site(keys)));
    EXPECT_NE(problems.find(found), std::string::npos) << problems;
}

/// The sound job, its gas and heater those of a cylinder.
std::string on_cylinders(std::string_view keys) {
    const std::string site = with(at_site(keys), "gas = \"natural gas\"\narrival",
                                  "gas = \"propane cylinder\"\narrival");
    return with(site, "gas = \"natural gas\"", "gas = \"propane\"");
}

TEST(SiteFile, LeftToItselfIsADryDayOutdoorsOnOneLevel) {
    const worksite::Site site = job_with("").site;
    EXPECT_DOUBLE_EQ(site.visit_s, 36000.0);
    EXPECT_DOUBLE_EQ(site.damp, 0.5);
    EXPECT_DOUBLE_EQ(site.outdoor_k, site.ambient_k);
    EXPECT_FALSE(site.rain);
    EXPECT_TRUE(site.windows.empty());
    EXPECT_TRUE(site.fans.empty());
    EXPECT_DOUBLE_EQ(site.taps[0].height_m, 0.0);
    EXPECT_FALSE(site.taps[0].tempered);
}

TEST(SiteFile, AHeaterIsSetToTheStepNearestTheHeightOfItsHouse) {
    for (const auto& [height, step_m] :
         {std::pair{"1700 m", 1800.0}, std::pair{"140 m", 0.0}, std::pair{"3000 m", 3000.0},
          std::pair{"1650 m", 1800.0}}) {
        const worksite::Job job = job_with("altitude = \"" + std::string(height) + "\"");
        EXPECT_DOUBLE_EQ(job.settings.altitude_m, step_m) << height;
    }
    EXPECT_DOUBLE_EQ(job_with("altitude = \"1700 m\"").site.altitude_m, 1700.0);
}

TEST(SiteFile, ALossOfTheGasPipeIsThatAtFullHeatInputInThinAirAndForTwoHeatersToo) {
    for (const char* keys : {"", "altitude = \"2400 m\"\n", "companion = true\n"}) {
        const worksite::Job job = job_with(std::string(keys) + "pipe_drop = \"0.2 kPa\"");
        const double heaters = job.healthy.companion_fitted > 0.5 ? 2.0 : 1.0;
        const double full_w =
            heaters * job.settings.full_heat_input_w * std::sqrt(job.healthy.air_density_share);
        const double q = full_w / job.healthy.gross_j_per_m3;
        EXPECT_NEAR(job.healthy.gas_pipe_resistance * q * q, 200.0, 1e-6) << keys;
    }
}

TEST(SiteFile, ACompanionComesWithARegulatorForBothOnEveryGas) {
    const auto twice = [](const plant::PlantParameters& one, const plant::PlantParameters& both) {
        EXPECT_DOUBLE_EQ(both.gas_capacity_m3_per_s, 2.0 * one.gas_capacity_m3_per_s);
        EXPECT_DOUBLE_EQ(both.regulator_droop, 0.5 * one.regulator_droop);
    };
    twice(job_with("").healthy, job_with("companion = true").healthy);
    for (const std::string cylinders : {"", "cylinders = \"pair\"\n"})
        twice(load_text(on_cylinders(cylinders)).job.healthy,
              load_text(on_cylinders(cylinders + "companion = true")).job.healthy);
}

TEST(SiteFile, SetsWeatherTimeOfDayAndWaterOfTheStreet) {
    const worksite::Job job = job_with(
        "outdoor = \"4 °C\"\nvisit = \"19.5 h\"\nrain = true\ndamp = \"80 %\"\n"
        "night_rise = \"250 kPa\"\npressure_limit = \"500 kPa\"\ntempering = \"45 °C\"");
    EXPECT_DOUBLE_EQ(job.site.outdoor_k, 277.15);
    EXPECT_DOUBLE_EQ(job.site.visit_s, 19.5 * 3600.0);
    EXPECT_TRUE(job.site.rain);
    EXPECT_DOUBLE_EQ(job.site.damp, 0.8);
    EXPECT_DOUBLE_EQ(job.healthy.mains_rise_at_night_pa, 250.0e3);
    EXPECT_DOUBLE_EQ(job.healthy.mains_limit_pa, 500.0e3);
    EXPECT_DOUBLE_EQ(job.healthy.tempering_set_k, 318.15);
}

TEST(SiteFile, SetsFlueAndRoom) {
    const worksite::Job job = job_with(
        "flue = \"open flued\"\nflue_height = \"4 m\"\nroom_volume = \"18 m3\"\n"
        "room_ventilation = \"36 m3/h\"");
    EXPECT_DOUBLE_EQ(job.healthy.open_flued, 1.0);
    EXPECT_DOUBLE_EQ(job.healthy.intake_from_room, 1.0);
    EXPECT_DOUBLE_EQ(job.healthy.open_flue_height_m, 4.0);
    EXPECT_DOUBLE_EQ(job.healthy.room_m3, 18.0);
    EXPECT_DOUBLE_EQ(job.healthy.room_ventilation_m3_per_s, 0.01);
    EXPECT_LT(job_with("flue = \"room sealed\"").healthy.wind_exposure, 0.5);
    EXPECT_DOUBLE_EQ(job_with("room_volume = \"18 m3\"").healthy.room_ventilation_m3_per_s,
                     9.0 / 3600.0);
}

TEST(SiteFile, SetsASecondSupplyOfElectricity) {
    EXPECT_DOUBLE_EQ(job_with("second_supply = true").healthy.electrical.second_source, 1.0);
    EXPECT_DOUBLE_EQ(job_with("").healthy.electrical.second_source, 0.0);
}

TEST(SiteFile, SetsAPairOfCylinders) {
    const Loaded loaded =
        load_text(on_cylinders("cylinders = \"pair\"\ncylinder_contents = \"2 kg\"\n"
                               "reserve_contents = \"40 kg\""));
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_DOUBLE_EQ(loaded.job.healthy.reserve_fitted, 1.0);
    EXPECT_DOUBLE_EQ(loaded.job.healthy.cylinder_start_kg, 2.0);
    EXPECT_DOUBLE_EQ(loaded.job.healthy.reserve_start_kg, 40.0);
}

TEST(SiteFile, ListsWindowsAndFansAndTheirEvents) {
    const Loaded loaded = load_text(with(
        sound_job, "[[site.event]]",
        "[[site.window]]\nname = \"laundry window\"\narea = \"0.4 m2\"\n\n"
        "[[site.fan]]\nname = \"rangehood\"\nflow = \"360 m3/h\"\non = true\n\n"
        "[[site.event]]\nat = \"1 min\"\nwindow = \"laundry window\"\nlasts = \"1 min\"\n\n"
        "[[site.event]]\nat = \"1 min\"\nfan = \"rangehood\"\non = false\nlasts = \"2 min\"\n\n"
        "[[site.event]]\nat = \"4 min\"\nrain = true\n\n[[site.event]]"));
    ASSERT_EQ(problems_of(loaded), "");
    const worksite::Site& site = loaded.job.site;
    ASSERT_EQ(site.windows.size(), 1U);
    EXPECT_NEAR(site.windows[0].gain, 0.6 * 0.4 * std::sqrt(2.0 / 1.2), 1e-12);
    ASSERT_EQ(site.fans.size(), 1U);
    EXPECT_DOUBLE_EQ(site.fans[0].flow_m3_per_s, 0.1);
    EXPECT_TRUE(site.fans[0].on);
    using Kind = worksite::HouseholdEvent::Kind;
    ASSERT_EQ(site.events.size(), 7U);
    EXPECT_EQ(site.events[0].kind, Kind::window);
    EXPECT_EQ(site.events[1].kind, Kind::fan);
    EXPECT_DOUBLE_EQ(site.events[1].value, 0.0);
    EXPECT_EQ(site.events[4].kind, Kind::fan);
    EXPECT_DOUBLE_EQ(site.events[4].value, 1.0) << "back to how the household keeps it";
}

TEST(SiteFile, GivesATapUpstairsTheFlowItPromisesThere) {
    const worksite::Job level = job_with("");
    const Loaded loaded = load_text(with(sound_job, "flow = \"9 L/min\"",
                                         "flow = \"9 L/min\"\nheight = \"6 m\"\n"
                                         "tempered = true"));
    ASSERT_EQ(problems_of(loaded), "");
    EXPECT_DOUBLE_EQ(loaded.job.site.taps[0].height_m, 6.0);
    EXPECT_TRUE(loaded.job.site.taps[0].tempered);
    EXPECT_GT(loaded.job.site.taps[0].conductance, level.site.taps[0].conductance);
}

TEST(SiteFile, RefusesWhatMeansNothingOnThatHouse) {
    expect_refused("flue_height = \"3 m\"", "an open flue that is not there");
    expect_refused("cylinders = \"pair\"", "a cylinder at a house on natural gas");
    expect_refused("reserve_contents = \"40 kg\"", "a cylinder at a house on natural gas");
    expect_refused("flue = \"chimney\"", "flue");
    expect_refused("night_rise = \"900 kPa\"", "night_rise");
    expect_refused("damp = 0.5", "without a unit");
    const std::string single = problems_of(load_text(on_cylinders("reserve_contents = \"40 kg\"")));
    EXPECT_NE(single.find("a second cylinder at a house with one"), std::string::npos) << single;
    const std::string sized =
        problems_of(load_text(on_cylinders("cylinders = \"pair\"\ncylinder_size = \"9 kg\"")));
    EXPECT_NE(sized.find("holds 45 kg each"), std::string::npos) << sized;
}

TEST(SiteFile, HasNoMoreTapsThanTheHeaterCanTellApart) {
    std::string taps;
    for (int i = 0; i < 6; ++i)
        taps += "[[site.tap]]\nname = \"tap " + std::to_string(i) + "\"\nflow = \"5 L/min\"\n\n";
    const std::string problems =
        problems_of(load_text(with(sound_job, "[[site.appliance]]", taps + "[[site.appliance]]")));
    EXPECT_NE(problems.find("at most 6 taps"), std::string::npos) << problems;
}

TEST(SiteFile, HasEveryKeyOfTheHouseOnItsPage) {
    const std::ifstream file(std::string(EMBERPATH_SOURCE_DIR) + "/docs/site_conditions.md");
    std::ostringstream page;
    page << file.rdbuf();
    for (const Field& field : fields()) {
        const bool house = field.section == Section::site || field.section == Section::tap ||
                           field.section == Section::window || field.section == Section::fan;
        if (!house) continue;
        EXPECT_NE(page.str().find("`" + std::string(field.name) + "`"), std::string::npos)
            << field.name;
    }
}

}  // namespace
}  // namespace emberpath::scenario
