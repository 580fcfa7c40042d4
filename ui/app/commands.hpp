#pragma once
/// The commands that look at files rather than do a job. Results go to Context::out.

#include <string>
#include <vector>

#include "ui/app/context.hpp"

namespace emberpath::app {

struct DebriefRequest {
    std::filesystem::path record, html, json;  // empty: not wanted
    bool assessor = false;                     // with what is no part of any score
};
struct TraceRequest {
    std::string job;
    std::string taps;  // "0 0.5; 60 1; 180 0"
    std::filesystem::path csv;
    double every_s = 1.0;
    bool sound = false;  // the sound house instead of the faulty one
};

struct ForkRequest {
    std::filesystem::path record, script,
        to;          // empty script: somebody types; empty to: next free name
    std::string at;  // time on site, "MM:SS" as the debrief prints it
};

struct DecideRequest {
    std::filesystem::path record;
    std::string verdict, area, score, role, reason;  // a verdict, or an area and its score
};

[[nodiscard]] Status explain(Context& context, const DebriefRequest& request);
/// Tries a finished attempt again from a moment on, coached, in a record of its own.
[[nodiscard]] Status fork(Context& context, const ForkRequest& request);
/// Keeps what a person decided beside the record, with role and reason; the proposal stays as it was.
[[nodiscard]] Status decide(Context& context, const DecideRequest& request);
/// What several finished attempts say together: for an assessor.
[[nodiscard]] Status series(Context& context, const std::vector<std::string>& files);
[[nodiscard]] Status verify(Context& context, const std::filesystem::path& record);
[[nodiscard]] Status check(Context& context, const std::vector<std::string>& files);
[[nodiscard]] Status preview(Context& context, const std::string& job);
[[nodiscard]] Status trace(Context& context, const TraceRequest& request);
[[nodiscard]] Status list(Context& context);
[[nodiscard]] Status causes(Context& context);

}  // namespace emberpath::app
