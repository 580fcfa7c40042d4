#pragma once
/// How the program puts a piece of work on the worker; for its own files only.

#include "ui/desktop/program.hpp"

namespace emberpath::desktop {

template <class Result>
void Program::start_work(std::string title, std::string words,
                         std::function<Result(Progress&)> work,
                         std::function<void(Result&)> finish) {
    auto made = std::make_unique<Work>();
    made->title = std::move(title);
    made->words = std::move(words);
    made->from = place_ == Place::error ? after_trouble_ : place_;
    made->progress = std::make_shared<Progress>();
    auto result = std::make_shared<Result>();
    made->done = std::async(
        std::launch::async,
        [result, work = std::move(work), progress = made->progress] { *result = work(*progress); });
    if (work_) {  // only quiet work can be under way still
        work_->progress->abandoned = true;
        abandoned_.push_back(std::move(work_));
    }
    made->finish = [result, finish = std::move(finish)] { finish(*result); };
    work_ = std::move(made);
}

}  // namespace emberpath::desktop
