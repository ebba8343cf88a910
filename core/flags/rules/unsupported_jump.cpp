// A jump in load that the repetitions before, or those of the day, don't support.
#include "core/flags/entry_doubts.h"
#include "core/flags/rule_support.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct UnsupportedJumpText {
    Q_DECLARE_TR_FUNCTIONS(UnsupportedJumpText)
};

constexpr std::size_t kSessionsBefore = 3;

// The heaviest ordinary working set of a session. Test sets are meant to be heavy.
struct HeavySet {
    QDate date;
    const SetEntry* set = nullptr;
    double movedKg = 0;
    const CountedExposure* counted = nullptr;
};

std::vector<HeavySet> heaviestSets(const SnapshotLine& line, const AthleteLog& log)
{
    const Loading loading = line.record->variant.value.loading;
    std::vector<HeavySet> heavy;
    std::size_t place = 0;
    for (const Exposure& exposure : line.record->exposures) {
        while (place < line.counted.size() && line.counted[place].point.date < exposure.date) ++place;
        const auto bodyKg = bodyPartKg(loading, log.bodyMass, exposure.date);
        if (place == line.counted.size() || line.counted[place].point.date != exposure.date || !bodyKg) continue;
        HeavySet heaviest{exposure.date, nullptr, 0, &line.counted[place]};
        for (const LoggedSet& logged : exposure.sets) {
            const double moved = systemKg(loading, logged.set.load.kilograms(), *bodyKg);
            if (logged.set.kind != SetKind::Work || (heaviest.set && moved <= heaviest.movedKg)) continue;
            heaviest.set = &logged.set;
            heaviest.movedKg = moved;
        }
        if (heaviest.set && heaviest.movedKg > 0) heavy.push_back(heaviest);
    }
    return heavy;
}

double medianMoved(const std::vector<HeavySet>& heavy, std::size_t end)
{
    std::vector<double> moved;
    for (std::size_t i = end - kSessionsBefore; i < end; ++i) moved.push_back(heavy[i].movedKg);
    return *median(std::move(moved));
}

// By how much the day's estimate is above those before; absent when effort is unknown on either side.
std::optional<double> claimedGain(const std::vector<HeavySet>& heavy, std::size_t at)
{
    std::vector<double> before;
    for (std::size_t i = at - kSessionsBefore; i < at; ++i)
        if (heavy[i].counted->estimate) before.push_back(heavy[i].counted->estimate->lnSystem);
    const auto level = median(std::move(before));
    if (!level || !heavy[at].counted->estimate) return std::nullopt;
    return std::expm1(heavy[at].counted->estimate->lnSystem - *level);
}

class UnsupportedJumpRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("unsupported_jump"); }
    QString title() const override { return UnsupportedJumpText::tr("Unsupported jump"); }
    QString explanation() const override
    {
        return UnsupportedJumpText::tr(
            "The load went up by more than is usual at once, and the repetitions were off standard, "
            "fell under the rep band at the limit, or claim far more strength than the sessions "
            "before.");
    }
    Concern concern() const override { return Concern::Unreadable; }
    bool isAboutEvents() const override { return true; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("percent"), UnsupportedJumpText::tr("Load up by more than"),
                 UnsupportedJumpText::tr("% of the load"), 10, 2, 50,
                 UnsupportedJumpText::tr("Raise the load by 2 to 10 % (Ratamess et al. 2009, MSSE 41(3):687–708).")},
                {QStringLiteral("gain"), UnsupportedJumpText::tr("Claims more than"),
                 UnsupportedJumpText::tr("% of capacity"), 10, 3, 50,
                 UnsupportedJumpText::tr(
                     "Two tests differ by up to about 10 % without any change (from a retest variation of "
                     "4.2 %; Grgic et al. 2020, Sports Med Open 6:31).")},
                {QStringLiteral("days"), UnsupportedJumpText::tr("Looks back"), UnsupportedJumpText::tr("days"), 21, 7,
                 90, UnsupportedJumpText::tr("Our convention.")}};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const QDate from = snapshot.asOf.addDays(-limits.whole(u"days"));
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            const auto heavy = heaviestSets(line, snapshot.log);
            const auto doubts = doubtfulEntries(line, from, snapshot.asOf);
            for (std::size_t i = heavy.size(); i-- > kSessionsBefore;) {  // the newest one says it
                if (heavy[i].date <= from || heavy[i].date > snapshot.asOf) continue;
                // What is most likely a slip of the pen has a rule of its own.
                if (std::ranges::find(doubts, heavy[i].date, &EntryDoubt::date) != doubts.end()) continue;
                if (auto flag = checkJump(snapshot, line, heavy, i, limits)) {
                    flags.push_back(std::move(*flag));
                    break;
                }
            }
        }
    }

private:
    std::optional<Flag> checkJump(const ReviewSnapshot& snapshot, const SnapshotLine& line,
                                  const std::vector<HeavySet>& heavy, std::size_t at,
                                  const RuleParameters& limits) const
    {
        const HeavySet& now = heavy[at];
        const double before = medianMoved(heavy, at);
        const double rise = now.movedKg - before;
        const auto& step = line.record->variant.value.step;
        // A coarse row of dumbbells leaves no smaller jump than one step.
        if (100 * rise / before <= limits.value(u"percent") || (step && rise <= step->kilograms() * 1.001))
            return std::nullopt;
        const QString reason = reasonAgainst(line, heavy, at, limits, snapshot.wording);
        if (reason.isEmpty()) return std::nullopt;
        Flag flag{id(),
                  line.record->id,
                  Severity::Medium,
                  {},
                  {},
                  {QStringLiteral("hold_load"), QStringLiteral("retest_standard"), QStringLiteral("film_check")}};
        flag.sentence = UnsupportedJumpText::tr("%1: the load went up by %2 % on %3, and %4.")
                            .arg(lineName(*line.record), snapshot.wording.number(100 * rise / before, 0),
                                 snapshot.wording.day(now.date), reason);
        for (std::size_t i = at - kSessionsBefore; i <= at; ++i)
            flag.evidence.push_back({heavy[i].date,
                                     UnsupportedJumpText::tr("heaviest working set in %1 (%2 counted)")
                                         .arg(snapshot.unitText(), QString::number(heavy[i].set->countedReps())),
                                     snapshot.massIn(heavy[i].set->load.kilograms())});
        return flag;
    }

    static QString reasonAgainst(const SnapshotLine& line, const std::vector<HeavySet>& heavy, std::size_t at,
                                 const RuleParameters& limits, const Wording& wording)
    {
        const SetEntry& set = *heavy[at].set;
        if (heavy[at].counted->point.offStandard)
            return UnsupportedJumpText::tr("%1 % of the watched repetitions were off standard")
                .arg(wording.number(100 * heavy[at].counted->offShare().value_or(0), 0));
        const auto reserve = reserveOf(set);
        if (reserve && *reserve < 1 && set.countedReps() < line.record->variant.value.band.low)
            return UnsupportedJumpText::tr("only %n repetition(s) counted at the limit", nullptr, set.countedReps());
        const auto gain = claimedGain(heavy, at);
        if (gain && 100 * *gain > limits.value(u"gain"))
            return UnsupportedJumpText::tr("the set claims %1 % more strength than the sessions before")
                .arg(wording.number(100 * *gain, 0));
        return {};
    }
};

}  // namespace

const FlagRule& unsupportedJumpRule();
const FlagRule& unsupportedJumpRule()
{
    static const UnsupportedJumpRule rule;
    return rule;
}

}  // namespace steelyard
