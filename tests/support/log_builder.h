// Builds one athlete's record for tests of readings and rules.
//
//   const AthleteLog log = LogBuilder().line(u"Arm curl"_qs).exposure(day, {{.load = 40, .reps = 10, .off = 0}}).build();
//
// A set without .off was not watched; one without .rir has no effort written down. Exposures are given oldest first.
#pragma once

#include "core/analysis/athlete_log.h"
#include "core/base/text.h"

#include <algorithm>

namespace steelyard::testing_support {

struct MadeSet {
    double load = 0;
    int reps = 0;
    std::optional<int> off;
    std::optional<double> rir;
    bool failed = false;
    SetKind kind = SetKind::Work;
};

inline SetEntry madeEntry(const MadeSet& made, int number = 1)
{
    SetEntry set;
    set.number = number;
    set.load = Load::make(Decimal::nearest(made.load, 3), MassUnit::kg).value();
    set.reps = made.reps;
    set.off = made.off;
    if (made.rir) set.effort = Effort{Effort::Scale::Rir, Decimal::nearest(*made.rir, 1)};
    set.failed = made.failed;
    set.kind = made.kind;
    return set;
}

class LogBuilder {
public:
    LogBuilder()
    {
        m_log.athlete.value.name = QStringLiteral("Made Up");
        m_log.athlete.value.experience = Experience::Intermediate;
        m_log.athlete.value.consents = {HealthConsent::given(QDate(2020, 1, 1))};
    }

