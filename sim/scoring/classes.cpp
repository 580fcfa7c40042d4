#include "sim/scoring/classes.hpp"

#include <algorithm>

namespace emberpath::scoring {

namespace {

const ChosenPair& pair_of(Class one) {
    return chosen_pairs.at(one.index() - faults::remedy_count);
}

}  // namespace

std::optional<Class> class_of(std::span<const faults::Fault> faults) {
    using faults::Cause;
    if (faults.empty()) return faults::Remedy::explain_to_customer;
    const faults::Remedy first = faults::info(faults.front().cause).remedy;
    if (std::all_of(faults.begin(), faults.end(), [&](const faults::Fault& fault) {
            return faults::info(fault.cause).remedy == first;
        }))
        return first;
    if (faults.size() != 2) return std::nullopt;
    const auto has = [&](Cause cause) {
        return faults[0].cause == cause || faults[1].cause == cause;
    };
    for (std::size_t i = 0; i < chosen_pairs.size(); ++i)
        if (has(chosen_pairs[i].first) && has(chosen_pairs[i].second)) return Class::of_pair(i);
    return std::nullopt;
}

Class class_or_first_of(std::span<const faults::Fault> faults) {
    const std::optional<Class> one = class_of(faults);
    return one ? *one : Class(faults::info(faults.front().cause).remedy);
}

Class likeliest(std::span<const double> classes) {
    return Class::at(static_cast<std::size_t>(std::max_element(classes.begin(), classes.end()) -
                                              classes.begin()));
}

std::vector<faults::Remedy> remedies_of(Class one) {
    if (!one.is_pair()) return {static_cast<faults::Remedy>(one.index())};
    const ChosenPair& pair = pair_of(one);
    return {faults::info(pair.first).remedy, faults::info(pair.second).remedy};
}

bool needs(Class one, faults::Remedy remedy) {
    const auto all = remedies_of(one);
    return std::find(all.begin(), all.end(), remedy) != all.end();
}

bool covers(Class all, Class part) {
    const auto needed = remedies_of(part);
    return std::all_of(needed.begin(), needed.end(),
                       [&](faults::Remedy one) { return needs(all, one); });
}

double needing(std::span<const double> classes, faults::Remedy remedy) {
    double total = classes[static_cast<std::size_t>(remedy)];
    for (std::size_t i = 0; i < chosen_pairs.size(); ++i)
        if (const Class pair = Class::of_pair(i);
            pair.index() < classes.size() && needs(pair, remedy))
            total += classes[pair.index()];
    return total;
}

std::string class_title(Class one) {
    if (!one.is_pair()) return faults::class_title(static_cast<faults::Remedy>(one.index()));
    const ChosenPair& pair = pair_of(one);
    return std::string(faults::info(pair.first).title) + " and " +
           std::string(faults::info(pair.second).title);
}

std::string remedy_title(Class one) {
    std::string title;
    for (const faults::Remedy remedy : remedies_of(one))
        title += (title.empty() ? "" : " and ") + std::string(faults::remedy_title(remedy));
    return title;
}

}  // namespace emberpath::scoring
