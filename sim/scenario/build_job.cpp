#include <algorithm>
#include <array>
#include <cmath>

#include "sim/scenario/build.hpp"

namespace emberpath::scenario {

namespace {

void scale_injectors(const Values& heater, HeaterParts& parts) {
    const controller::Settings generic;
    plant::PlantParameters& p = parts.parameters;
    const double full_w = heater.number("heat_input");
    const double generic_pa = p.full_manifold_pa;
    if (const Item* item = heater.good("burner_pressure")) p.full_manifold_pa = item->number;
    const double scale =
        full_w / generic.full_heat_input_w * std::sqrt(generic_pa / p.full_manifold_pa);
    double total_m2 = 0.0;
    for (double& area : p.injector_m2) {
        area *= scale;
        total_m2 += area;
    }
    parts.settings.full_heat_input_w = full_w;
    parts.settings.full_manifold_pa = p.full_manifold_pa;
    const Item* shares = heater.good("bank_shares");
    if (shares == nullptr) return;
    for (std::size_t bank = 0; bank < plant::bank_count; ++bank)
        p.injector_m2[bank] = total_m2 * shares->numbers[bank];
}

void check_shares(const Values& heater, Problems& problems) {
    const Item* shares = heater.good("bank_shares");
    if (shares == nullptr) return;
    double sum = 0.0;
    for (const double share : shares->numbers) sum += share;
    if (std::abs(sum - 1.0) < 1e-6) return;
    problems.add(shares->at, {"bank_shares: found shares that add up to " +
                                  units::format(units::Dimension::share, sum),
                              "three shares that add up to 100 %",
                              {}});
}

/// What one fault must satisfy whatever else the job says.
class FaultChecker {
  public:
    FaultChecker(const Values& fault, Problems& problems) : fault_(fault), problems_(problems) {}

    faults::Fault check(const Values* site) {
        faults::Fault made;
        made.onset_s = fault_.number("onset");
        made.ramp_s = fault_.number("ramp");
        if (const Item* period = fault_.good("period")) made.period_s = period->number;
        if (const Item* present = fault_.good("present")) made.present_s = present->number;
        check_intermittency();
        wait_for(made);
        const Item* cause = fault_.good("cause");
        const faults::CauseInfo* info =
            cause != nullptr ? faults::find_cause(cause->text) : nullptr;
        if (info == nullptr) return made;
        made.cause = info->cause;
        if (site != nullptr) {
            check_gas_of_site(*cause, *info, *site);
            check_onset(*site);
        }
        if (info->at_start_only) check_start_only(*info);
        check_ramp(*info);
        check_severity(*info);
        if (const Item* severity = fault_.good("severity")) made.severity = severity->number;
        return made;
    }

  private:
    void report(const Position& at, std::string found, std::string expected) {
        problems_.add(at, {std::move(found), std::move(expected), {}});
    }

    void wait_for(faults::Fault& made) {
        using faults::While;
        constexpr std::array known{std::pair{"night", While::night}, std::pair{"rain", While::rain},
                                   std::pair{"hot", While::hot}};
        for (const auto& [word, what] : known)
            if (fault_.text("while") == word) made.present_while = what;
        const Item* count = fault_.good("after_light_ups");
        if (count == nullptr) return;
        made.after_light_ups =
            whole_number(*count, "after_light_ups", "a whole number from 0 to 20", problems_);
    }

    void check_intermittency() {
        const Item* period = fault_.written("period");
        const Item* present = fault_.written("present");
        if (period != nullptr && present == nullptr)
            report(period->key_at, "period: found a period without the time it is present",
                   "a present key beside it");
        if (present != nullptr && period == nullptr)
            report(present->key_at, "present: found a time present without a period",
                   "a period key beside it");
        period = fault_.good("period");
        present = fault_.good("present");
        if (period != nullptr && present != nullptr && present->number >= period->number)
            report(present->at,
                   "present: found " + in_quotes(present->text) +
                       ", not shorter than the period of " + in_quotes(period->text),
                   "a time shorter than the period");
    }

    void check_gas_of_site(const Item& cause, const faults::CauseInfo& info, const Values& site) {
        if (site.good("gas") == nullptr) return;
        const bool propane = burns_propane(site);
        if (info.cylinder_only && !propane)
            report(cause.at, "cause: found " + in_quotes(cause.text) + " at a site on natural gas",
                   "a site with gas = \"propane cylinder\", or another cause");
        if (info.mains_only && propane)
            report(cause.at,
                   "cause: found " + in_quotes(cause.text) + " at a site with a propane cylinder",
                   "a site with gas = \"natural gas\", or another cause");
    }

    void check_onset(const Values& site) {
        const Item* onset = fault_.good("onset");
        const Item* arrival = site.good("arrival");
        if (onset == nullptr || arrival == nullptr || onset->number < arrival->number) return;
        report(onset->at,
               "onset: found " + in_quotes(onset->text) + ", not before the arrival at " +
                   in_quotes(arrival->text),
               "a time before the arrival, so that the household can have noticed");
    }

