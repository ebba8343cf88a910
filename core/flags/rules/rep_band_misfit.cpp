// This lifter feels the target better with other numbers of repetitions than the ones that are done now.
#include "core/flags/rule_support.h"
#include "core/analysis/rep_band_split.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct RepBandMisfitText {
    Q_DECLARE_TR_FUNCTIONS(RepBandMisfitText)
};

constexpr std::size_t kSessionsOfNow = 3;  // that say which band is the present one

struct RatedBands {
    RatingsByBand bands;
    std::optional<std::size_t> now;  // the last sessions were all in it
    QDate last;
};

RatedBands ratedBands(const ReviewSnapshot& snapshot, const SnapshotLine& line, int weeks)
{
    RatedBands out;
    std::vector<std::size_t> order;
    for (const Exposure* one : exposuresSince(snapshot, line, weeks, [](const Exposure&) { return true; })) {
        const auto reps = leadingReps(*one);
        if (!reps) continue;
        const std::size_t at = usualBandOf(*reps);
        order.push_back(at);
        out.last = one->date;
        out.bands.at(at).add(one->rating);
    }
    if (order.size() >= kSessionsOfNow
        && std::all_of(order.end() - kSessionsOfNow, order.end(), [&](std::size_t at) { return at == order.back(); }))
        out.now = order.back();
    return out;
}

class RepBandMisfitRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("rep_band_misfit"); }
    QString title() const override { return RepBandMisfitText::tr("Rep band"); }
    QString explanation() const override
    {
        return RepBandMisfitText::tr(
            "In the repetitions done now the target seldom gives out first or is felt little, while sessions of the "
            "same "
            "line with other repetitions were rated better. No band is best for everyone; growth is about the same "
            "from "
            "five to thirty when effort is high.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        return {
            {QStringLiteral("ratings"), RepBandMisfitText::tr("Compares from"),
             RepBandMisfitText::tr("rated sessions in each band"), 4, 2, 12, RepBandMisfitText::tr("Our convention.")},
            {QStringLiteral("felt_more"), RepBandMisfitText::tr("Felt more by"), RepBandMisfitText::tr("of 10"), 2, 1,
             6, RepBandMisfitText::tr("Our convention: a difference that isn't a matter of mood.")},
            {QStringLiteral("percent_more"), RepBandMisfitText::tr("Target gave out more often by"),
             RepBandMisfitText::tr("% of sessions in which the target gave out"), 40, 10, 100,
             RepBandMisfitText::tr("Our convention.")},
            {QStringLiteral("weeks"), RepBandMisfitText::tr("Looks back"), RepBandMisfitText::tr("weeks"), 26, 8, 104,
             RepBandMisfitText::tr("Our convention.")},
            worseParameter(RepBandMisfitText::tr("of 10"), 2, 1, 6)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            const RatedBands rated = ratedBands(snapshot, line, limits.whole(u"weeks"));
            if (!rated.now || !rated.bands[*rated.now].knows(limits.whole(u"ratings"))) continue;
            if (const auto better = betterBand(rated, limits)) {
                flags.push_back(flagOf(snapshot, line, rated, *better));
                flags.back().measure = measured(10 - rated.bands[*rated.now].strength(), limits);
            }
        }
    }

private:
    // Better in one respect by enough, and not worse in the other; of several the one that is felt most.
    static std::optional<std::size_t> betterBand(const RatedBands& rated, const RuleParameters& limits)
    {
        const BandRatings& now = rated.bands[*rated.now];
        std::optional<std::size_t> best;
        for (std::size_t at = 0; at < kUsualBands.size(); ++at) {
            const BandRatings& other = rated.bands[at];
            if (at == *rated.now || !other.knows(limits.whole(u"ratings"))) continue;
            const double felt = other.strength() - now.strength();
            const double target = 100 * (other.targetShare() - now.targetShare());
            const bool better = felt >= limits.value(u"felt_more") || target >= limits.value(u"percent_more");
            if (!better || felt < 0 || target < 0) continue;
            if (!best || other.strength() > rated.bands[*best].strength()) best = at;
        }
        return best;
    }

    Flag flagOf(const ReviewSnapshot& snapshot, const SnapshotLine& line, const RatedBands& rated,
                std::size_t better) const
    {
        Flag flag{id(),
                  line.record->id,
                  Severity::Low,
                  {},
                  {},
                  {QStringLiteral("change_band"), QStringLiteral("start_trial")}};
        flag.sentence = RepBandMisfitText::tr(
                            "%1: with %2 repetitions the target is felt at %3 of 10 and gives out first in "
                            "%4 % of the sessions; with %5 it was %6 and %7 %.")
                            .arg(lineName(*line.record), usualBandText(*rated.now),
                                 snapshot.wording.number(rated.bands[*rated.now].strength(), 0),
                                 snapshot.wording.number(100 * rated.bands[*rated.now].targetShare(), 0),
                                 usualBandText(better), snapshot.wording.number(rated.bands[better].strength(), 0),
                                 snapshot.wording.number(100 * rated.bands[better].targetShare(), 0));
        for (const std::size_t at : {*rated.now, better}) {
            flag.evidence.push_back({rated.last,
                                     RepBandMisfitText::tr("felt at %1 repetitions, 0–10").arg(usualBandText(at)),
                                     rated.bands[at].strength()});
            flag.evidence.push_back(
                {rated.last, RepBandMisfitText::tr("target gave out first at %1 repetitions, %").arg(usualBandText(at)),
                 100 * rated.bands[at].targetShare()});
        }
        return flag;
    }
};

}  // namespace

const FlagRule& repBandMisfitRule();
const FlagRule& repBandMisfitRule()
{
    static const RepBandMisfitRule rule;
    return rule;
}

}  // namespace steelyard
