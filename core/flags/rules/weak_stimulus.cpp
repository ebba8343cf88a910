// The lifter feels the target in none of the ways in which it could be felt.
#include "core/flags/rule_support.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct WeakStimulusText {
    Q_DECLARE_TR_FUNCTIONS(WeakStimulusText)
};

constexpr std::size_t kLeastOfAKind = 3;  // ratings of one kind that make a median

struct Stimulus {
    double strongest = 0;  // of the medians
    int kinds = 0;
};

// Heavy sets are felt as tension, light ones as burn, some only as pump after; the strongest counts. Soreness isn't asked.
Stimulus stimulusOf(const std::vector<const Exposure*>& rated)
{
    Stimulus out;
    for (const auto kind : {&ExerciseRating::tension, &ExerciseRating::burn, &ExerciseRating::pump}) {
        std::vector<double> values;
        for (const Exposure* one : rated)
            if (const auto& value = one->rating.*kind) values.push_back(*value);
        if (values.size() < kLeastOfAKind) continue;
        out.strongest = std::max(out.strongest, *median(std::move(values)));
        ++out.kinds;
    }
    return out;
}

class WeakStimulusRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("weak_stimulus"); }
    QString title() const override { return WeakStimulusText::tr("Weak stimulus"); }
    QString explanation() const override
    {
        return WeakStimulusText::tr(
            "Tension, burn and pump in the target are all rated low, session after session. Ratings are one lifter's "
            "own "
            "and only compare with the same lifter's; where all of them stay low, another way of doing it is worth a "
            "trial. "
            "Soreness isn't needed.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("at_most"), WeakStimulusText::tr("Strongest of the three, at most"),
                 WeakStimulusText::tr("of 10"), 3, 1, 7, WeakStimulusText::tr("Our convention.")},
                {QStringLiteral("ratings"), WeakStimulusText::tr("Speaks from"), WeakStimulusText::tr("rated sessions"),
                 4, 3, 20, WeakStimulusText::tr("Our convention: fewer may be a bad day.")},
                {QStringLiteral("weeks"), WeakStimulusText::tr("Looks back"), WeakStimulusText::tr("weeks"), 8, 3, 26,
                 WeakStimulusText::tr("Our convention.")},
                worseParameter(WeakStimulusText::tr("of 10"), 1, 1, 5)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            const auto rated = exposuresSince(snapshot, line, limits.whole(u"weeks"),
                                              [](const Exposure& one) { return one.rating.felt().has_value(); });
            if (std::ssize(rated) < limits.whole(u"ratings")) continue;
            const Stimulus stimulus = stimulusOf(rated);
            // One kind alone doesn't say that nothing is felt.
            if (stimulus.kinds < 2 || stimulus.strongest > limits.value(u"at_most")) continue;
            Flag flag{id(),
                      line.record->id,
                      Severity::Low,
                      {},
                      {},
                      {QStringLiteral("start_trial"), QStringLiteral("change_grip"), QStringLiteral("change_variant"),
                       QStringLiteral("change_band"), QStringLiteral("harder_sets")}};
            flag.measure = measured(10 - stimulus.strongest, limits);
            flag.sentence = WeakStimulusText::tr(
                                "%1: tension, burn and pump in the target stay at %2 of 10 or less over "
                                "%3 rated sessions.")
                                .arg(lineName(*line.record), snapshot.wording.number(stimulus.strongest, 0),
                                     QString::number(rated.size()));
            for (const Exposure* one : rated)
                flag.evidence.push_back({one->date, WeakStimulusText::tr("strongest of tension, burn and pump, 0–10"),
                                         1.0 * *one->rating.felt()});
            flags.push_back(std::move(flag));
        }
    }
};

}  // namespace

const FlagRule& weakStimulusRule();
const FlagRule& weakStimulusRule()
{
    static const WeakStimulusRule rule;
    return rule;
}

}  // namespace steelyard
