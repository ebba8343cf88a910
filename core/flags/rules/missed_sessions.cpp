// The lifter comes less often than planned, or than they used to.
#include "core/flags/expected_sessions.h"
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct MissedSessionsText {
    Q_DECLARE_TR_FUNCTIONS(MissedSessionsText)
};

class MissedSessionsRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("missed_sessions"); }
    QString title() const override { return MissedSessionsText::tr("Missed sessions"); }
    QString explanation() const override
    {
        return MissedSessionsText::tr(
            "Fewer sessions than the block plans; without a block, than the days a week agreed; "
            "without either, than in the eight weeks before.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        return {
            {QStringLiteral("days"), MissedSessionsText::tr("Looks back"), MissedSessionsText::tr("days"), 14, 7, 60,
             MissedSessionsText::tr("Our convention.")},
            {QStringLiteral("percent"), MissedSessionsText::tr("Done, at most"),
             MissedSessionsText::tr("% of the expected sessions"), 50, 10, 90,
             MissedSessionsText::tr("Our convention: half or less.")},
            {QStringLiteral("missed"), MissedSessionsText::tr("Missed, at least"), MissedSessionsText::tr("sessions"),
             2, 1, 20, MissedSessionsText::tr("Our convention: one missed session is life.")},
            worseParameter(MissedSessionsText::tr("sessions"), 2, 1, 10)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const AthleteLog& log = snapshot.log;
        const QDate from = snapshot.asOf.addDays(-limits.whole(u"days"));
        const auto first = std::ranges::find_if(log.sessionDates, [&](QDate date) { return date <= snapshot.asOf; });
        if (first == log.sessionDates.end() || *first > from) return;  // no record to measure a whole span by
        // With a session before `from` there is always something to expect.
        const double expected = expectedSessions(log, from, snapshot.asOf).value_or(0);
        const int came = sessionsBetween(log, from, snapshot.asOf);
        const double missed = expected - came;
        if (came > expected * limits.value(u"percent") / 100 || std::lround(missed) < limits.whole(u"missed")) return;
        QDate last = *first;
        for (const QDate date : log.sessionDates)
            if (date <= snapshot.asOf) last = date;
        flags.push_back(
            {id(),
             std::nullopt,
             came == 0 ? Severity::Medium : Severity::Low,
             MissedSessionsText::tr("%1 of about %2 expected sessions in the last %3 days; the last one was on %4.")
                 .arg(QString::number(came), snapshot.wording.number(expected), QString::number(limits.whole(u"days")),
                      snapshot.wording.day(last)),
             {{last, MissedSessionsText::tr("last session, days ago"),
               static_cast<double>(last.daysTo(snapshot.asOf))}},
             {QStringLiteral("contact_lifter"), QStringLiteral("hold_load"), QStringLiteral("drop_set")},
             measured(missed, limits)});
    }
};

}  // namespace

const FlagRule& missedSessionsRule();
const FlagRule& missedSessionsRule()
{
    static const MissedSessionsRule rule;
    return rule;
}

}  // namespace steelyard
