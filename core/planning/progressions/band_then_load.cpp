// Repetitions first: more of them until the band is full, then the next load. A convention of the trade without one author.
//
// By the record alone:
//   every planned set reached the band's top with the planned reserve (or the reserve is unknown)
//                                                        -> the next load, aim at the band's low end
//   most sets under the band's low end, twice running at this load -> offer one step down
//   otherwise                                            -> same load, one more repetition where reserve allows
// By the forecast the band is full, too, when its top is likely enough in the first set; and the next load is taken only when the
// band's low end is likely enough there, else repetitions go on over the top.
#include "core/planning/progression_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct BandThenLoadText {
    Q_DECLARE_TR_FUNCTIONS(BandThenLoadText)
};

QString largeStep(const ProgressionInput& input, const Load& from, const Load& to)
{
    const double cost = repCostOfStep(from.mass(), to.mass(), input.band.high);
    return BandThenLoadText::tr("The step is large for this load: expect about %n repetition(s) fewer.", nullptr,
                                static_cast<int>(std::lround(cost)));
}

NextStep bandFull(const ProgressionInput& input, const LastDone& last, const std::optional<Load>& harder)
{
    if (!harder)
        return {
            last.load, std::vector<int>(last.planned, input.band.high), StepKind::Hold,
            BandThenLoadText::tr("Every set reached the top of the band, but there is no harder load to set here.")};
    QString why = BandThenLoadText::tr(
        "Every set reached %n counted repetition(s): take the next load and start from "
        "the low end of the band.",
        nullptr, input.band.high);
    if (repCostOfStep(last.load.mass(), harder->mass(), input.band.high) > input.band.high - input.band.low)
        why += QLatin1Char(' ') + largeStep(input, last.load, *harder);
    return {*harder, std::vector<int>(last.planned, input.band.low), StepKind::AddLoad, why};
}

NextStep keepsLoad(const ProgressionInput& input, const LastDone& last)
{
    std::vector<int> targets;
    bool added = false;
    for (const DoneSet& set : last.sets) {
        const bool more = set.countedReps < input.band.high && reserveKept(set, input);
        targets.push_back(std::clamp(set.countedReps + (more ? 1 : 0), 1, input.band.high));
        added = added || more;
    }
    const bool fewer = last.sets.size() < last.planned;
    NextStep step{
        last.load, fittedTo(std::move(targets), last.planned), added ? StepKind::AddReps : StepKind::Hold, {}};
    if (added)
        step.why =
            BandThenLoadText::tr("Same load: add a repetition to the sets that are not at the top of the band yet.");
    else if (fewer)
        step.why = BandThenLoadText::tr("Same load: do all the planned sets before the load goes up.");
    else
        step.why = BandThenLoadText::tr("Same load and repetitions until the planned reserve is there.");
    return step;
}

NextStep byRecord(const ProgressionInput& input, const LastDone& last, const std::optional<Load>& harder)
{
    if (last.bandFull) return bandFull(input, last, harder);
    if (last.underTwice)
        if (const auto easier = input.stepper(last.load, LoadChange::Easier, Mass()))
            return {*easier, std::vector<int>(last.planned, input.band.low), StepKind::Reduce,
                    BandThenLoadText::tr("Most sets stayed under %n counted repetition(s) twice running: one "
                                         "step down brings them back into the band.",
                                         nullptr, input.band.low)};
    return keepsLoad(input, last);
}

NextStep byForecast(const ProgressionInput& input, const LastDone& last, const std::optional<Load>& harder, int now)
{
    if (now < input.band.low)
        if (auto easier = easierByForecast(input, last, input.band.low)) return *std::move(easier);
    if (!last.bandFull && now < input.band.high) return sameLoadByForecast(input, last);
    if (harder && likelyMiddle(input, *harder, last.planned).value_or(0) >= input.band.low)
        return harderByForecast(input, last, *harder);
    NextStep step = sameLoadByForecast(input, last);
    if (step.targetReps.front() >= input.band.high)
        step.why =
            harder ? BandThenLoadText::tr(
                         "Repetitions go on over the top of the band, because the next load would take "
                         "them under its low end.")
                         + QLatin1Char(' ') + largeStep(input, last.load, *harder)
                   : BandThenLoadText::tr("The top of the band is reached, but there is no harder load to set here.");
    return step;
}

class BandThenLoad final : public ProgressionRule {
public:
    QString id() const override { return QStringLiteral("band_then_load"); }
    QString title() const override { return BandThenLoadText::tr("Repetitions, then load"); }
    QString description() const override
    {
        return BandThenLoadText::tr(
            "Repetitions are added at one load until the top of the band is reached; then the next load starts lower "
            "in the "
            "band. Where the next load is a large step, repetitions go on over the top until it fits.");
    }
    std::vector<RuleParameter> parameters() const override { return stepParameters(); }
    std::optional<NextStep> next(const ProgressionInput& input, const RuleParameters& numbers) const override
    {
        const auto asked = loadQuestion(input, numbers);
        if (!asked) return std::nullopt;
        return asked->now ? byForecast(input, asked->last, asked->harder, *asked->now)
                          : byRecord(input, asked->last, asked->harder);
    }
};

}  // namespace

const ProgressionRule& bandThenLoadRule();
const ProgressionRule& bandThenLoadRule()
{
    static const BandThenLoad rule;
    return rule;
}

}  // namespace steelyard
