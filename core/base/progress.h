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
    // For a part of the work, of which its worker knows only itself.
    [[nodiscard]] Progress part(double from, double to) const
    {
        if (!m_report) return Progress({}, m_stop);
        return Progress([report = m_report, from, to](double share) { report(from + share * (to - from)); }, m_stop);
    }
    [[nodiscard]] bool cancelled() const { return m_stop.stop_requested(); }

private:
    Report m_report;
    std::stop_token m_stop;
};

}  // namespace steelyard
