// Proves that a sound scenario fills the job with what it says, in SI, and that files build on files.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/unit/scenario/written.hpp"

namespace emberpath::scenario {
namespace {

using worksite::HouseholdEvent;

/// Flow through the sound heater with its water valve wide open, from the losses of the network.
double free_flow_m3_per_s(double street_pa, double tap_conductance) {
    const plant::PlantParameters p = plant::natural_gas_parameters();
    double losses =
        p.water_supply_resistance + plant::water_inlet_resistance(p) + p.water_outlet_resistance;
    for (const double g : {p.water_valve_gain, p.exchanger_conductance, tap_conductance})
        losses += 1.0 / (g * g);
    return std::sqrt(street_pa / losses);
}

TEST(Loader, ASoundJobHasNoProblems) {
    const Loaded loaded = load_text(sound_job);
    EXPECT_EQ(problems_of(loaded), "");
    EXPECT_EQ(loaded.job.name, "job");
    EXPECT_EQ(loaded.job.title, "Job 9: 1 Sample Street");
    EXPECT_DOUBLE_EQ(loaded.job.panel.set_point_k, 273.15 + 48.0);
    EXPECT_DOUBLE_EQ(loaded.job.site.arrival_s, 600.0);
    EXPECT_EQ(loaded.job.customer.complaint, worksite::Complaint::drops_out_now_and_then);
    ASSERT_EQ(loaded.job.faults.size(), 1U);
    EXPECT_EQ(loaded.job.faults[0].cause, faults::Cause::electrode_fouled);
    EXPECT_DOUBLE_EQ(loaded.job.faults[0].severity, 0.9);
    EXPECT_EQ(loaded.job.intended, faults::info(faults::Cause::electrode_fouled).remedy);
}

TEST(Loader, KeysLeftOutTakeTheirDefaults) {
    const worksite::Site site = load_text(sound_job).job.site;
    EXPECT_DOUBLE_EQ(site.mains_water_pa, 400.0e3);
    EXPECT_DOUBLE_EQ(site.inlet_water_k, 287.15);
    EXPECT_DOUBLE_EQ(site.ambient_k, 288.15);
    EXPECT_DOUBLE_EQ(site.wind_pa, 0.0);
    EXPECT_DOUBLE_EQ(site.gust_period_s, 8.0);
}

TEST(Loader, ReadsTheTimeAllowedOnSite) {
    EXPECT_DOUBLE_EQ(load_text(sound_job).job.time_allowed_s, 0.0) << "as long as it takes";
    const std::string limited = "time_allowed = \"90 min\"\n" + std::string(sound_job);
    EXPECT_DOUBLE_EQ(load_text(limited).job.time_allowed_s, 5400.0);
    EXPECT_NE(problems_of(load_text("time_allowed = \"5 min\"\n" + std::string(sound_job))), "");
}

TEST(Loader, TheGenericHeaterIsThePlantsOwn) {
    const worksite::Job job = load_text(sound_job).job;
    const plant::PlantParameters generic = plant::natural_gas_parameters();
    for (std::size_t at = 0; at < plant::parameter_count; ++at)
        EXPECT_DOUBLE_EQ(plant::flat(job.healthy)[at], plant::flat(generic)[at]) << at;
    const controller::Settings settings;
    EXPECT_DOUBLE_EQ(job.settings.full_heat_input_w, settings.full_heat_input_w);
    EXPECT_DOUBLE_EQ(job.settings.full_manifold_pa, settings.full_manifold_pa);
    EXPECT_DOUBLE_EQ(job.settings.fan_full_rev_per_s, settings.fan_full_rev_per_s);
    EXPECT_DOUBLE_EQ(job.settings.minimum_set_k, settings.minimum_set_k);
    EXPECT_DOUBLE_EQ(job.settings.maximum_set_k, settings.maximum_set_k);
}

TEST(Loader, TapGivesTheFlowItPromisesAt400KPa) {
    const worksite::Job job = load_text(sound_job).job;
    ASSERT_EQ(job.site.taps.size(), 1U);
    EXPECT_NEAR(free_flow_m3_per_s(400.0e3, job.site.taps[0].conductance) * 6e4, 9.0, 1e-9);
}

TEST(Loader, ApplianceBurnsItsHeatInputOfTheGasOfTheHouse) {
    const worksite::Job job = load_text(sound_job).job;
    ASSERT_EQ(job.site.appliances.size(), 1U);
    EXPECT_DOUBLE_EQ(job.site.appliances[0].gas_m3_per_s * job.healthy.gross_j_per_m3, 10000.0);
}

TEST(Loader, PipeDropIsThatOfTheFullHeatInput) {
    const worksite::Job job =
        load_text(with(sound_job, "arrival", "pipe_drop = \"0.2 kPa\"\narrival")).job;
    const double q = job.settings.full_heat_input_w / job.healthy.gross_j_per_m3;
    EXPECT_DOUBLE_EQ(job.healthy.gas_pipe_resistance * q * q, 200.0);
}

TEST(Loader, RatedHeatInputAndBurnerPressureFixTheInjectors) {
    const worksite::Job job =
        load_text(with(sound_job, "[heater]",
                       "[heater]\nheat_input = \"100 MJ/h\"\nburner_pressure = \"1.2 kPa\"\n"
                       "bank_shares = [\"20 %\", \"30 %\", \"50 %\"]"))
            .job;
    const plant::PlantParameters& p = job.healthy;
    const double area = p.injector_m2[0] + p.injector_m2[1] + p.injector_m2[2];
    const double gas = area * std::sqrt(2.0 * p.full_manifold_pa / p.gas_kg_per_m3);
    // The generic areas are rounded to four figures, so the rated input returns to three.
    EXPECT_NEAR(gas * p.gross_j_per_m3 / (100.0e6 / 3600.0), 1.0, 1e-3);
    EXPECT_DOUBLE_EQ(p.full_manifold_pa, 1200.0);
    EXPECT_DOUBLE_EQ(job.settings.full_manifold_pa, 1200.0);
    EXPECT_NEAR(p.injector_m2[2] / area, 0.5, 1e-12);
}

TEST(Loader, EventsThatLastEndByThemselvesAndComeInOrder) {
    const Loaded loaded =
        load_text(with(sound_job, "[[site.event]]",
                       "[[site.event]]\nat = \"4 min\"\nappliance = \"cooktop\"\n\n"
                       "[[site.event]]\nat = \"5 min\"\ntap = \"kitchen tap\"\n"
                       "opening = \"40 %\"\n\n[[site.event]]"));
    EXPECT_EQ(problems_of(loaded), "");
    const auto& events = loaded.job.site.events;
    ASSERT_EQ(events.size(), 4U);
    EXPECT_DOUBLE_EQ(events[0].at_s, 120.0);
    EXPECT_DOUBLE_EQ(events[0].value, 1.0);
    EXPECT_EQ(events[1].kind, HouseholdEvent::Kind::appliance);
    EXPECT_DOUBLE_EQ(events[2].at_s, 300.0);
    EXPECT_DOUBLE_EQ(events[2].value, 0.0);  // the end of the first draw comes before the next
    EXPECT_DOUBLE_EQ(events[3].value, 0.4);
}

TEST(Loader, WindThatLastsReturnsToTheSteadyWind) {
    const Loaded loaded =
        load_text(with(with(sound_job, "arrival", "wind = \"4 Pa\"\narrival"),
                       "tap = \"kitchen tap\"\nlasts", "wind = \"20 Pa\"\nlasts"));
    ASSERT_EQ(loaded.job.site.events.size(), 2U);
    EXPECT_DOUBLE_EQ(loaded.job.site.events[0].value, 20.0);
    EXPECT_DOUBLE_EQ(loaded.job.site.events[1].value, 4.0);
}

TEST(Loader, SignedCausesTakeNegativeSeverities) {
    const Loaded loaded = load_text(with(with(sound_job, "electrode_fouled", "outlet_sensor_drift"),
                                         "severity = 0.9", "severity = -0.5"));
    EXPECT_EQ(problems_of(loaded), "");
    EXPECT_DOUBLE_EQ(loaded.job.faults.at(0).severity, -0.5);
}

constexpr std::string_view job_on_files = R"(title = "Job 9: 1 Sample Street"
call_out = "Hot water comes and goes"
heater = "../heater.toml"

[site]
builds_on = "../house.toml"
inlet_water = "6 °C"

[customer]
words = "It runs hot, then cold."
complaint = "drops out now and then"

[[fault]]
cause = "wind_gust"
severity = 0.8
)";
constexpr std::string_view house = R"(builds_on = "plain.toml"
name = "1 Sample Street"
inlet_water = "12 °C"
mains_water_pressure = "350 kPa"
)";
constexpr std::string_view plain = R"(name = "a plain house"
gas = "natural gas"
ambient = "9 °C"
mains_water_pressure = "500 kPa"
arrival = "10 min"

