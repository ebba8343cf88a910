#include "core/trials/trial_record.h"

#include "core/analysis/counting.h"
#include "core/analysis/lifter_tracker.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace steelyard {
namespace {

struct TrialRecordText {
    Q_DECLARE_TR_FUNCTIONS(TrialRecordText)
};

// A muscle that gets at least this share of a set is trained by it, as far as the next day's soreness goes. Our convention.
constexpr double kCloudingShare = 0.5;

// A session on a line that at least one arm is trained on.
struct ArmSession {
    const LineRecord* line = nullptr;
    const Exposure* exposure = nullptr;
    bool used = false;
};

bool hasWorkingSet(const Exposure& exposure)
{
    return std::ranges::any_of(exposure.sets, [](const LoggedSet& logged) { return isWorkingSet(logged.set); });
}

bool isLineOf(const TrialArm& arm, const LiftLine& line)
{
    return line.variant == arm.variant && line.grip == arm.grip && line.standard == arm.standard;
}

std::vector<ArmSession> armSessions(const Trial& trial, const AthleteLog& log, QDate first, QDate last)
{
    std::vector<ArmSession> sessions;
    for (const LineRecord& line : log.lines) {
        if (std::ranges::none_of(trial.arms, [&](const TrialArm& arm) { return isLineOf(arm, line.line); })) continue;
        for (const Exposure& exposure : line.exposures)
            if (exposure.date >= first && exposure.date <= last && hasWorkingSet(exposure))
                sessions.push_back({&line, &exposure});
    }
    std::ranges::stable_sort(sessions, {}, [](const ArmSession& session) { return session.exposure->date; });
    return sessions;
}

int setsInBand(const Exposure& exposure, const RepBand& band)
{
    return static_cast<int>(std::ranges::count_if(exposure.sets, [&](const LoggedSet& logged) {
        return isWorkingSet(logged.set) && logged.set.reps >= band.low && logged.set.reps <= band.high;
    }));
}

std::optional<double> usualLowering(const Exposure& exposure)
{
    std::vector<double> seconds;
    for (const LoggedSet& logged : exposure.sets)
        if (isWorkingSet(logged.set) && logged.set.loweringSeconds)
            seconds.push_back(logged.set.loweringSeconds->toDouble());
    return median(std::move(seconds));
}

// How far a session is from what an arm asks for: lower is nearer. Of arms on one line.
double distanceFrom(const TrialArm& arm, const Exposure& exposure)
{
    double away = -setsInBand(exposure, arm.band);
    const auto seconds = usualLowering(exposure);
    if (seconds && arm.loweringSeconds) away += std::abs(*seconds - arm.loweringSeconds->toDouble());
    return away;
}

std::size_t armOf(const Trial& trial, const ArmSession& session, std::size_t drawn)
{
    std::size_t nearest = drawn;
    const bool drawnFits = isLineOf(trial.arms[drawn], session.line->line);
    double least = drawnFits ? distanceFrom(trial.arms[drawn], *session.exposure) : HUGE_VAL;
    for (std::size_t arm = 0; arm < trial.arms.size(); ++arm) {
        if (!isLineOf(trial.arms[arm], session.line->line)) continue;
        const double away = distanceFrom(trial.arms[arm], *session.exposure);
        if (away < least) {
            least = away;
            nearest = arm;
        }
    }
    return nearest;
}

bool trainsTargetOf(const LineRecord& line, const Exercise& exercise)
{
    return std::ranges::any_of(exercise.shares, [&](const MuscleShare& target) {
        return target.share >= 1.0 && std::ranges::any_of(line.exercise.value.shares, [&](const MuscleShare& other) {
                   return other.muscle == target.muscle && other.share >= kCloudingShare;
               });
    });
}

// Was the muscle trained on the day on which the rating of the day after is asked for?
bool isClouded(const AthleteLog& log, const ArmSession& session)
{
    const QDate next = session.exposure->date.addDays(1);
    return std::ranges::any_of(log.lines, [&](const LineRecord& line) {
        return trainsTargetOf(line, session.line->exercise.value)
               && std::ranges::any_of(line.exposures, [&](const Exposure& exposure) {
                      return exposure.date == next && hasWorkingSet(exposure);
                  });
    });
}

std::optional<SessionSurprise> surpriseOn(const std::vector<LineSurprises>& surprises, const ArmSession& session)
{
    const auto line = std::ranges::find(surprises, session.line->id, &LineSurprises::line);
    if (line == surprises.end()) return std::nullopt;
    const auto found = std::ranges::find(line->sessions, session.exposure->date, &SessionSurprise::date);
    if (found == line->sessions.end()) return std::nullopt;
    return *found;
}

class RecordMaker {
public:
    RecordMaker(const Trial& trial, const AthleteLog& log, const std::vector<LineSurprises>& surprises, QDate asOf)
        : m_trial(&trial), m_log(&log), m_surprises(&surprises)
    {
        m_record.asOf = trial.ending && trial.ending->date < asOf ? trial.ending->date : asOf;
        if (!trial.days.empty())
            m_sessions = armSessions(trial, log, trial.days.front().date,
                                     std::min(m_record.asOf, trial.days.back().date.addDays(kMostDaysLate)));
    }

