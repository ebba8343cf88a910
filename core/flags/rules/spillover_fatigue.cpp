// Work that was swung or loads the back comes shortly before a day that needs the back.
#include "core/flags/rule_support.h"
#include "core/analysis/counting.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>
#include <numeric>

namespace steelyard {
namespace {

struct SpilloverFatigueText {
    Q_DECLARE_TR_FUNCTIONS(SpilloverFatigueText)
};

// What a day asked of the back, and how its back-loading lifts came out.
struct BackDay {
    int swung = 0;               // repetitions swung on lifts that don't load the back by themselves
    int backSets = 0;            // working sets of lifts that load it highly
    QString backLift;            // one of those
    std::vector<double> errors;  // of those: above what was expected, in standard deviations
};

std::map<QDate, BackDay> backDays(const ReviewSnapshot& snapshot, QDate from)
{
    std::map<QDate, BackDay> days;
    for (const SnapshotLine& line : snapshot.lines) {
        const bool loadsBack = line.record->variant.value.backLoading == BackLoading::High;
        for (const Exposure& exposure : line.record->exposures) {
            if (exposure.date <= from || exposure.date > snapshot.asOf) continue;
            BackDay& day = days[exposure.date];
            for (const LoggedSet& logged : exposure.sets) {
                if (!isWorkingSet(logged.set)) continue;
                if (!loadsBack) day.swung += logged.set.marks.of(Mark::Swing);
                if (!loadsBack) continue;
                ++day.backSets;
                day.backLift = line.record->exercise.value.name;
            }
        }
        if (!loadsBack) continue;
        for (const SessionSurprise& one : line.reading.surprises)
            if (one.date > from && one.date <= snapshot.asOf) days[one.date].errors.push_back(one.errorSds);
    }
    return days;
}

// A day on which the back was needed soon after it had been used.
struct Spillover {
    QDate before;
    QDate day;
    int swung = 0;
    int backSets = 0;
    std::vector<double> errors;
};

class SpilloverFatigueRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("spillover_fatigue"); }
    QString title() const override { return SpilloverFatigueText::tr("Back carried over"); }
    QString explanation() const override
    {
        return SpilloverFatigueText::tr(
            "Repetitions swung with hips and back, or lifts that load the back highly, came shortly before a day that "
            "needs the back. What is swung up is paid for there: the next back-loading lifts come out lower. For "
            "ordinary "
            "back work this speaks only when they did.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("swung"), SpilloverFatigueText::tr("Speaks from"),
                 SpilloverFatigueText::tr("swung repetitions in a session"), 5, 1, 50,
                 SpilloverFatigueText::tr("Common practice; the number is our convention.")},
                {QStringLiteral("days_apart"), SpilloverFatigueText::tr("Days that are near each other"),
                 SpilloverFatigueText::tr("days"), 2, 1, 4,
                 SpilloverFatigueText::tr("Our convention: two days is about what hard work takes to settle.")},
                {QStringLiteral("times"), SpilloverFatigueText::tr("So many times"), SpilloverFatigueText::tr("times"),
                 2, 1, 10, SpilloverFatigueText::tr("Our convention: once is chance.")},
                {QStringLiteral("shortfall"), SpilloverFatigueText::tr("Came out lower by"),
                 SpilloverFatigueText::tr("standard deviations of a set"), 0.5, 0.2, 3,
                 SpilloverFatigueText::tr("Our convention.")},
                {QStringLiteral("weeks"), SpilloverFatigueText::tr("Looks back"), SpilloverFatigueText::tr("weeks"), 4,
                 2, 8, SpilloverFatigueText::tr("Our convention.")},
                worseParameter(SpilloverFatigueText::tr("times"), 2, 1, 10)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const auto days = backDays(snapshot, snapshot.asOf.addDays(-7 * limits.whole(u"weeks")));
        std::vector<Spillover> swung;
        std::vector<Spillover> loaded;
        QString lift;
        for (auto day = days.begin(); day != days.end(); ++day) {
            if (day->second.backSets == 0 || day == days.begin()) continue;
            const auto& [before, earlier] = *std::prev(day);
            if (before.daysTo(day->first) > limits.whole(u"days_apart")) continue;
            const Spillover one{before, day->first, earlier.swung, earlier.backSets, day->second.errors};
            if (earlier.swung >= limits.whole(u"swung"))
                swung.push_back(one);
            else if (earlier.backSets > 0)
                loaded.push_back(one);
            else
                continue;
            lift = day->second.backLift;
        }
        const auto times = static_cast<std::size_t>(limits.whole(u"times"));
        const auto before = flags.size();
        const auto isShort = [&](const std::vector<Spillover>& all) {
            const auto mean = meanError(all);
            return mean && *mean <= -limits.value(u"shortfall");
        };
        if (swung.size() >= times)
            flags.push_back(flagOf(snapshot, swung, true, isShort(swung), lift));
        else if (loaded.size() >= times && isShort(loaded))
            flags.push_back(flagOf(snapshot, loaded, false, true, lift));
        if (flags.size() > before)
            flags.back().measure = measured(static_cast<double>(flags.back().evidence.size()), limits);
    }

private:
    static std::optional<double> meanError(const std::vector<Spillover>& all)
    {
        std::vector<double> errors;
        for (const Spillover& one : all) errors.insert(errors.end(), one.errors.begin(), one.errors.end());
        if (errors.empty()) return std::nullopt;
        return std::accumulate(errors.begin(), errors.end(), 0.0) / static_cast<double>(errors.size());
    }

    Flag flagOf(const ReviewSnapshot& snapshot, const std::vector<Spillover>& all, bool swung, bool isShort,
                const QString& lift) const
    {
        Flag flag{id(), {}, swung && isShort ? Severity::Medium : Severity::Low,
                  {},   {}, {QStringLiteral("move_day"), QStringLiteral("drop_set")}};
        const QString what = swung ? SpilloverFatigueText::tr("repetitions were swung up with hips and back")
                                   : SpilloverFatigueText::tr("the back was loaded highly");
        flag.sentence = SpilloverFatigueText::tr("%n time(s) in the last weeks %1 shortly before %2.", nullptr,
                                                 static_cast<int>(all.size()))
                            .arg(what, lift);
        if (isShort) flag.sentence += u' ' + SpilloverFatigueText::tr("Those lifts came out lower than expected.");
        if (swung) flag.actions.prepend(QStringLiteral("retest_standard"));
        for (const Spillover& one : all)
            flag.evidence.push_back(
                {one.before,
                 swung ? SpilloverFatigueText::tr("swung repetitions before %1").arg(snapshot.wording.day(one.day))
                       : SpilloverFatigueText::tr("back-loading sets before %1").arg(snapshot.wording.day(one.day)),
                 static_cast<double>(swung ? one.swung : one.backSets)});
        return flag;
    }
};

}  // namespace

const FlagRule& spilloverFatigueRule();
const FlagRule& spilloverFatigueRule()
{
    static const SpilloverFatigueRule rule;
    return rule;
}

}  // namespace steelyard
