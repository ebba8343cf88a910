// How long work in core tells its caller how far it is, and learns that it should stop. Core makes no threads: a job
// runner (ui/jobs) or the console hands in a Progress, and a test can hand in one that stops after n steps.
#pragma once

#include <functional>
#include <stop_token>
#include <utility>

namespace steelyard {

class Progress {
public:
    using Report = std::function<void(double share)>;  // 0..1; may be called from the worker's thread

    Progress() = default;  // reports to nobody, never stops
    explicit Progress(Report report, std::stop_token stop = {}) : m_report(std::move(report)), m_stop(std::move(stop))
    {}

    void report(double share) const
    {
        if (m_report) m_report(share);
    }
    [[nodiscard]] bool cancelled() const { return m_stop.stop_requested(); }

private:
    Report m_report;
    std::stop_token m_stop;
};

}  // namespace steelyard
