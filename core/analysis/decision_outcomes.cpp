#include "core/analysis/decision_outcomes.h"

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

// Both days included.
struct DaySpan {
    QDate from;
    QDate to;
    [[nodiscard]] bool holds(QDate day) const { return day >= from && day <= to; }
};

class SpellCount {
public:
    explicit SpellCount(DaySpan span) : m_span(span) {}

    void add(const LineRecord& record, const LineReading& reading)
    {
        for (const Exposure& exposure : record.exposures) {
            if (!m_span.holds(exposure.date)) continue;
            m_days.insert(exposure.date);
            for (const auto& rating : exposure.rating.discomfort) m_worst = std::max(m_worst, rating);
        }
        for (const ReadingPoint& point : reading.points) {
            if (!m_span.holds(point.date) || !point.watched) continue;
            m_reps += point.reps;
            m_off += point.offReps;
        }
    }
    [[nodiscard]] OutcomeSpell spell() const
    {
        OutcomeSpell spell{static_cast<int>(m_days.size()), {}, m_worst};
        if (m_reps > 0) spell.offShare = static_cast<double>(m_off) / m_reps;
        return spell;
    }

private:
    DaySpan m_span;
    std::set<QDate> m_days;
    int m_reps = 0;
    int m_off = 0;
    std::optional<int> m_worst;
};

std::optional<TrendPoint> lastKnown(const LineReading& reading, QDate after, QDate upTo)
{
    const auto end = std::ranges::upper_bound(reading.trend, upTo, {}, &TrendPoint::date);
    if (end == reading.trend.begin() || std::prev(end)->date <= after) return std::nullopt;
    return *std::prev(end);
}

}  // namespace

std::vector<DecisionOutcome> decisionOutcomes(const AthleteLog& log, std::span<const LineReading> readings, QDate asOf)
{
    std::vector<DecisionOutcome> outcomes;
    for (const Row<Decision>& row : log.decisions) {
        const Decision& decision = row.value;
        if (decision.rule == kLookedAtRule || decision.madeOn > asOf) continue;
        DecisionOutcome outcome{.decision = &row};
        const QDate end = decision.madeOn.addDays(kOutcomeDays);
        outcome.until = std::min(end, asOf);
        outcome.isOver = asOf >= end;
        SpellCount before({decision.madeOn.addDays(1 - kOutcomeDays), decision.madeOn});
        SpellCount after({decision.madeOn.addDays(1), outcome.until});
        for (std::size_t i = 0; i < log.lines.size(); ++i) {
            const LineRecord& record = log.lines[i];
            if (decision.line && record.id != *decision.line) continue;
            before.add(record, readings[i]);
            after.add(record, readings[i]);
            if (!decision.line) continue;
            outcome.line = i;
            outcome.capacityBefore = lastKnown(readings[i], QDate(1, 1, 1), decision.madeOn);
            outcome.capacityAfter = lastKnown(readings[i], decision.madeOn, outcome.until);
        }
        outcome.before = before.spell();
        outcome.after = after.spell();
        outcomes.push_back(outcome);
    }
    // Those of one day in the order they were made, the last of them first.
    std::ranges::reverse(outcomes);
    std::ranges::stable_sort(outcomes, std::greater{},
                             [](const DecisionOutcome& one) { return one.decision->value.madeOn; });
    return outcomes;
}

}  // namespace steelyard