[[tap]]
name = "shower"
flow = "10 L/min"
)";

class FilesOnFiles : public testing::Test {
  protected:
    void SetUp() override {
        folder.write("heater.toml", "gas = \"natural gas\"\n");
        folder.write("house.toml", house);
        folder.write("plain.toml", plain);
    }
    Loaded load_job() { return load(folder.write("jobs/job.toml", job_on_files)); }
    Folder folder;
};

TEST_F(FilesOnFiles, TheUppermostKeyHolds) {
    const Loaded loaded = load_job();
    EXPECT_EQ(problems_of(loaded), "");
    EXPECT_DOUBLE_EQ(loaded.job.site.inlet_water_k, 279.15);  // the job's own
    EXPECT_DOUBLE_EQ(loaded.job.site.mains_water_pa, 350.0e3);
    EXPECT_DOUBLE_EQ(loaded.job.site.ambient_k, 282.15);  // two files down
    EXPECT_EQ(loaded.job.site.name, "1 Sample Street");
    EXPECT_EQ(loaded.job.site.taps.size(), 1U);
}

TEST_F(FilesOnFiles, AListGivenAboveReplacesTheWholeList) {
    folder.write("house.toml", std::string(house) +
                                   "[[tap]]\nname = \"bath tap\"\n"
                                   "flow = \"17 L/min\"\n");
    const Loaded loaded = load_job();
    ASSERT_EQ(loaded.job.site.taps.size(), 1U);
    EXPECT_EQ(loaded.job.site.taps[0].name, "bath tap");
}

