// Discomfort in a joint that should not be trained through without a look.
#include "core/analysis/discomfort_zones.h"
#include "core/domain/joint_words.h"
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct JointDiscomfortText {
    Q_DECLARE_TR_FUNCTIONS(JointDiscomfortText)
};

// The worst rating of one joint on one day, and the line it was given for. Not rated is not zero: such days are absent.
struct JointRating {
    QDate date;
    int value = 0;
    const LineRecord* line = nullptr;
};

std::vector<JointRating> ratingsOf(const ReviewSnapshot& snapshot, Joint joint, QDate from)
{
    std::vector<JointRating> ratings;
    for (const SnapshotLine& line : snapshot.lines)
        for (const Exposure& exposure : line.record->exposures) {
            const auto value = exposure.rating.discomfort[static_cast<std::size_t>(joint)];
            if (value && exposure.date > from && exposure.date <= snapshot.asOf)
                ratings.push_back({exposure.date, *value, line.record});
        }
    std::ranges::stable_sort(ratings, [](const JointRating& a, const JointRating& b) {
        return std::pair(a.date, -a.value) < std::pair(b.date, -b.value);
    });
    const auto sameDay = std::ranges::unique(ratings, {}, &JointRating::date);
    ratings.erase(sameDay.begin(), sameDay.end());
    return ratings;
}

class JointDiscomfortRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("joint_discomfort"); }
    QString title() const override { return JointDiscomfortText::tr("Joint discomfort"); }
    QString explanation() const override
    {
        return JointDiscomfortText::tr(
            "Discomfort in a joint was rated high once, or noticeable twice running. The program "
            "records and reminds; what it is, only somebody who examines the joint can say.");
    }
    Concern concern() const override { return Concern::Pain; }
    bool isAboutEvents() const override { return true; }
    std::vector<RuleParameter> parameters() const override
    {
        const QString source = JointDiscomfortText::tr(
            "Pain-monitoring model (Thomeé 1997; Silbernagel et al. 2007, cut-offs from memory): up to 5 acceptable, "
            "over 5 "
            "not; a stricter variant calls 4 and 5 the edge.");
        return {{QStringLiteral("twice"), JointDiscomfortText::tr("Twice running, at least"),
                 JointDiscomfortText::tr("of 10"), 4, 1, 10, source},
                {QStringLiteral("once_over"), JointDiscomfortText::tr("Once, more than"),
                 JointDiscomfortText::tr("of 10"), kAcceptableDiscomfort, 1, 9, source},
                {QStringLiteral("days"), JointDiscomfortText::tr("Looks back"), JointDiscomfortText::tr("days"), 21, 7,
                 90, JointDiscomfortText::tr("Our convention: what lasts longer without settling is rated again.")}};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const QDate from = snapshot.asOf.addDays(-limits.whole(u"days"));
        std::vector<Flag> found;
        for (const auto& row : EnumText<Joint>::table)
            checkJoint(row.value, ratingsOf(snapshot, row.value, from), limits, snapshot.wording, found);
        for (Flag& flag : found) addOrJoin(std::move(flag), flags);
    }

private:
    // High once: until two ratings running are below the lower limit. Noticeable: the last two.
    void checkJoint(Joint joint, const std::vector<JointRating>& ratings, const RuleParameters& limits,
                    const Wording& wording, std::vector<Flag>& flags) const
    {
        const int twice = limits.whole(u"twice");
        const int over = limits.whole(u"once_over");
        const JointRating* high = nullptr;
        const JointRating* pair = nullptr;
        for (std::size_t i = 0; i < ratings.size(); ++i) {
            const bool before = i > 0 && ratings[i - 1].value >= twice;
            const bool settled = i > 0 && ratings[i - 1].value < twice && ratings[i].value < twice;
            if (settled) high = nullptr;
            if (ratings[i].value > over) high = &ratings[i];
            pair = before && ratings[i].value >= twice ? &ratings[i] : nullptr;
        }
        if (!high && !pair) return;
        const JointRating& worst = high ? *high : *pair;
        Flag flag{id(),
                  worst.line->id,
                  high ? Severity::High : Severity::Medium,
                  sentenceFor(joint, worst, high != nullptr, wording),
                  {},
                  {QStringLiteral("change_grip"), QStringLiteral("change_variant"), QStringLiteral("drop_set"),
                   QStringLiteral("hold_load"), QStringLiteral("refer_out")}};
        if (high) flag.actions.move(flag.actions.size() - 1, 0);
        for (const JointRating& rating : ratings)
            flag.evidence.push_back({rating.date,
                                     JointDiscomfortText::tr("discomfort in the %1, 0–10").arg(jointName(joint)),
                                     static_cast<double>(rating.value)});
        flags.push_back(std::move(flag));
    }

    static QString sentenceFor(Joint joint, const JointRating& worst, bool high, const Wording& wording)
    {
        const QString day = wording.day(worst.date);
        const QString what = high
                                 ? JointDiscomfortText::tr("%1: discomfort in the %2 was rated %3 of 10 on %4.")
                                       .arg(lineName(*worst.line), jointName(joint), QString::number(worst.value), day)
                                 : JointDiscomfortText::tr(
                                       "%1: discomfort in the %2 was noticeable twice running (%3 of 10 on "
                                       "%4).")
                                       .arg(lineName(*worst.line), jointName(joint), QString::number(worst.value), day);
        return what + u' '
               + JointDiscomfortText::tr(
                   "Stop what hurts; if it lasts, swells, or spreads, see a licensed professional.");
    }

    // A decision is about a rule and a line, so two joints on one line are one flag.
    static void addOrJoin(Flag flag, std::vector<Flag>& flags)
    {
        const auto same = std::ranges::find_if(
            flags, [&](const Flag& other) { return other.rule == flag.rule && other.line == flag.line; });
        if (same == flags.end()) {
            flags.push_back(std::move(flag));
            return;
        }
        if (flag.severity > same->severity) std::swap(*same, flag);
        same->sentence = flag.sentence.section(QStringLiteral(". "), 0, 0) + QStringLiteral(". ") + same->sentence;
        same->evidence.insert(same->evidence.end(), flag.evidence.begin(), flag.evidence.end());
        std::ranges::stable_sort(same->evidence, {}, &Evidence::date);
    }
};

}  // namespace

const FlagRule& jointDiscomfortRule();
const FlagRule& jointDiscomfortRule()
{
    static const JointDiscomfortRule rule;
    return rule;
}

}  // namespace steelyard
