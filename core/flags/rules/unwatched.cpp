// Nobody has watched a line for several sessions.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct UnwatchedText {
    Q_DECLARE_TR_FUNCTIONS(UnwatchedText)
};

// Sessions with working sets since the last watched one.
int sessionsUnwatched(const SnapshotLine& line)
{
    int sessions = 0;
    for (auto it = line.counted.rbegin(); it != line.counted.rend() && !it->point.watched; ++it)
        if (it->point.workSets > 0) ++sessions;
    return sessions;
}

class UnwatchedRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("unwatched"); }
    QString title() const override { return UnwatchedText::tr("Unwatched"); }
    QString explanation() const override
    {
        return UnwatchedText::tr(
            "Whether the repetitions were to the standard is unknown. The trend is still read, with less "
            "trust; a watched session now and then mends it.");
    }
    Concern concern() const override { return Concern::Housekeeping; }
    std::vector<RuleParameter> parameters() const override
    {
        return {
            {QStringLiteral("sessions"), UnwatchedText::tr("Not watched in the last"), UnwatchedText::tr("sessions"), 4,
             2, 30, UnwatchedText::tr("Our convention: as many sessions as the check of the standard looks back.")},
            worseParameter(UnwatchedText::tr("sessions"), 4, 1, 30)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        std::vector<LineFinding> findings;
        for (const SnapshotLine& line : snapshot.lines) {
            const int sessions = sessionsUnwatched(line);
            if (!line.recent || sessions < limits.whole(u"sessions")) continue;
            findings.push_back(
                {&line,
                 {id(),
                  line.record->id,
                  Severity::Low,
                  UnwatchedText::tr("%1: nobody watched the last %n session(s).", nullptr, sessions)
                      .arg(lineName(*line.record)),
                  {{*line.lastTrained, UnwatchedText::tr("sessions in a row unwatched: %1").arg(lineName(*line.record)),
                    static_cast<double>(sessions)}},
                  {QStringLiteral("watch_sets"), QStringLiteral("film_check")},
                  measured(sessions, limits)}});
        }
        const QString whole = UnwatchedText::tr("Nobody has watched most of this lifter's lifts lately (%n of them).",
                                                nullptr, static_cast<int>(findings.size()));
        addByLineOrLifter(std::move(findings), snapshot, whole, flags);
    }
};

}  // namespace

const FlagRule& unwatchedRule();
const FlagRule& unwatchedRule()
{
    static const UnwatchedRule rule;
    return rule;
}

}  // namespace steelyard