TEST_F(FilesOnFiles, HashIsTheSameTwiceAndChangesWithAnyFile) {
    const std::string first = load_job().hash;
    EXPECT_EQ(load_job().hash, first);
    for (const char* file : {"house.toml", "plain.toml", "heater.toml"}) {
        const std::string before = load_job().hash;
        std::ofstream(folder.path() / file, std::ios::app) << "# one more word\n";
        EXPECT_NE(load_job().hash, before) << file;
    }
}

TEST_F(FilesOnFiles, AnOverriddenMistakeIsStillReported) {
    folder.write("house.toml", with(house, "12 °C", "12 kPa"));
    EXPECT_EQ(load_job().problems.size(), 1U);
}

TEST_F(FilesOnFiles, ACircleIsRefusedWhereItCloses) {
    folder.write("plain.toml", "builds_on = \"./house.toml\"\n" + std::string(plain));
    const Loaded loaded = load_job();
    ASSERT_EQ(loaded.problems.size(), 1U);
    EXPECT_NE(loaded.problems[0].found.find("leads back to itself"), std::string::npos);
    EXPECT_NE(loaded.problems[0].file.find("plain.toml"), std::string::npos);
}

TEST_F(FilesOnFiles, AFolderIsNotAFile) {
    std::filesystem::remove(folder.path() / "plain.toml");
    std::filesystem::create_directories(folder.path() / "plain.toml");
    const Loaded loaded = load_job();
    ASSERT_EQ(loaded.problems.size(), 1U);
    EXPECT_NE(loaded.problems[0].found.find("a folder"), std::string::npos);
}

TEST(Loader, AMissingJobNamesTheNearestFile) {
    const Folder folder;
    folder.write("tanager.toml", sound_job);
    const Loaded loaded = load(folder.path() / "tangaer.toml");
    ASSERT_EQ(loaded.problems.size(), 1U);
    EXPECT_EQ(loaded.problems[0].suggestion, (folder.path() / "tanager.toml").generic_string());
}

TEST(ListJobs, GivesTomlFilesByName) {
    const Folder folder;
    folder.write("b.toml", "");
    folder.write("a.toml", "");
    folder.write("notes.txt", "");
    const auto jobs = list_jobs(folder.path());
    ASSERT_EQ(jobs.size(), 2U);
    EXPECT_EQ(jobs[0].filename(), "a.toml");
    EXPECT_EQ(jobs[1].filename(), "b.toml");
}

TEST(ListJobs, IsEmptyForAMissingFolder) {
    EXPECT_TRUE(list_jobs("/no/such/folder").empty());
}

}  // namespace
}  // namespace emberpath::scenario
