// An entry that its neighbours make unlikely: a unit mixed up, a slipped decimal point, repetitions that can't be.
#include "core/flags/rule_support.h"
#include "core/numerics/robust_trend.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct ImplausibleEntryText {
    Q_DECLARE_TR_FUNCTIONS(ImplausibleEntryText)
};

constexpr double kPoundsAKilogram = 2.20462262;
constexpr std::ptrdiff_t kNeighboursEachSide = 4;
constexpr std::size_t kLeastNeighbours = 3;
constexpr int kLeastRepJump = 10;

// The set that stands for a session: its heaviest working set. A wrong unit or point shows there.
struct StandingSet {
    QDate date;
    const SetEntry* set = nullptr;
};

std::vector<StandingSet> standingSets(const SnapshotLine& line, QDate until)
{
    std::vector<StandingSet> sets;
    for (const Exposure& exposure : line.record->exposures) {
        if (exposure.date > until) break;
        StandingSet standing{exposure.date, nullptr};
        for (const LoggedSet& logged : exposure.sets)
            if (isWorkingSet(logged.set) && (!standing.set || logged.set.load.mass() > standing.set->load.mass()))
                standing.set = &logged.set;
        if (standing.set) sets.push_back(standing);
    }
    return sets;
}

struct Neighbourhood {
    double lnLoad = 0;   // median of ln kilograms
    double scatter = 0;  // robust SD of it
    double reps = 0;     // median
};

std::optional<Neighbourhood> neighboursOf(const std::vector<StandingSet>& sets, std::size_t at)
{
    std::vector<double> ln;
    std::vector<double> reps;
    const auto last = std::ssize(sets) - 1;
    const auto here = static_cast<std::ptrdiff_t>(at);
    for (auto i = std::max<std::ptrdiff_t>(0, here - kNeighboursEachSide);
         i <= std::min(last, here + kNeighboursEachSide); ++i) {
        const SetEntry& set = *sets[static_cast<std::size_t>(i)].set;
        if (i == here || set.load.mass() <= Mass{}) continue;
        ln.push_back(std::log(set.load.kilograms()));
        reps.push_back(set.reps);
    }
    if (ln.size() < kLeastNeighbours) return std::nullopt;
    return Neighbourhood{*median(ln), robustScale(ln).value_or(0), *median(reps)};
}

class ImplausibleEntryRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("implausible_entry"); }
    QString title() const override { return ImplausibleEntryText::tr("Unlikely entry"); }
    QString explanation() const override
    {
        return ImplausibleEntryText::tr(
            "A load or a count that differs so much from the sessions around it that a slip of the "
            "pen is likelier: kilograms and pounds mixed up, a decimal point moved, two digits "
            "typed together.");
    }
    Concern concern() const override { return Concern::Housekeeping; }
    bool isAboutEvents() const override { return true; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("ratio"), ImplausibleEntryText::tr("times the usual load"), 1.8, 1.2, 5,
                 ImplausibleEntryText::tr(
                     "Our convention: below the 2.2 between pounds and kilograms, above any jump in training.")},
                {QStringLiteral("reps_ratio"), ImplausibleEntryText::tr("times the usual repetitions"), 2.5, 1.5, 10,
                 ImplausibleEntryText::tr("Our convention; the difference is at least ten repetitions as well.")},
                {QStringLiteral("days"), ImplausibleEntryText::tr("days"), 42, 7, 3650,
                 ImplausibleEntryText::tr("Our convention: what somebody may still remember.")}};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const QDate from = snapshot.asOf.addDays(-limits.whole(u"days"));
        for (const SnapshotLine& line : snapshot.lines) {
            const auto sets = standingSets(line, snapshot.asOf);
            Flag flag{id(), line.record->id, Severity::Medium, {}, {}, {QStringLiteral("correct_entry")}};
            for (std::size_t i = 0; i < sets.size(); ++i) {
                if (sets[i].date <= from) continue;
                const auto around = neighboursOf(sets, i);
                const QString guess = around ? guessAt(*sets[i].set, *around, limits, snapshot.wording) : QString();
                if (guess.isEmpty()) continue;
                flag.sentence = ImplausibleEntryText::tr("%1: %2 × %3 on %4 doesn't fit the sessions around it; %5.")
                                    .arg(lineName(*line.record), snapshot.wording.load(sets[i].set->load),
                                         QString::number(sets[i].set->reps), snapshot.wording.day(sets[i].date), guess);
                const double usual = snapshot.massIn(std::exp(around->lnLoad));
                flag.evidence.push_back({sets[i].date,
                                         ImplausibleEntryText::tr("load in %1, where about %2 %1 is usual")
                                             .arg(snapshot.unitText(), snapshot.wording.number(usual)),
                                         snapshot.massIn(sets[i].set->load.kilograms())});
            }
            if (!flag.evidence.empty()) flags.push_back(std::move(flag));
        }
    }

private:
    // What probably happened; empty when the set is plausible.
    static QString guessAt(const SetEntry& set, const Neighbourhood& around, const RuleParameters& limits,
                           const Wording& wording)
    {
        if (set.load.mass() > Mass{}) {
            const double ln = std::log(set.load.kilograms()) - around.lnLoad;
            // A lighter day with many more repetitions is training, not a slip.
            const bool lightOnPurpose = ln < 0 && set.reps >= 1.5 * around.reps;
            if (std::abs(ln) > std::log(limits.value(u"ratio")) && std::abs(ln) > 4 * around.scatter && !lightOnPurpose)
                return loadGuess(ln);
        }
        if (set.reps >= limits.value(u"reps_ratio") * around.reps && set.reps >= around.reps + kLeastRepJump
            && std::log(std::max(set.load.kilograms(), 1e-3)) > around.lnLoad - 0.1)
            return ImplausibleEntryText::tr("%1 repetitions are usual").arg(wording.number(around.reps, 0));
        return {};
    }

    static QString loadGuess(double lnRatio)
    {
        const double size = std::abs(lnRatio);
        if (std::abs(size - std::log(10.0)) < 0.2)
            return ImplausibleEntryText::tr("perhaps the decimal point was moved");
        if (std::abs(size - std::log(kPoundsAKilogram)) < 0.15)
            return ImplausibleEntryText::tr("perhaps kilograms and pounds were mixed up");
        return ImplausibleEntryText::tr("perhaps a slip while writing it down");
    }
};

}  // namespace

const FlagRule& implausibleEntryRule();
const FlagRule& implausibleEntryRule()
{
    static const ImplausibleEntryRule rule;
    return rule;
}

}  // namespace steelyard