    LogBuilder& experience(std::optional<Experience> experience)
    {
        m_log.athlete.value.experience = experience;
        return *this;
    }
    LogBuilder& unit(MassUnit unit)
    {
        m_log.athlete.value.unit = unit;
        return *this;
    }
    LogBuilder& daysPerWeek(int days)
    {
        m_log.athlete.value.daysPerWeek = days;
        return *this;
    }
    LogBuilder& bodyMass(QDate date, double kg)
    {
        m_log.bodyMass.push_back({date, madeEntry({.load = kg}).load});
        return *this;
    }
    LogBuilder& line(const QString& exercise, const QString& grip = QStringLiteral("supinated"))
    {
        const auto number = static_cast<std::int64_t>(m_log.lines.size()) + 1;
        const auto same = std::ranges::find_if(
            m_log.lines, [&](const LineRecord& other) { return other.exercise.value.name == exercise; });
        const Id<Exercise> exerciseId = same == m_log.lines.end() ? Id<Exercise>(number) : same->exercise.id;
        const Exercise named{exercise, {}, false};
        const Variant variant{exerciseId, QStringLiteral("straight bar")};
        const Grip held{grip, {}, {}, {}};
        const RepStandard standard{Id<Variant>(number), {}, QStringLiteral("strict")};
        const QString key = slug(exercise) + QStringLiteral("/straight-bar/") + slug(grip) + QStringLiteral("/strict");
        m_log.lines.push_back({Id<LiftLine>(number),
                               {m_log.athlete.id, Id<Variant>(number), Id<Grip>(number), Id<RepStandard>(number)},
                               key,
                               {exerciseId, {}, named},
                               {Id<Variant>(number), {}, variant},
                               {Id<Grip>(number), {}, held},
                               {Id<RepStandard>(number), {}, standard},
                               {}});
        return *this;
    }
    LogBuilder& loading(Loading loading)
    {
        m_log.lines.back().variant.value.loading = loading;
        return *this;
    }
    LogBuilder& step(double kg)
    {
        m_log.lines.back().variant.value.step = madeEntry({.load = kg}).load;
        return *this;
    }
    LogBuilder& exposure(QDate date, const std::vector<MadeSet>& sets)
    {
        Exposure exposure{date, {}, {}};
        for (const MadeSet& made : sets) {
            const int place = static_cast<int>(exposure.sets.size()) + 1;
            exposure.sets.push_back({Id<SetEntry>(++m_sets), place, madeEntry(made, place)});
        }
        m_log.lines.back().exposures.push_back(exposure);
        return session(date);
    }
    // `count` exposures of one set, `everyDays` apart, the last on `last`; make(i) gives the i-th.
    template <class MakeSet>
    LogBuilder& exposures(int count, QDate last, int everyDays, MakeSet make)
    {
        for (int i = 0; i < count; ++i) exposure(last.addDays(-everyDays * (count - 1 - i)), {make(i)});
        return *this;
    }
    // For the newest exposure.
    LogBuilder& discomfort(Joint joint, int rating)
    {
        m_log.lines.back().exposures.back().rating.discomfort[static_cast<std::size_t>(joint)] = rating;
        return *this;
    }
    // Also of the newest exposure.
    LogBuilder& felt(std::optional<int> tension, std::optional<int> burn, std::optional<int> pump,
                     const QString& gaveOut = {})
    {
        ExerciseRating& rating = m_log.lines.back().exposures.back().rating;
        rating.tension = tension;
        rating.burn = burn;
        rating.pump = pump;
        rating.gaveOut = gaveOut;
        return *this;
    }
    LogBuilder& soreAfter(int rating)
    {
        m_log.lines.back().exposures.back().rating.nextSoreness = rating;
        return *this;
    }
    // Of the newest line's exercise, and a name for it.
    LogBuilder& trains(Id<Muscle> muscle, const QString& key, double share)
    {
        m_log.lines.back().exercise.value.shares.push_back({muscle, share});
        if (std::ranges::find(m_log.muscles, muscle, &Row<Muscle>::id) == m_log.muscles.end())
            m_log.muscles.push_back({muscle, {}, {key, key}});
        return *this;
    }
    LogBuilder& aim(Id<Muscle> muscle, int low, int high)
    {
        m_log.athlete.value.aims.push_back({muscle, low, high});
        return *this;
    }
    LogBuilder& backLoading(BackLoading loading)
    {
        m_log.lines.back().variant.value.backLoading = loading;
        return *this;
    }
    // Of the newest exposure's last set.
    LogBuilder& lean(double degrees)
    {
        newestExposure().sets.back().set.leanDegrees = Decimal::nearest(degrees, 1);
        return *this;
    }
    [[nodiscard]] Athlete& athlete() { return m_log.athlete.value; }
    [[nodiscard]] Exercise& exercise() { return m_log.lines.back().exercise.value; }  // of the newest line
    [[nodiscard]] Variant& variant() { return m_log.lines.back().variant.value; }
    [[nodiscard]] LineRecord& newestLine() { return m_log.lines.back(); }
    [[nodiscard]] Exposure& newestExposure() { return m_log.lines.back().exposures.back(); }
    LogBuilder& mark(Mark mark, int count)
    {
        m_log.lines.back().exposures.back().sets.back().set.marks.set(mark, count);
        return *this;
    }
    LogBuilder& session(QDate date)
    {
        auto& dates = m_log.sessionDates;
        const auto place = std::ranges::lower_bound(dates, date);
        if (place == dates.end() || *place != date) dates.insert(place, date);
        return *this;
    }
    LogBuilder& block(QDate start, std::vector<PlannedWeek> weeks)
    {
        m_log.blocks.push_back({Id<Block>(static_cast<std::int64_t>(m_log.blocks.size()) + 1),
                                {},
                                Block{m_log.athlete.id, QStringLiteral("block"), {}, start, std::move(weeks)}});
        return *this;
    }
    // About the newest line.
    LogBuilder& decide(const QString& rule, DecisionKind kind, QDate madeOn, std::optional<QDate> until = std::nullopt)
    {
        const Decision decision{m_log.athlete.id,      m_log.lines.back().id, rule, kind, madeOn, until, {},
                                QStringLiteral("seen")};
        m_log.decisions.push_back({Id<Decision>(static_cast<std::int64_t>(m_log.decisions.size()) + 1), {}, decision});
        return *this;
    }
    [[nodiscard]] Decision& lastDecision() { return m_log.decisions.back().value; }
    LogBuilder& lookAtWhole(QDate madeOn)
    {
        decide(kLookedAtRule.toString(), DecisionKind::Act, madeOn);
        m_log.decisions.back().value.line.reset();
        return *this;
    }
    [[nodiscard]] const AthleteLog& build() const { return m_log; }

private:
    AthleteLog m_log{{Id<Athlete>(1), {}, {}}, {}, {}, {}, {}, {}};
    std::int64_t m_sets = 0;
};

}  // namespace steelyard::testing_support