    /// What the history begins with cannot come, grow or go during it.
    void check_start_only(const faults::CauseInfo& info) {
        for (const char* key : {"onset", "ramp", "period", "while", "after_light_ups"}) {
            const Item* item = fault_.written(key);
            if (item == nullptr || (fault_.good(key) != nullptr && item->number == 0.0 &&
                                    std::string_view(key) != "while"))
                continue;
            report(item->key_at,
                   std::string(key) + ": found a time at " + std::string(info.word) +
                       ", which is how the history begins",
                   "no such key; a severity alone says how far it is");
        }
    }

    /// A ramp needs an effect that grows from nothing.
    void check_ramp(const faults::CauseInfo& info) {
        const Item* ramp = fault_.written("ramp");
        if (ramp == nullptr || !ramp->good || ramp->number == 0.0) return;
        if (!info.on_off && !info.begins_whole) return;
        report(ramp->key_at,
               "ramp: found a time at " + std::string(info.word) + ", which is " +
                   (info.on_off ? "either there or not" : "held from the first moment on"),
               "no such key; an onset says when it begins");
    }

    void check_severity(const faults::CauseInfo& info) {
        const Item* severity = fault_.written("severity");
        const bool none_needed = info.on_off || info.cause == faults::Cause::no_fault;
        const std::string word(info.word);
        if (severity == nullptr) {
            if (!none_needed)
                report(fault_.at, "severity: missing from a [[fault]]", range_of(info));
            return;
        }
        if (none_needed) {
            report(severity->key_at,
                   "severity: found one for " + word + ", which is either there or not",
                   "no such key in this [[fault]]");
            return;
        }
        if (!severity->good) return;
        if (severity->number < 0.0 && !info.has_sign) {
            report(
                severity->at,
                "severity: found " + severity->raw + ", but " + word + " has no opposite direction",
                range_of(info));
            return;
        }
        const double size = std::abs(severity->number);
        if (size >= info.least_severity && size <= info.greatest_severity) return;
        report(severity->at,
               "severity: found " + severity->raw +
                   (size < info.least_severity ? ", too slight for anybody to notice"
                                               : ", beyond the range of the cause"),
               range_of(info));
    }

    static std::string range_of(const faults::CauseInfo& info) {
        const auto text = [](double x) { return units::fixed(x, 2); };
        std::string range = "a severity from " + text(info.least_severity) + " to " +
                            text(info.greatest_severity) + " for " + std::string(info.word);
        if (info.has_sign) range += ", or the same below zero";
        return range;
    }

