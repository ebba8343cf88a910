// A measured backward lean is well beyond what balance asks for this load, height and body mass.
#include "core/analysis/counting.h"
#include "core/flags/rule_support.h"
#include "core/numerics/balance_lean.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct LeanBeyondBalanceText {
    Q_DECLARE_TR_FUNCTIONS(LeanBeyondBalanceText)
};

// One set with a measured lean, beside what balance asks of its lifter under its load.
struct MeasuredLean {
    QDate date;
    const SetEntry* set = nullptr;
    double measured = 0;  // degrees, both
    double balance = 0;
    [[nodiscard]] double beyond() const { return measured - balance; }
};

// Bent elbows hold the load a forearm ahead of a body that stands free: only there is the reckoning right.
bool isHeldBeforeTheBody(const LineRecord& record, const AthleteLog& log)
{
    const Variant& variant = record.variant.value;
    const bool free = variant.implement == Implement::StraightBar || variant.implement == Implement::AngledBar
                      || variant.implement == Implement::Dumbbells;
    const bool stands = variant.position.contains(QStringLiteral("upright"), Qt::CaseInsensitive)
                        && !variant.position.contains(QStringLiteral("against"), Qt::CaseInsensitive);
    const bool bendsElbows = std::ranges::any_of(record.exercise.value.shares, [&](const MuscleShare& share) {
        if (share.share < 1) return false;
        const auto muscle = std::ranges::find(log.muscles, share.muscle, &Row<Muscle>::id);
        return muscle != log.muscles.end()
               && (muscle->value.key == QStringLiteral("biceps")
                   || muscle->value.key == QStringLiteral("brachioradialis"));
    });
    return variant.travel == TravelKind::Arc && free && stands && bendsElbows;
}

double heldKg(const Variant& variant, const SetEntry& set)
{
    const bool twoHands = variant.loading == Loading::PerHand && variant.sides == Sides::Both;
    return (twoHands ? 2 : 1) * set.load.kilograms();
}

double metres(const Length& length)
{
    return static_cast<double>(toMillimetres(length)) / 1000;
}

// Absent when the lifter's height or body mass isn't known.
std::optional<double> balanceOf(const AthleteLog& log, const LineRecord& record, const SetEntry& set, QDate date)
{
    const Athlete& lifter = log.athlete.value;
    const auto bodyKg = bodyMassKgOn(log.bodyMass, date);
    if (!lifter.height || !bodyKg) return std::nullopt;
    const BodyTable table = !lifter.sex                  ? BodyTable::Between
                            : *lifter.sex == Sex::Female ? BodyTable::Women
                                                         : BodyTable::Men;
    const double reach = lifter.forearm ? metres(*lifter.forearm) : 0;
    return balanceLeanDegrees(
        elbowFlexionHold(*bodyKg, heldKg(record.variant.value, set), metres(*lifter.height), table, reach));
}

class LeanBeyondBalanceRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("lean_beyond_balance"); }
    QString title() const override { return LeanBeyondBalanceText::tr("Lean beyond balance"); }
    QString explanation() const override
    {
        return LeanBeyondBalanceText::tr(
            "The trunk was measured leaning back further than it takes to stay on one's feet with this load. Who holds "
            "a "
            "heavy load before the body has to lean back some: that is balance and no fault. Well beyond it the back "
            "and "
            "hips lift along, the repetition is another one, and it costs recovery elsewhere. Needs the lifter's "
            "height "
            "and body mass, and speaks of standing curls with a free load only.");
    }
    Concern concern() const override { return Concern::Unreadable; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("degrees"), LeanBeyondBalanceText::tr("Beyond balance by, at least"),
                 LeanBeyondBalanceText::tr("degrees"), 6, 2, 30,
                 LeanBeyondBalanceText::tr("Our convention: a lean read off a film and one reckoned from the body are "
                                           "each a few degrees off.")},
                {QStringLiteral("sessions"), LeanBeyondBalanceText::tr("In so many sessions"),
                 LeanBeyondBalanceText::tr("sessions"), 2, 1, 12,
                 LeanBeyondBalanceText::tr("Our convention: once is a bad day.")},
                {QStringLiteral("weeks"), LeanBeyondBalanceText::tr("Looks back"), LeanBeyondBalanceText::tr("weeks"),
                 4, 1, 26, LeanBeyondBalanceText::tr("Our convention.")},
                worseParameter(LeanBeyondBalanceText::tr("degrees"), 4, 1, 20)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent || !isHeldBeforeTheBody(*line.record, snapshot.log)) continue;
            const auto beyond = furthestBySession(snapshot, line, limits);
            if (std::ssize(beyond) >= limits.whole(u"sessions")) {
                flags.push_back(flagOf(snapshot, line, beyond));
                flags.back().measure =
                    measured(std::ranges::max_element(beyond, {}, &MeasuredLean::beyond)->beyond(), limits);
            }
        }
    }

private:
    // Of each session the set that leans furthest beyond balance, when it does by enough; oldest first.
    static std::vector<MeasuredLean> furthestBySession(const ReviewSnapshot& snapshot, const SnapshotLine& line,
                                                       const RuleParameters& limits)
    {
        std::vector<MeasuredLean> found;
        for (const Exposure* exposure :
             exposuresSince(snapshot, line, limits.whole(u"weeks"), [](const Exposure&) { return true; })) {
            MeasuredLean furthest;
            for (const LoggedSet& logged : exposure->sets) {
                if (!logged.set.leanDegrees || !isWorkingSet(logged.set)) continue;
                const auto balance = balanceOf(snapshot.log, *line.record, logged.set, exposure->date);
                if (!balance) continue;
                const MeasuredLean lean{exposure->date, &logged.set, logged.set.leanDegrees->toDouble(), *balance};
                if (!furthest.set || lean.beyond() > furthest.beyond()) furthest = lean;
            }
            if (furthest.set && furthest.beyond() >= limits.value(u"degrees")) found.push_back(furthest);
        }
        return found;
    }

    Flag flagOf(const ReviewSnapshot& snapshot, const SnapshotLine& line, const std::vector<MeasuredLean>& beyond) const
    {
        const MeasuredLean& most = *std::ranges::max_element(beyond, {}, &MeasuredLean::beyond);
        Flag flag{id(),
                  line.record->id,
                  Severity::Medium,
                  LeanBeyondBalanceText::tr(
                      "%1: with %2 the trunk leant back %3°, and balance asks about %4° of this lifter. The rest lifts "
                      "the load with the back, so these repetitions can't be compared.")
                      .arg(lineName(*line.record), snapshot.wording.load(most.set->load),
                           snapshot.wording.number(most.measured, 0), snapshot.wording.number(most.balance, 0)),
                  {},
                  {QStringLiteral("retest_standard"), QStringLiteral("hold_load"), QStringLiteral("film_check"),
                   QStringLiteral("change_variant")}};
        for (const MeasuredLean& lean : beyond)
            flag.evidence.push_back({lean.date,
                                     LeanBeyondBalanceText::tr("degrees of lean; balance asks %1")
                                         .arg(snapshot.wording.number(lean.balance, 0)),
                                     lean.measured});
        return flag;
    }
};

}  // namespace

const FlagRule& leanBeyondBalanceRule();
const FlagRule& leanBeyondBalanceRule()
{
    static const LeanBeyondBalanceRule rule;
    return rule;
}

}  // namespace steelyard
