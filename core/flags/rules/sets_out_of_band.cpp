// A muscle gets fewer or more sets a week than the coach wants for this lifter.
#include "core/flags/rule_support.h"
#include "core/analysis/weekly_sets.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct SetsOutOfBandText {
    Q_DECLARE_TR_FUNCTIONS(SetsOutOfBandText)
};

// Half of the least or half as much again as the most is more than a passing matter. Convention.
constexpr double kFar = 0.5;

bool isEasySet(const LoggedSet& logged)
{
    return logged.set.kind == SetKind::Deload;
}

// An easy week, by plan or by what was done, or a week without training isn't what the band is for.
bool isUsualSpan(const ReviewSnapshot& snapshot, QDate first, int weeks)
{
    const AthleteLog& log = snapshot.log;
    for (int week = 0; week < weeks; ++week) {
        const QDate from = first.addDays(7 * week);
        const QDate to = from.addDays(6);
        const auto inWeek = [&](QDate day) { return day >= from && day <= to; };
        if (std::ranges::none_of(log.sessionDates, inWeek)) return false;
        for (const Row<Block>& block : log.blocks)
            for (const QDate day : {from, to})
                if (const auto at = weekOfBlock(block.value, day))
                    if (block.value.weeks[*at].kind != WeekKind::Normal) return false;
        for (const LineRecord& line : log.lines)
            for (const Exposure& exposure : line.exposures)
                if (inWeek(exposure.date) && std::ranges::any_of(exposure.sets, isEasySet)) return false;
    }
    return true;
}

class SetsOutOfBandRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("sets_out_of_band"); }
    QString title() const override { return SetsOutOfBandText::tr("Weekly sets"); }
    QString explanation() const override
    {
        return SetsOutOfBandText::tr(
            "The working sets a week of a muscle are outside the band set for this lifter. A set counts fully for the "
            "target "
            "and by its share for helpers. Weeks with an easy week, a test week or no training aren't judged.");
    }
    Concern concern() const override { return Concern::Housekeeping; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("weeks"), SetsOutOfBandText::tr("Mean of the last"), SetsOutOfBandText::tr("weeks"), 3,
                 1, 12, SetsOutOfBandText::tr("Our convention.")},
                {QStringLiteral("tolerance"), SetsOutOfBandText::tr("Lets pass"),
                 SetsOutOfBandText::tr("% beyond the band"), 10, 0, 50,
                 SetsOutOfBandText::tr(
                     "Our convention. The bands are the coach's own; helpers count by their share (Pelland "
                     "et al. 2025, Sports Med, doi 10.1007/s40279-025-02344-w).")},
                worseParameter(SetsOutOfBandText::tr("sets a week beyond the band"), 3, 1, 20)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const AthleteLog& log = snapshot.log;
        const int weeks = limits.whole(u"weeks");
        const QDate first = snapshot.asOf.addDays(1 - 7 * weeks);
        if (log.athlete.value.aims.empty() || !isUsualSpan(snapshot, first, weeks)) return;
        const auto sets = muscleSets(log, first, snapshot.asOf);
        const double tolerance = limits.value(u"tolerance") / 100;
        QStringList low;
        QStringList high;
        Flag flag{id(), {}, Severity::Low, {}, {}, {}};
        double beyond = 0;
        for (const MuscleAim& aim : log.athlete.value.aims) {
            const auto found = sets.find(aim.muscle);
            const double weekly = found == sets.end() ? 0 : found->second / weeks;
            const bool under = weekly < aim.weeklySetsLow * (1 - tolerance);
            const bool over = weekly > aim.weeklySetsHigh * (1 + tolerance);
            if (!under && !over) continue;
            beyond = std::max(beyond, under ? aim.weeklySetsLow - weekly : weekly - aim.weeklySetsHigh);
            const QString muscle = log.muscleName(aim.muscle);
            const QString band = SetsOutOfBandText::tr("%1–%2").arg(aim.weeklySetsLow).arg(aim.weeklySetsHigh);
            (under ? low : high)
                .append(SetsOutOfBandText::tr("%1 %2 (%3)", "muscle, sets a week, wanted band")
                            .arg(muscle, snapshot.wording.number(weekly), band));
            flag.evidence.push_back(
                {snapshot.asOf, SetsOutOfBandText::tr("sets a week of %1; wanted: %2").arg(muscle, band), weekly});
            if (weekly < aim.weeklySetsLow * kFar || weekly > aim.weeklySetsHigh * (1 + kFar))
                flag.severity = Severity::Medium;
        }
        if (flag.evidence.empty()) return;
        flag.measure = measured(beyond, limits);
        QStringList parts;
        if (!low.isEmpty()) parts << SetsOutOfBandText::tr("too few for %1").arg(low.join(QStringLiteral(", ")));
        if (!high.isEmpty()) parts << SetsOutOfBandText::tr("too many for %1").arg(high.join(QStringLiteral(", ")));
        flag.sentence = SetsOutOfBandText::tr("Sets a week over the last %n week(s): %1.", nullptr, weeks)
                            .arg(parts.join(QStringLiteral("; ")));
        if (!low.isEmpty()) flag.actions << QStringLiteral("add_set");
        if (!high.isEmpty()) flag.actions << QStringLiteral("drop_set");
        flags.push_back(std::move(flag));
    }
};

}  // namespace

const FlagRule& setsOutOfBandRule();
const FlagRule& setsOutOfBandRule()
{
    static const SetsOutOfBandRule rule;
    return rule;
}

}  // namespace steelyard
