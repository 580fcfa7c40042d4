#include "sim/worksite/complaint.hpp"

#include <array>
#include <utility>

#include "sim/worksite/workplace.hpp"

namespace emberpath::worksite {

namespace {

constexpr double near_set_k = 5.0;
constexpr double cold_k = 308.15;
constexpr std::int64_t warm_up_ticks = 200;
constexpr std::int64_t long_ticks = 2400;    // failing after four hot minutes is "after a while"
constexpr std::int64_t noticed_ticks = 100;  // ten seconds of cold water are noticed

}  // namespace

void Household::follow(bool drawing, double tap_water_k, double set_point_k) {
    if (!drawing) {
        if (draw_ticks_ > 0) finish_draw();
        return;
    }
    if (++draw_ticks_ <= warm_up_ticks) return;
    const bool cold = tap_water_k < cold_k;
    const bool hot = tap_water_k >= set_point_k - near_set_k;
    if (cold) ++cold_ticks_;
    if (hot) ++hot_ticks_;
    if (!cold && !hot) ++cool_ticks_;
    if (tap_water_k > set_point_k + near_set_k) ++scald_ticks_;
    cold_run_ = cold ? cold_run_ + 1 : 0;
    if (cold_run_ == noticed_ticks && hot_ticks_ > noticed_ticks) failed_after_hot_ = true;
    if (failed_after_hot_ && hot) hot_again_ = true;
}

void Household::finish_draw() {
    const auto judged = draw_ticks_ - warm_up_ticks;
    if (judged > 0) {
        const bool never_hot = !failed_after_hot_ && !hot_again_ && cold_ticks_ * 2 > judged;
        never_in_a_row_ = never_hot ? never_in_a_row_ + 1 : 0;
        if (scald_ticks_ > noticed_ticks)
            ++scalding_;
        else if (hot_again_)
            ++dropped_;
        else if (failed_after_hot_)
            ++(hot_ticks_ >= long_ticks ? faded_late_ : dropped_);
        else if (never_hot)
            ++never_hot_;
        else if (cool_ticks_ * 2 > judged)
            ++cool_;
        else
            ++good_;
    }
    draw_ticks_ = hot_ticks_ = cool_ticks_ = cold_ticks_ = scald_ticks_ = cold_run_ = 0;
    failed_after_hot_ = hot_again_ = false;
}

Complaint Household::complaint() const {
    Household now = *this;
    if (now.draw_ticks_ > 0) now.finish_draw();
    if (now.scalding_ > 0) return Complaint::too_hot;
    if (now.never_in_a_row_ > 1 || (now.never_hot_ > 0 && now.good_ + now.cool_ == 0))
        return Complaint::no_hot_water;
    if (now.dropped_ > 0 || now.never_hot_ > 0) return Complaint::drops_out_now_and_then;
    if (now.faded_late_ > 0) return Complaint::goes_cold_after_a_while;
    return now.cool_ > 0 ? Complaint::not_hot_enough : Complaint::none;
}

Complaint simulated_complaint(const Job& job, std::uint64_t seed) {
    const Workplace place(job, seed, Mode::assessed, nullptr);
    return place.household.complaint();
}

std::string_view complaint_word(Complaint complaint) {
    constexpr std::array<std::string_view, complaint_count> words{
        "something else",          "no hot water",          "not hot enough", "too hot",
        "goes cold after a while", "drops out now and then"};
    return words.at(static_cast<std::size_t>(complaint));
}

namespace {

std::string quoted(Complaint complaint) {
    return "\"" + std::string(complaint_word(complaint)) + "\"";
}

std::string in_small_letters(std::string_view text) {
    std::string small(text);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

/// What somebody can read or hear before the cause is known.
std::vector<std::pair<std::string, std::string>> open_texts(const Job& job) {
    std::vector<std::pair<std::string, std::string>> texts{
        {"name", job.name},
        {"title", job.title},
        {"call_out", job.call_out},
        {"site name", job.site.name},
        {"words of the customer", job.customer.words}};
    for (const auto& [topic, answer] : job.customer.answers)
        texts.emplace_back("answer about " + topic, answer);
    return texts;
}

void add_names_given_away(const Job& job, std::vector<std::string>& doubts) {
    for (const auto& fault : job.faults) {
        const auto& cause = faults::info(fault.cause);
        for (const auto& [where, text] : open_texts(job)) {
            const std::string small = in_small_letters(text);
            if (small.find(cause.word) != std::string::npos ||
                small.find(cause.title) != std::string::npos)
                doubts.push_back("the " + where + " names the cause, " + std::string(cause.title));
        }
    }
}

}  // namespace

std::vector<std::string> doubts_about(const Job& job) {
    constexpr std::uint64_t any_seed = 1;
    std::vector<std::string> doubts;
    const Complaint met = simulated_complaint(job, any_seed);
    if (met != job.customer.complaint)
        doubts.push_back("the customer complains of " + quoted(job.customer.complaint) +
                         ", but the history shows " + quoted(met));
    Job sound = job;
    sound.faults.clear();
    const bool fault = job.intended != faults::Remedy::explain_to_customer;
    if (fault && simulated_complaint(sound, any_seed) != Complaint::none)
        doubts.emplace_back("without the fault the household would complain all the same");
    add_names_given_away(job, doubts);
    return doubts;
}

}  // namespace emberpath::worksite
