#include "ui/app/release.hpp"

#include <algorithm>
#include <cstdio>
#include <ostream>

#include "sim/units/per_cent.hpp"
#include "ui/debrief/page.hpp"

namespace emberpath::app {

namespace {

std::string of(int some, int all) {
    return std::to_string(some) + " of " + std::to_string(all);
}

void write_row(std::ostream& out, std::string_view what, std::string_view found,
               std::string_view wanted) {
    char line[160];
    std::snprintf(line, sizeof line, "%-44s %-16s %s\n", std::string(what).c_str(),
                  std::string(found).c_str(), std::string(wanted).c_str());
    out << line;
}

double mean_of_truth(const trainees::Release& release) {
    double sum = 0.0;
    for (const auto& house : release.houses) sum += house.of_truth;
    return release.houses.empty() ? 0.0 : sum / static_cast<double>(release.houses.size());
}

double left_out_each(const trainees::Release& release) {
    double sum = 0.0;
    for (const auto& house : release.houses) sum += static_cast<double>(house.left_out);
    return release.houses.empty() ? 0.0 : sum / static_cast<double>(release.houses.size());
}

void write_houses(std::ostream& out, const trainees::Release& release) {
    const auto count = static_cast<int>(release.houses.size());
    write_row(out, "houses where the true cause leads with 80 %", of(release.identified(), count),
              "95 %");
    write_row(out, "probability of the true cause, mean", units::fixed(mean_of_truth(release), 2),
              "");
    write_row(out, "readings left out in a house, mean",
              units::fixed(left_out_each(release), 1) + " of " + std::to_string(release.readings),
              "");
    const auto early = std::count_if(release.houses.begin(), release.houses.end(),
                                     [](const auto& house) { return house.ended_early; });
    if (early > 0)
        write_row(out, "houses in which the visit ended early", std::to_string(early), "");
    if (release.drawn > count)
        write_row(out, "houses drawn that complain of something else",
                  of(release.drawn - count, release.drawn), "");
}

void write_job(std::ostream& out, const worksite::Job& job, const trainees::Release& release) {
    write_row(out, "C, reference path, minutes", units::fixed(release.reference_minutes, 1),
              "10 to 60");
    const auto& first = release.on_arrival;
    write_row(out, "likeliest remedy by complaint and display",
              units::per_cent(first.probability) + (first.leads_to_truth ? "" : " (another)"),
              "under " + units::per_cent(first.need) + ", or \"direct\"");
    const auto* near = release.widest_step(true);
    const auto* any = release.widest_step(false);
    if (any == nullptr) return write_row(out, "steps between severities", "one severity", "");
    if (near != nullptr)
        write_row(out, "widest step about the job's severity, widths",
                  units::fixed(near->widths, 1), "2");
    write_row(out, "widest step of that cause anywhere, widths", units::fixed(any->widths, 1), "");
    out << debrief::paragraph("there: " + trainees::title_of(*any, job) + ".", debrief::page_width,
                              2);
}

void write_claims(std::ostream& out, const trainees::Release& release) {
    out << "\nlikeliest cause      houses   mean claim   right\n";
    for (const auto& bin : release.calibration()) {
        if (bin.runs == 0) continue;
        char line[96];
        std::snprintf(line, sizeof line, "%.2f to %.2f  %13d   %10.2f   %5.2f%s\n", bin.from,
                      bin.to, bin.runs, bin.mean_claim, bin.share_right(),
                      bin.runs < trainees::runs_that_count ? "   too few to condemn" : "");
        out << line;
    }
}

/// As a basic string of TOML has it.
std::string escaped(const std::string& text) {
    std::string made;
    for (const char c : text) {
        if (c == '"' || c == '\\') made += '\\';
        made += c;
    }
    return made;
}

/// What holds the scorer to this check once it stands in the job file.
void write_table(std::ostream& out, const trainees::Release& release, const std::string& today,
                 const std::string& fingerprint) {
    if (static_cast<int>(release.houses.size()) < scoring::least_houses_of_a_table) {
        out << "\n"
            << debrief::paragraph("No table for the job file. In fewer than " +
                                      std::to_string(scoring::least_houses_of_a_table) +
                                      " houses, 95 % cannot be told.",
                                  debrief::page_width, 0);
        return;
    }
    out << "\n"
        << debrief::paragraph(
               "This table in the job file holds the scorer to it (in place of an "
               "older one):",
               debrief::page_width, 0)
        << "\n[release]\nchecked_on = \"" << today << "\"\nof = \"" << fingerprint
        << "\"\nhouses = " << release.houses.size() << "\nshown = " << release.identified() << "\n";
    if (const std::string other = trainees::other_refusals(release); !other.empty())
        out << "refused = \"" << escaped(other) << "\"\n";
}

}  // namespace

void write_release(std::ostream& out, const worksite::Job& job, const trainees::Release& release,
                   const std::string& today, const std::string& fingerprint) {
    out << job.title << "\n\n"
        << debrief::paragraph(
               "One script of " + std::to_string(release.readings) + " readings (" +
                   std::to_string(release.acts) + " acts, " + units::fixed(release.minutes, 0) +
                   " minutes) in " + std::to_string(release.houses.size()) +
                   " houses with this cause, each with its own parameters, severity and "
                   "instrument errors.",
               debrief::page_width, 0)
        << "\n";
    write_row(out, "", "found", "wanted");
    write_houses(out, release);
    write_job(out, job, release);
    write_claims(out, release);
    out << "\n";
    if (release.on_arrival.is_direct())
        out << "A direct job: complaint and display word leave little to find out.\n";
    if (release.refusals.empty())
        out << "Fit for release: the readings show the cause, and the scorer sees it.\n";
    for (const auto& why : release.refusals)
        out << debrief::paragraph("Refused for release because " + why, debrief::page_width, 0);
    for (const auto& what : release.remarks)
        out << debrief::paragraph("To look at: " + what, debrief::page_width, 0);
    write_table(out, release, today, fingerprint);
}

}  // namespace emberpath::app
