// An exercise is done in so many ways that none of them gets a history.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct LineSwitchingText {
    Q_DECLARE_TR_FUNCTIONS(LineSwitchingText)
};

struct ExerciseSpread {
    const SnapshotLine* newest = nullptr;
    int sessions = 0;
    int most = 0;  // sessions on the line that has most
    std::vector<Evidence> lines;
};

// A session that a trial asked for changes the line on purpose.
bool isOfATrial(const AthleteLog& log, const LiftLine& lift, QDate date)
{
    return std::ranges::any_of(log.trials, [&](const Row<Trial>& row) {
        return dayOfTrial(row.value, date) && std::ranges::any_of(row.value.arms, [&](const TrialArm& arm) {
                   return arm.variant == lift.variant && arm.grip == lift.grip && arm.standard == lift.standard;
               });
    });
}

// By exercise: how the sessions since `from` spread over its lines.
std::map<Id<Exercise>, ExerciseSpread> spreadSince(const ReviewSnapshot& snapshot, QDate from)
{
    std::map<Id<Exercise>, ExerciseSpread> spreads;
    for (const SnapshotLine& line : snapshot.lines) {
        int sessions = 0;
        for (const CountedExposure& exposure : line.counted)
            if (exposure.point.date > from && exposure.point.workSets > 0
                && !isOfATrial(snapshot.log, line.record->line, exposure.point.date))
                ++sessions;
        if (sessions == 0) continue;
        ExerciseSpread& spread = spreads[line.record->exercise.id];
        spread.sessions += sessions;
        spread.most = std::max(spread.most, sessions);
        spread.lines.push_back({*line.lastTrained, LineSwitchingText::tr("sessions: %1").arg(lineName(*line.record)),
                                static_cast<double>(sessions)});
        if (!spread.newest || line.lastTrained > spread.newest->lastTrained) spread.newest = &line;
    }
    return spreads;
}

class LineSwitchingRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("line_switching"); }
    QString title() const override { return LineSwitchingText::tr("Too many ways"); }
    QString explanation() const override
    {
        return LineSwitchingText::tr(
            "Variant, grip or standard change so often that no lift line has enough sessions for a "
            "trend. Changing on purpose is fine; a comparison or one way kept for some weeks says "
            "more.");
    }
    Concern concern() const override { return Concern::Unreadable; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("lines"), LineSwitchingText::tr("Ways of one exercise, at least"),
                 LineSwitchingText::tr("lines"), 3, 2, 10, LineSwitchingText::tr("Our convention.")},
                {QStringLiteral("weeks"), LineSwitchingText::tr("Looks back"), LineSwitchingText::tr("weeks"), 8, 4, 26,
                 LineSwitchingText::tr("Our convention: the span in which a line counts as trained lately.")},
                {QStringLiteral("enough_sessions"), LineSwitchingText::tr("None of them with"),
                 LineSwitchingText::tr("sessions"), 5, 3, 20,
                 LineSwitchingText::tr("The fewest sessions a trend is read from.")},
                worseParameter(LineSwitchingText::tr("lines"), 2, 1, 10)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (auto& [exercise, spread] : spreadSince(snapshot, snapshot.asOf.addDays(-7 * limits.whole(u"weeks")))) {
            const int enough = limits.whole(u"enough_sessions");
            if (std::ssize(spread.lines) < limits.whole(u"lines") || spread.sessions < enough || spread.most >= enough)
                continue;
            std::ranges::stable_sort(spread.lines, {}, &Evidence::date);
            flags.push_back(
                {id(),
                 spread.newest->record->id,
                 Severity::Medium,
                 LineSwitchingText::tr("%1: %2 sessions in %3 weeks were done in %4 different ways, so none of them "
                                       "can be compared with the one before.")
                     .arg(spread.newest->record->exercise.value.name, QString::number(spread.sessions),
                          QString::number(limits.whole(u"weeks")), QString::number(spread.lines.size())),
                 spread.lines,
                 {QStringLiteral("keep_line"), QStringLiteral("start_trial"), QStringLiteral("retest_standard")},
                 measured(static_cast<double>(spread.lines.size()), limits)});
        }
    }
};

}  // namespace

const FlagRule& lineSwitchingRule();
const FlagRule& lineSwitchingRule()
{
    static const LineSwitchingRule rule;
    return rule;
}

}  // namespace steelyard
