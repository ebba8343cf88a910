// Sets end so far from failure that they ask little of the muscle, and the plan didn't mean it so.
#include "core/flags/rule_support.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct EffortLowText {
    Q_DECLARE_TR_FUNCTIONS(EffortLowText)
};

// A plan that asks for as much in reserve, give or take half a repetition, means it.
constexpr double kPlanTolerance = 0.5;

std::optional<double> plannedReserve(const ReviewSnapshot& snapshot, const LiftLine& line, QDate day)
{
    for (const Row<Block>& block : snapshot.log.blocks) {
        const auto week = weekOfBlock(block.value, day);
        if (!week) continue;
        for (const PlannedDay& planned : block.value.weeks[*week].days)
            for (const Slot& slot : planned.slotList)
                if (slot.variant == line.variant && slot.grip == line.grip && slot.standard == line.standard
                    && slot.plannedRir)
                    return slot.plannedRir->toDouble();
    }
    return std::nullopt;
}

struct EasySession {
    QDate date;
    double reserve = 0;  // median of its working sets
};

// The last sessions with a known effort, if every one of them was easy; else none.
std::vector<EasySession> easySessions(const ReviewSnapshot& snapshot, const SnapshotLine& line, double least,
                                      std::size_t count)
{
    std::vector<EasySession> easy;
    const auto& exposures = line.record->exposures;
    for (auto it = exposures.rbegin(); it != exposures.rend() && easy.size() < count; ++it) {
        if (it->date > snapshot.asOf) continue;
        std::vector<double> reserves;
        for (const LoggedSet& logged : it->sets)
            if (isWorkingSet(logged.set))
                if (const auto reserve = reserveOf(logged.set)) reserves.push_back(*reserve);
        const auto middle = median(std::move(reserves));
        if (!middle) continue;
        const auto planned = plannedReserve(snapshot, line.record->line, it->date);
        if (*middle < least || (planned && *planned >= *middle - kPlanTolerance)) return {};
        easy.push_back({it->date, *middle});
    }
    std::ranges::reverse(easy);
    if (easy.size() < count) easy.clear();
    return easy;
}

class EffortLowRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("effort_low"); }
    QString title() const override { return EffortLowText::tr("Low effort"); }
    QString explanation() const override
    {
        return EffortLowText::tr(
            "The working sets of the last sessions ended with more repetitions in reserve than the plan asks for. "
            "Muscles "
            "grow over a wide range of loads as long as effort is high; far from failure, what is in reserve is also "
            "hard to "
            "judge.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("reserve"), EffortLowText::tr("In reserve, at least"),
                 EffortLowText::tr("repetitions in reserve"), 5, 2, 10,
                 EffortLowText::tr(
                     "Our convention. Growth needs high effort where loads are light (Schoenfeld et al. 2021, "
                     "Sports 9(2):32, from memory), and reserve is misjudged by more than two repetitions "
                     "further out (Hackett et al. 2017, JSCR 31(8):2162–2168).")},
                {QStringLiteral("sessions"), EffortLowText::tr("In so many sessions running"),
                 EffortLowText::tr("sessions running"), 3, 2, 12, EffortLowText::tr("Our convention.")},
                worseParameter(EffortLowText::tr("repetitions in reserve"), 2, 1, 10)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        std::vector<LineFinding> findings;
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            const auto easy = easySessions(snapshot, line, limits.value(u"reserve"),
                                           static_cast<std::size_t>(limits.whole(u"sessions")));
            if (easy.empty()) continue;
            Flag flag{id(),
                      line.record->id,
                      Severity::Low,
                      EffortLowText::tr(
                          "%1: the last %2 sessions ended with %3 or more repetitions in reserve, more than the "
                          "plan asks for.")
                          .arg(lineName(*line.record), QString::number(easy.size()),
                               snapshot.wording.number(std::ranges::min(easy, {}, &EasySession::reserve).reserve, 0)),
                      {},
                      {QStringLiteral("harder_sets"), QStringLiteral("ask_effort"), QStringLiteral("watch_sets")}};
            flag.measure = measured(std::ranges::min(easy, {}, &EasySession::reserve).reserve, limits);
            for (const EasySession& one : easy)
                flag.evidence.push_back({one.date, EffortLowText::tr("repetitions in reserve"), one.reserve});
            findings.push_back({&line, std::move(flag)});
        }
        const QString whole = EffortLowText::tr("%n lift(s) ended far from failure for several sessions.", nullptr,
                                                static_cast<int>(findings.size()));
        addByLineOrLifter(std::move(findings), snapshot, whole, flags);
    }
};

}  // namespace

const FlagRule& effortLowRule();
const FlagRule& effortLowRule()
{
    static const EffortLowRule rule;
    return rule;
}

}  // namespace steelyard
