#include "core/trials/everyday_comparison.h"

#include "core/analysis/counting.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <algorithm>
#include <map>
#include <numeric>

namespace steelyard {
namespace {

struct EverydayText {
    Q_DECLARE_TR_FUNCTIONS(EverydayText)
};

// From which difference between lines a circumstance is worth a sentence. Our conventions.
constexpr double kDaysApart = 14;
constexpr double kPlacesApart = 0.75;
constexpr double kSetsApart = 1;
constexpr double kRepsApart = 2;
constexpr double kReserveApart = 0.75;

struct EverydaySession {
    std::size_t line = 0;  // place among those compared
    const LineRecord* record = nullptr;
    const Exposure* exposure = nullptr;
};

int workingSets(const Exposure& exposure)
{
    return static_cast<int>(
        std::ranges::count_if(exposure.sets, [](const LoggedSet& logged) { return isWorkingSet(logged.set); }));
}

std::vector<EverydaySession> everydaySessions(const std::vector<const LineRecord*>& lines, EverydaySpan span)
{
    std::vector<EverydaySession> sessions;
    for (std::size_t line = 0; line < lines.size(); ++line)
        for (const Exposure& exposure : lines[line]->exposures)
            if (exposure.date >= span.first && exposure.date <= span.last && workingSets(exposure) > 0)
                sessions.push_back({line, lines[line], &exposure});
    std::ranges::stable_sort(sessions, {}, [](const EverydaySession& one) { return one.exposure->date; });
    return sessions;
}

int firstPosition(const Exposure& exposure)
{
    return std::ranges::min(exposure.sets, {}, &LoggedSet::position).position;
}

double shareForTarget(const LineRecord& other, const Exercise& exercise)
{
    double most = 0;
    for (const MuscleShare& target : exercise.shares)
        for (const MuscleShare& share : other.exercise.value.shares)
            if (target.share >= 1.0 && share.muscle == target.muscle) most = std::max(most, share.share);
    return most;
}

struct BeforeInSession {
    double exercises = 0;
    double targetSets = 0;
};

BeforeInSession beforeInSession(const AthleteLog& log, const EverydaySession& session)
{
    BeforeInSession before;
    const int own = firstPosition(*session.exposure);
    for (const LineRecord& other : log.lines) {
        if (other.id == session.record->id) continue;
        for (const Exposure& exposure : other.exposures) {
            if (exposure.date != session.exposure->date || exposure.sets.empty() || firstPosition(exposure) >= own)
                continue;
            before.exercises += 1;
            before.targetSets += workingSets(exposure) * shareForTarget(other, session.record->exercise.value);
        }
    }
    return before;
}

std::optional<double> meanOfSets(const Exposure& exposure, std::optional<double> (*of)(const SetEntry&))
{
    double sum = 0;
    int count = 0;
    for (const LoggedSet& logged : exposure.sets) {
        if (!isWorkingSet(logged.set)) continue;
        if (const auto value = of(logged.set)) {
            sum += *value;
            ++count;
        }
    }
    if (count == 0) return std::nullopt;
    return sum / count;
}

std::optional<double> repsOfSet(const SetEntry& set)
{
    return set.reps;
}

// Means over sessions, by line; a line without any keeps the circumstance from being said.
class CircumstanceMeans {
public:
    explicit CircumstanceMeans(std::size_t lines) : m_sums(lines), m_counts(lines) {}
    void add(std::size_t line, std::optional<double> value)
    {
        if (!value) return;
        m_sums[line] += *value;
        ++m_counts[line];
    }
    // Empty unless every line has a value and two differ by that much.
    [[nodiscard]] std::vector<double> apartBy(double least) const
    {
        if (std::ranges::any_of(m_counts, [](int count) { return count == 0; })) return {};
        std::vector<double> means;
        means.reserve(m_sums.size());
        for (std::size_t line = 0; line < m_sums.size(); ++line) means.push_back(m_sums[line] / m_counts[line]);
        const auto [low, high] = std::ranges::minmax(means);
        if (high - low < least) return {};
        return means;
    }

private:
    std::vector<double> m_sums;
    std::vector<int> m_counts;
};

QString joined(const std::vector<double>& means, const Wording& wording)
{
    QStringList parts;
    for (const double mean : means) parts << wording.number(mean);
    return parts.join(QStringLiteral(" / "));
}

QString circumstanceSentence(Circumstance kind, const QString& numbers)
{
    switch (kind) {
    case Circumstance::Time:
        return EverydayText::tr(
                   "They were trained at different times: on average %1 days after the first day looked at.")
            .arg(numbers);
    case Circumstance::Order:
        return EverydayText::tr("They stood at different places in the session: on average %1.").arg(numbers);
    case Circumstance::Fatigue:
        return EverydayText::tr("Different work for the same muscle came before them: on average %1 sets.")
            .arg(numbers);
    case Circumstance::Reps:
        return EverydayText::tr("They were done for different repetitions: on average %1 a set.").arg(numbers);
    case Circumstance::Reserve:
        break;
    }
    return EverydayText::tr("They were stopped at different distances from failure: on average %1 in reserve.")
        .arg(numbers);
}

std::vector<CircumstanceFound> circumstancesOf(const AthleteLog& log, const std::vector<EverydaySession>& sessions,
                                               std::size_t lines, EverydaySpan span, const Wording& wording)
{
    CircumstanceMeans time(lines);
    CircumstanceMeans order(lines);
    CircumstanceMeans fatigue(lines);
    CircumstanceMeans reps(lines);
    CircumstanceMeans reserve(lines);
    for (const EverydaySession& session : sessions) {
        const BeforeInSession before = beforeInSession(log, session);
        time.add(session.line, static_cast<double>(span.first.daysTo(session.exposure->date)));
        order.add(session.line, before.exercises + 1);
        fatigue.add(session.line, before.targetSets);
        reps.add(session.line, meanOfSets(*session.exposure, repsOfSet));
        reserve.add(session.line, meanOfSets(*session.exposure, reserveOf));
    }
    std::vector<CircumstanceFound> found;
    const auto look = [&](Circumstance kind, const CircumstanceMeans& means, double least) {
        if (auto apart = means.apartBy(least); !apart.empty()) {
            const QString sentence = circumstanceSentence(kind, joined(apart, wording));
            found.push_back({kind, std::move(apart), sentence});
        }
    };
    look(Circumstance::Time, time, kDaysApart);
    look(Circumstance::Order, order, kPlacesApart);
    look(Circumstance::Fatigue, fatigue, kSetsApart);
    look(Circumstance::Reps, reps, kRepsApart);
    look(Circumstance::Reserve, reserve, kReserveApart);
    return found;
}

std::optional<SessionSurprise> everydaySurprise(const std::vector<LineSurprises>& surprises,
                                                const EverydaySession& session)
{
    for (const LineSurprises& line : surprises)
        if (line.line == session.record->id)
            for (const SessionSurprise& one : line.sessions)
                if (one.date == session.exposure->date) return one;
    return std::nullopt;
}

// The sessions as those of a trial in which every one counts and nothing was drawn.
TrialRecord asRecord(const std::vector<EverydaySession>& sessions, const std::vector<LineSurprises>& surprises)
{
    TrialRecord record;
    for (const EverydaySession& session : sessions) {
        TrialObservation seen;
        seen.date = session.exposure->date;
        seen.block = 1;
        seen.drawn = session.line;
        seen.done = session.line;
        seen.doneOn = session.exposure->date;
        const OutcomeSource source{*session.exposure, everydaySurprise(surprises, session)};
        for (const OutcomeKind& kind : outcomeKinds())
            if (const auto value = kind.value(source)) seen.values.push_back({kind.key, *value});
        record.observations.push_back(std::move(seen));
    }
    return record;
}

std::vector<const LineRecord*> recordsOf(const AthleteLog& log, const std::vector<Id<LiftLine>>& lines)
{
    std::vector<const LineRecord*> records;
    for (const Id<LiftLine> id : lines) {
        const auto found = std::ranges::find(log.lines, id, &LineRecord::id);
        if (found != log.lines.end()) records.push_back(&*found);
    }
    return records;
}

}  // namespace

EverydayComparison compareEveryday(const AthleteLog& log, const std::vector<Id<LiftLine>>& lines, EverydaySpan span,
                                   const std::vector<LineSurprises>& surprises, const Wording& wording)
{
    EverydayComparison comparison;
    const auto records = recordsOf(log, lines);
    if (records.size() != lines.size() || records.size() < kFewestArms || records.size() > kMostArms) {
        comparison.sentence = EverydayText::tr("Choose two to four lifts of this athlete.");
        return comparison;
    }
    const auto sessions = everydaySessions(records, span);
    comparison.sessions.resize(records.size());
    for (const EverydaySession& session : sessions) ++comparison.sessions[session.line];
    Trial everyday{.athlete = log.athlete.id};
    for (const LineRecord* record : records)
        everyday.arms.push_back(
            {record->line.variant, record->line.grip, record->line.standard, record->variant.value.band});
    for (const OutcomeKind& kind : outcomeKinds()) everyday.outcomes.push_back({kind.key, 0});
    for (OutcomeEffects& effects : trialEffects(everyday, asRecord(sessions, surprises), ArmTaken::Done).outcomes)
        if (!effects.differences.empty()) comparison.outcomes.push_back(std::move(effects));
    comparison.circumstances = circumstancesOf(log, sessions, records.size(), span, wording);
    comparison.sentence =
        comparison.outcomes.empty()
            ? EverydayText::tr("No rating that at least two of these lifts share.")
            : EverydayText::tr(
                "As it happened, not by lot: whatever decided which lift was done on which day may be behind "
                "a difference. A trial can tell.");
    return comparison;
}

}  // namespace steelyard
