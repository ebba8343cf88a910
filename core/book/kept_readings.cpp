#include "core/book/kept_readings.h"

#include "core/flags/reading_thresholds.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr std::size_t kMostKept = 4;

class RememberingEngine final : public ReadingEngine {
public:
    RememberingEngine(const RegimeEngine& engine, ReadingMemory& memory) : m_engine(engine), m_memory(memory) {}
    [[nodiscard]] std::vector<LineReading> readAll(const AthleteLog& log, QDate asOf) const override
    {
        return m_engine.readAll(log, asOf, m_memory);
    }

private:
    const RegimeEngine& m_engine;
    ReadingMemory& m_memory;
};

}  // namespace

KeptReadings::Kept& KeptReadings::keptFor(Id<Athlete> athlete, const ReadingParameters& parameters,
                                          const VerdictThresholds& thresholds, const Wording& wording)
{
    const auto found = std::ranges::find(m_kept, athlete, &Kept::athlete);
    if (found != m_kept.end()) {
        const bool same = found->engine.parameters() == parameters && found->engine.thresholds() == thresholds
                          && found->wording == wording;
        if (same) {
            m_kept.splice(m_kept.begin(), m_kept, found);
            return m_kept.front();
        }
        m_kept.erase(found);
    }
    m_kept.emplace_front(athlete, wording, RegimeEngine(parameters, thresholds, wording), ReadingMemory());
    if (m_kept.size() > kMostKept) m_kept.pop_back();
    return m_kept.front();
}

AthleteReview KeptReadings::review(const AthleteLog& log, const ReadingParameters& parameters,
                                   const RuleSettings& settings, QDate asOf, const Wording& wording)
{
    const std::lock_guard lock(m_mutex);
    Kept& kept = keptFor(log.athlete.id, parameters, readingThresholds(settings), wording);
    AthleteReview review = reviewAthlete(log, RememberingEngine(kept.engine, kept.memory), settings, asOf, wording);
    m_weeksReplayed = kept.memory.weeksReplayed();
    return review;
}

}  // namespace steelyard
