// Something other than the target muscle gives out first.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

struct WrongLimiterText {
    Q_DECLARE_TR_FUNCTIONS(WrongLimiterText)
};

// Above so many repetitions a grip or forearm often gives out first. Common practice.
constexpr int kManyReps = 20;
constexpr int kLeastOthers = 3;  // two may be chance

class WrongLimiterRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("wrong_limiter"); }
    QString title() const override { return WrongLimiterText::tr("Wrong limiter"); }
    QString explanation() const override
    {
        return WrongLimiterText::tr(
            "After most sessions the lifter says that something other than the target gave out first. The set then "
            "ends "
            "before the target has had enough, and progress on the line says little about it. Another grip, variant or "
            "rep band may suit this lifter better; none is best for everyone.");
    }
    Concern concern() const override { return Concern::Unreadable; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("ratings"), WrongLimiterText::tr("Speaks from"), WrongLimiterText::tr("rated sessions"),
                 5, 3, 20, WrongLimiterText::tr("Our convention: fewer may be a bad day.")},
                {QStringLiteral("percent"), WrongLimiterText::tr("Something else in, at least"),
                 WrongLimiterText::tr("% of them"), 50, 20, 100, WrongLimiterText::tr("Our convention: half or more.")},
                {QStringLiteral("weeks"), WrongLimiterText::tr("Looks back"), WrongLimiterText::tr("weeks"), 8, 3, 26,
                 WrongLimiterText::tr("Our convention.")},
                worseParameter(WrongLimiterText::tr("% of them"), 25, 5, 60)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            const auto rated = exposuresSince(snapshot, line, limits.whole(u"weeks"),
                                              [](const Exposure& one) { return !one.rating.gaveOut.isEmpty(); });
            if (std::ssize(rated) < limits.whole(u"ratings")) continue;
            std::map<QString, int> others;
            int other = 0;
            for (const Exposure* one : rated)
                if (one->rating.gaveOut != kTargetGaveOut) {
                    ++others[one->rating.gaveOut];
                    ++other;
                }
            if (other < kLeastOthers || 100.0 * other < limits.value(u"percent") * static_cast<double>(rated.size()))
                continue;
            flags.push_back(flagOf(snapshot, line, rated, others, other));
            flags.back().measure = measured(100.0 * other / static_cast<double>(rated.size()), limits);
        }
    }

private:
    Flag flagOf(const ReviewSnapshot& snapshot, const SnapshotLine& line, const std::vector<const Exposure*>& rated,
                const std::map<QString, int>& others, int other) const
    {
        const auto most = std::ranges::max_element(others, {}, &std::pair<const QString, int>::second);
        Flag flag{id(),
                  line.record->id,
                  other == static_cast<int>(rated.size()) ? Severity::Medium : Severity::Low,
                  {},
                  {},
                  {QStringLiteral("start_trial"), QStringLiteral("change_grip"), QStringLiteral("change_variant"),
                   QStringLiteral("change_band")}};
        flag.sentence = WrongLimiterText::tr(
                            "%1: in %2 of the last %3 rated sessions something other than the target gave "
                            "out first, mostly: %4.")
                            .arg(lineName(*line.record), QString::number(other), QString::number(rated.size()),
                                 nameOf(snapshot.log, most->first));
        const auto last = line.lastWorking(rated.size());
        const bool manyReps =
            std::ranges::all_of(last, [](const CountedExposure* one) { return one->point.countedReps > kManyReps; });
        if (manyReps)
            flag.sentence += u' '
                             + WrongLimiterText::tr(
                                   "Sets of more than %1 repetitions often end that way; a lower rep band "
                                   "is the first thing to try.")
                                   .arg(kManyReps);
        if (manyReps) flag.actions.move(flag.actions.size() - 1, 0);
        for (const Exposure* one : rated)
            flag.evidence.push_back(
                {one->date, WrongLimiterText::tr("gave out first: %1").arg(nameOf(snapshot.log, one->rating.gaveOut)),
                 one->rating.gaveOut == kTargetGaveOut ? 0.0 : 1.0});
        return flag;
    }

    static QString nameOf(const AthleteLog& log, const QString& key)
    {
        if (key == kTargetGaveOut) return WrongLimiterText::tr("the target");
        const QString name = log.muscleName(QStringView(key));
        return name.isEmpty() ? key : name;
    }
};

}  // namespace

const FlagRule& wrongLimiterRule();
const FlagRule& wrongLimiterRule()
{
    static const WrongLimiterRule rule;
    return rule;
}

}  // namespace steelyard