    [[nodiscard]] TrialRecord made()
    {
        for (std::size_t day = 0; day < m_trial->days.size() && m_trial->days[day].date <= m_record.asOf; ++day)
            m_record.observations.push_back(observationOf(day));
        noteUnscheduled();
        if (m_trial->ending && !m_trial->days.empty() && m_trial->ending->date < m_trial->days.back().date)
            m_record.deviations.push_back({TrialDeviation::Stopped, m_trial->ending->date, {}, {}});
        std::ranges::stable_sort(m_record.deviations, {}, &NotedDeviation::date);
        return std::move(m_record);
    }

private:
    // The last day on which a session may still be this day's.
    [[nodiscard]] QDate lastDayFor(std::size_t day) const
    {
        const QDate late = m_trial->days[day].date.addDays(kMostDaysLate);
        if (day + 1 == m_trial->days.size()) return late;
        return std::min(late, m_trial->days[day + 1].date.addDays(-1));
    }

    // Of several on one day, the one on the drawn arm's line.
    [[nodiscard]] ArmSession* sessionFor(std::size_t day)
    {
        const TrialDay& drawn = m_trial->days[day];
        const std::size_t wanted = drawn.armDone.value_or(drawn.arm);
        ArmSession* found = nullptr;
        for (ArmSession& session : m_sessions) {
            const QDate date = session.exposure->date;
            if (session.used || date < drawn.date || date > lastDayFor(day)) continue;
            if (found && date > found->exposure->date) break;
            if (!found || isLineOf(m_trial->arms[wanted], session.line->line)) found = &session;
        }
        return found;
    }

    [[nodiscard]] TrialObservation observationOf(std::size_t day)
    {
        const TrialDay& drawn = m_trial->days[day];
        TrialObservation seen;
        seen.day = day;
        seen.date = drawn.date;
        seen.block = drawn.block;
        seen.drawn = drawn.arm;
        seen.missed = drawn.missed;
        seen.done = drawn.armDone;
        ArmSession* session = drawn.missed ? nullptr : sessionFor(day);
        if (session) {
            session->used = true;
            if (!seen.done) seen.done = armOf(*m_trial, *session, drawn.arm);
            look(*session, seen);
        }
        noteDay(seen);
        return seen;
    }

    void look(const ArmSession& session, TrialObservation& seen)
    {
        const Exposure& exposure = *session.exposure;
        seen.doneOn = exposure.date;
        seen.discomfort = exposure.rating.discomfort;
        seen.workingSets = static_cast<int>(
            std::ranges::count_if(exposure.sets, [](const LoggedSet& logged) { return isWorkingSet(logged.set); }));
        const bool rated = exposure.rating.nextSoreness || exposure.rating.nextWeakness;
        const OutcomeSource source{exposure, surpriseOn(*m_surprises, session), rated && isClouded(*m_log, session)};
        for (const OutcomeKind& kind : outcomeKinds())
            if (const auto value = kind.value(source)) seen.values.push_back({kind.key, *value});
        if (source.nextDayClouded) note(TrialDeviation::Clouded, seen);
    }

    void noteDay(const TrialObservation& seen)
    {
        if (seen.done && *seen.done != seen.drawn) note(TrialDeviation::OtherArm, seen);
        if (seen.doneOn && *seen.doneOn > seen.date) note(TrialDeviation::Late, seen);
        if (seen.doneOn && seen.block > 0 && seen.workingSets != m_trial->sets) note(TrialDeviation::OtherSets, seen);
        if (seen.missed || (!seen.done && lastDayFor(seen.day) < m_record.asOf)) note(TrialDeviation::Missed, seen);
    }