    const Values& fault_;
    Problems& problems_;
};

/// Two of one cause have no meaning, and beside "no fault" there can be none.
void check_company(const std::vector<Values>& list, Problems& problems) {
    std::vector<std::string> seen;
    for (const Values& fault : list) {
        const Item* cause = fault.good("cause");
        if (cause == nullptr) continue;
        if (std::find(seen.begin(), seen.end(), cause->text) != seen.end())
            problems.add(cause->at, {"cause: found " + in_quotes(cause->text) + " a second time",
                                     "each cause once",
                                     {}});
        else if (list.size() > 1 && cause->text == "no_fault")
            problems.add(cause->at, {"cause: found \"no_fault\" beside another fault",
                                     "\"no_fault\" alone, or faults only",
                                     {}});
        seen.push_back(cause->text);
    }
}

void check_set_point(const Item* item, const controller::Settings& settings, Problems& problems) {
    if (item == nullptr) return;
    const double slack = 1e-9;
    if (item->number >= settings.minimum_set_k - slack &&
        item->number <= settings.maximum_set_k + slack)
        return;
    const auto text = [](double k) { return units::format_temperature(k); };
    problems.add(item->at,
                 {"set_point: found " + in_quotes(item->text) + ", which the heater does not offer",
                  "a temperature from " + text(settings.minimum_set_k) + " to " +
                      text(settings.maximum_set_k) + ", the range of the heater",
                  {}});
}

}  // namespace

int whole_number(const Item& item, const std::string& key, const std::string& expected,
                 Problems& problems) {
    const int whole = static_cast<int>(std::lround(item.number));
    if (std::abs(item.number - whole) > 1e-9)
        problems.add(item.at, {key + ": found " + item.raw + ", not a whole number", expected, {}});
    return whole;
}

HeaterParts make_heater(const Values& heater, Problems& problems) {
    check_shares(heater, problems);
    HeaterParts parts;
    parts.parameters =
        burns_propane(heater) ? plant::propane_parameters() : plant::natural_gas_parameters();
    scale_injectors(heater, parts);
    parts.settings.plate_gas = parts.settings.gas = burns_propane(heater) ? 1.0 : 0.0;
    parts.settings.other_gas_manifold_pa =
        (burns_propane(heater) ? plant::natural_gas_parameters() : plant::propane_parameters())
            .full_manifold_pa;
    parts.settings.fan_full_rev_per_s = heater.number("fan_speed");
    if (heater.text("air_proving") == "tube") {
        parts.parameters = plant::with_air_tube(parts.parameters);
        parts.settings.air_by_tube = 1.0;
    }
    parts.settings.minimum_set_k = heater.number("set_point_least");
    parts.settings.maximum_set_k = heater.number("set_point_greatest");
    return parts;
}

namespace {

worksite::Consent consent_of(std::string_view word) {
    using worksite::Consent;
    if (word == "given") return Consent::given;
    if (word == "after reasons") return Consent::after_reasons;
    return word == "never" ? Consent::never : Consent::when_asked;
}

}  // namespace

worksite::Customer make_customer(const Values& customer) {
    using worksite::Complaint;
    constexpr std::array complaints{
        std::pair{"no hot water", Complaint::no_hot_water},
        std::pair{"not hot enough", Complaint::not_hot_enough},
        std::pair{"too hot", Complaint::too_hot},
        std::pair{"goes cold after a while", Complaint::goes_cold_after_a_while},
        std::pair{"drops out now and then", Complaint::drops_out_now_and_then},
        std::pair{"something else", Complaint::none}};
    worksite::Customer made;
    made.words = customer.text("words");
    made.agrees = consent_of(customer.text("agrees"));
    const Item* tenant = customer.good("tenant");
    made.tenant = tenant != nullptr && tenant->flag;
    for (const auto& [word, complaint] : complaints)
        if (customer.text("complaint") == word) made.complaint = complaint;
    const auto answers = customer.tables.find("answers");
    if (answers == customer.tables.end()) return made;
    for (const auto& [topic, item] : answers->second.items)
        if (item.good) made.answers.emplace(topic, item.text);
    return made;
}

std::vector<faults::Fault> make_faults(const Values& job, const Values* site, Problems& problems) {
    std::vector<faults::Fault> made;
    for (const Values& fault : job.list("fault"))
        made.push_back(FaultChecker(fault, problems).check(site));
    check_company(job.list("fault"), problems);
    return made;
}

namespace {

/// What is missing for the cause to act there.
std::string lacks(const faults::CauseInfo& info) {
    return "which does nothing at this site without " + std::string(faults::title(info.needs));
}

/// Does the fault ever reach the range in which somebody can notice it, by the end of a visit of two hours?
bool ever_shows(const faults::Fault& fault, double arrival_s) {
    constexpr double visit_s = 7200.0, step_s = 1.0;
    faults::Fault alone = fault;  // what it waits for may come
    alone.present_while = faults::While::always;
    alone.after_light_ups = 0;
    const faults::CauseInfo& info = faults::info(fault.cause);
    const double wanted = std::min(info.least_severity, std::abs(fault.severity)) - 1e-9;
    for (int i = 0; i * step_s <= arrival_s + visit_s; ++i)
        if (std::abs(faults::severity_at(alone, i * step_s)) >= wanted) return true;
    return false;
}

}  // namespace

void check_faults_act(const Values& all, const worksite::Job& job, Problems& problems) {
    const faults::SiteTraits site = worksite::traits_of(job);
    const std::vector<Values>& list = all.list("fault");
    for (std::size_t i = 0; i < list.size() && i < job.faults.size(); ++i) {
        const faults::Fault& fault = job.faults[i];
        const faults::CauseInfo& info = faults::info(fault.cause);
        const Item* cause = list[i].good("cause");
        if (cause == nullptr || cause->text != info.word) continue;
        const bool right_gas = site.cylinder ? !info.mains_only : !info.cylinder_only;
        if (right_gas && !faults::can_act(info, site))
            problems.add(cause->at, {"cause: found " + in_quotes(cause->text) + ", " + lacks(info),
                                     "a site that has it, or another cause",
                                     {}});
        const Item* ramp = list[i].good("ramp");
        if (ramp != nullptr && !ever_shows(fault, job.site.arrival_s))
            problems.add(ramp->at, {"ramp: found " + in_quotes(ramp->text) +
                                        ", so slow that nobody notices the fault within two hours "
                                        "of the arrival",
                                    "a shorter ramp, or an earlier onset",
                                    {}});
        const bool no_night = fault.present_while == faults::While::night && !site.night;
        if (const Item* when = list[i].good("while"); when != nullptr && no_night)
            problems.add(when->at, {"while: found \"night\" at a site that sees no night",
                                    "a site with a night in it, or another word",
                                    {}});
    }
}

void check_set_points(const Values& job, const Values& site, const controller::Settings& settings,
                      Problems& problems) {
    check_set_point(job.good("set_point"), settings, problems);
    for (const Values& event : site.list("event"))
        check_set_point(event.good("set_point"), settings, problems);
}

void check_gas(const Values& site, const Values& heater, const Position& chosen,
               Problems& problems) {
    const Item* gas = heater.good("gas");
    if (gas == nullptr || site.good("gas") == nullptr) return;
    if (burns_propane(site) == burns_propane(heater)) return;
    problems.add(chosen, {"heater: found one for " + gas->text + " at a site with " +
                              (burns_propane(site) ? "a propane cylinder" : "natural gas"),
                          "a heater made for the gas of the site",
                          {}});
}

}  // namespace emberpath::scenario
