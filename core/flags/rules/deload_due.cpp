// Many weeks of training without an easier one, and signs that one would help.
#include "core/flags/rule_support.h"
#include "core/analysis/counting.h"
#include "core/analysis/line_gates.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct DeloadDueText {
    Q_DECLARE_TR_FUNCTIONS(DeloadDueText)
};

constexpr double kManyStuck = 0.5;  // share of the lines trained lately that stall or slip, and two at least
constexpr int kLeastStuck = 2;
constexpr int kLeastAches = 2;  // one is joint discomfort's matter alone
constexpr int kSignWeeks = 2;   // in which soreness and aches count

// Weeks that were easy by plan or by what was done.
std::set<qint64> easyWeeks(const ReviewSnapshot& snapshot)
{
    std::set<qint64> easy;
    for (const Row<Block>& block : snapshot.log.blocks)
        for (std::size_t week = 0; week < block.value.weeks.size(); ++week)
            if (block.value.weeks[week].kind == WeekKind::Deload)
                easy.insert(weekOf(block.value.start.addDays(7 * static_cast<qint64>(week))));
    for (const SnapshotLine& line : snapshot.lines)
        for (const CountedExposure& one : line.counted)
            if (one.point.deload) easy.insert(weekOf(one.point.date));
    return easy;
}

// Training weeks running up to the day, ended by an easy week or one without training.
int weeksRunning(const ReviewSnapshot& snapshot, const std::set<qint64>& easy)
{
    std::set<qint64> trained;
    for (const QDate day : snapshot.log.sessionDates)
        if (day <= snapshot.asOf) trained.insert(weekOf(day));
    if (trained.empty()) return 0;
    const qint64 last = *trained.rbegin();
    if (weekOf(snapshot.asOf) - last > 1) return 0;
    int weeks = 0;
    for (qint64 week = last; trained.contains(week) && !easy.contains(week); --week) ++weeks;
    return weeks;
}

// In the block under way or one that begins soon.
bool isPlannedSoon(const ReviewSnapshot& snapshot, const std::set<qint64>& easy)
{
    const qint64 now = weekOf(snapshot.asOf);
    return std::ranges::any_of(easy, [&](qint64 week) { return week >= now && week <= now + 2; });
}

class DeloadDueRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("deload_due"); }
    QString title() const override { return DeloadDueText::tr("Easier week due"); }
    QString explanation() const override
    {
        return DeloadDueText::tr(
            "Weeks of training without an easier one or a break, together with stalls, soreness or aching joints; or "
            "very "
            "many weeks without any sign. Silent when an easier week is planned within the next two.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        const QString survey = DeloadDueText::tr(
            "Competitors take an easier week every 5.6 (SD 2.3) weeks, and when lifts stall, muscles stay sore or "
            "joints "
            "ache (Rogerson et al. 2024, Sports Med Open 10:26).");
        return {
            {QStringLiteral("weeks"), DeloadDueText::tr("Weeks running, with a sign"), DeloadDueText::tr("weeks"), 6, 3,
             20, survey},
            {QStringLiteral("weeks_without_sign"), DeloadDueText::tr("Weeks running, without any sign"),
             DeloadDueText::tr("weeks"), 16, 4, 52,
             DeloadDueText::tr("Our convention: far beyond what that survey found.")},
            {QStringLiteral("sore"), DeloadDueText::tr("Soreness that is a sign"), DeloadDueText::tr("of 10"), 6, 3, 10,
             DeloadDueText::tr("Our convention.")},
            {QStringLiteral("ache"), DeloadDueText::tr("Ache in a joint that is a sign"), DeloadDueText::tr("of 10"), 3,
             1, 8, DeloadDueText::tr("Our convention, under the limits of joint discomfort.")},
            worseParameter(DeloadDueText::tr("weeks"), 4, 1, 26)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const auto easy = easyWeeks(snapshot);
        const int weeks = weeksRunning(snapshot, easy);
        if (weeks < limits.whole(u"weeks") || isPlannedSoon(snapshot, easy)) return;
        const std::vector<Evidence> signs = signsOf(snapshot, limits);
        if (signs.empty() && weeks < limits.whole(u"weeks_without_sign")) return;
        Flag flag{id(),
                  {},
                  signs.empty() ? Severity::Low : Severity::Medium,
                  DeloadDueText::tr("%n week(s) of training running without an easier one.", nullptr, weeks),
                  signs,
                  {QStringLiteral("deload"), QStringLiteral("drop_set"), QStringLiteral("hold_load")},
                  measured(weeks, limits)};
        QStringList words;
        for (const Evidence& sign : signs) words << sign.what;
        if (!words.isEmpty())
            flag.sentence += u' ' + DeloadDueText::tr("Signs: %1.").arg(words.join(QStringLiteral("; ")));
        flag.evidence.push_back({snapshot.asOf, DeloadDueText::tr("weeks without an easier one"), 1.0 * weeks});
        flags.push_back(std::move(flag));
    }

private:
    static std::vector<Evidence> signsOf(const ReviewSnapshot& snapshot, const RuleParameters& limits)
    {
        int recent = 0;
        int stuck = 0;
        int sore = 0;
        int aches = 0;  // sessions
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.recent) continue;
            ++recent;
            if (line.reading.verdict == Verdict::Stalled || line.reading.verdict == Verdict::Slipping) ++stuck;
            for (const Exposure* one :
                 exposuresSince(snapshot, line, kSignWeeks, [](const Exposure& each) { return !each.rating.none(); })) {
                sore = std::max(sore, one->rating.nextSoreness.value_or(0));
                aches += std::ranges::any_of(one->rating.discomfort, [&](const std::optional<int>& joint) {
                    return joint.value_or(0) >= limits.whole(u"ache");
                });
            }
        }
        std::vector<Evidence> signs;
        if (stuck >= kLeastStuck && stuck >= kManyStuck * recent)
            signs.push_back(
                {snapshot.asOf, DeloadDueText::tr("lifts that stall or slip, of %1").arg(recent), 1.0 * stuck});
        if (sore >= limits.whole(u"sore"))
            signs.push_back({snapshot.asOf, DeloadDueText::tr("soreness the day after, 0–10"), 1.0 * sore});
        if (aches >= kLeastAches)
            signs.push_back({snapshot.asOf, DeloadDueText::tr("lifts after which a joint ached"), 1.0 * aches});
        return signs;
    }
};

}  // namespace

const FlagRule& deloadDueRule();
const FlagRule& deloadDueRule()
{
    static const DeloadDueRule rule;
    return rule;
}

}  // namespace steelyard