    void note(TrialDeviation kind, const TrialObservation& seen)
    {
        m_record.deviations.push_back({kind, seen.doneOn.value_or(seen.date), seen.day, seen.done});
    }

    void noteUnscheduled()
    {
        for (const ArmSession& session : m_sessions) {
            if (session.used || session.exposure->date > m_trial->days.back().date) continue;
            m_record.deviations.push_back({TrialDeviation::Unscheduled,
                                           session.exposure->date,
                                           {},
                                           armOf(*m_trial, session, firstArmOn(session))});
        }
    }

    [[nodiscard]] std::size_t firstArmOn(const ArmSession& session) const
    {
        const auto found =
            std::ranges::find_if(m_trial->arms, [&](const TrialArm& arm) { return isLineOf(arm, session.line->line); });
        return static_cast<std::size_t>(found - m_trial->arms.begin());
    }

    const Trial* m_trial;
    const AthleteLog* m_log;
    const std::vector<LineSurprises>* m_surprises;
    std::vector<ArmSession> m_sessions;
    TrialRecord m_record;
};

QString deviationSentence(TrialDeviation kind, int count)
{
    switch (kind) {
    case TrialDeviation::OtherArm:
        return TrialRecordText::tr("%n session(s) were done with another arm than the drawn one.", nullptr, count);
    case TrialDeviation::Missed:
        return TrialRecordText::tr("%n session(s) were missed.", nullptr, count);
    case TrialDeviation::Late:
        return TrialRecordText::tr("%n session(s) were done later than drawn.", nullptr, count);
    case TrialDeviation::Unscheduled:
        return TrialRecordText::tr("%n session(s) on an arm's lift stood outside the trial.", nullptr, count);
    case TrialDeviation::OtherSets:
        return TrialRecordText::tr("%n session(s) had another number of sets than planned.", nullptr, count);
    case TrialDeviation::Clouded:
        return TrialRecordText::tr(
            "After %n session(s) the muscle was trained again the next day, so soreness and "
            "weakness were left out.",
            nullptr, count);
    case TrialDeviation::Stopped:
        break;
    }
    return TrialRecordText::tr("The trial was ended before its last session.");
}

}  // namespace

std::optional<double> TrialObservation::value(QStringView key) const
{
    const auto found = std::ranges::find_if(values, [&](const OutcomeValue& one) { return one.key == key; });
    if (found == values.end()) return std::nullopt;
    return found->value;
}

std::optional<int> TrialObservation::worstDiscomfort() const
{
    return std::ranges::max(discomfort);
}

const LineRecord* lineOf(const TrialArm& arm, const AthleteLog& log)
{
    const auto found =
        std::ranges::find_if(log.lines, [&](const LineRecord& line) { return isLineOf(arm, line.line); });
    return found == log.lines.end() ? nullptr : &*found;
}

std::vector<LineSurprises> trialSurprises(const Trial& trial, const AthleteLog& log,
                                          const ReadingParameters& parameters, const VerdictThresholds& thresholds,
                                          QDate asOf)
{
    if (trial.days.empty()) return {};
    std::set<Id<LiftLine>> lines;
    for (const TrialArm& arm : trial.arms)
        if (const LineRecord* line = lineOf(arm, log)) lines.insert(line->id);
    LifterTracker tracker(parameters, thresholds, log.athlete.value.experience);
    for (const Id<LiftLine> line : lines) tracker.lineToListenTo(line).keepSurprisesFrom(trial.days.front().date);
    tracker.advance(log, countLines(log, asOf), asOf);
    std::vector<LineSurprises> surprises;
    surprises.reserve(lines.size());
    for (const Id<LiftLine> line : lines) surprises.push_back({line, tracker.line(line).surprises()});
    return surprises;
}

TrialRecord trialRecord(const Trial& trial, const AthleteLog& log, const std::vector<LineSurprises>& surprises,
                        QDate asOf)
{
    return RecordMaker(trial, log, surprises, asOf).made();
}

std::vector<QString> deviationSentences(const TrialRecord& record)
{
    std::map<TrialDeviation, int> counts;
    for (const NotedDeviation& noted : record.deviations) ++counts[noted.kind];
    std::vector<QString> sentences;
    sentences.reserve(counts.size());
    for (const auto& [kind, count] : counts) sentences.push_back(deviationSentence(kind, count));
    return sentences;
}

}  // namespace steelyard
