// Most working sets have neither effort nor a failed repetition.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct EffortUnknownText {
    Q_DECLARE_TR_FUNCTIONS(EffortUnknownText)
};

class EffortUnknownRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("effort_unknown"); }
    QString title() const override { return EffortUnknownText::tr("Effort unknown"); }
    QString explanation() const override
    {
        return EffortUnknownText::tr(
            "Without repetitions in reserve (or a set that ended in failure) more repetitions may only "
            "mean more effort, so only a plain rise is read.");
    }
    Concern concern() const override { return Concern::Housekeeping; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("percent"), EffortUnknownText::tr("Sets without effort, more than"),
                 EffortUnknownText::tr("% of working sets"), 60, 10, 95,
                 EffortUnknownText::tr("Our convention, the same as the reading's.")},
                {QStringLiteral("sessions"), EffortUnknownText::tr("Of the last"), EffortUnknownText::tr("sessions"), 4,
                 2, 20, EffortUnknownText::tr("Our convention, the same as the reading's.")},
                worseParameter(EffortUnknownText::tr("% of working sets"), 20, 5, 60)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        std::vector<LineFinding> findings;
        for (const SnapshotLine& line : snapshot.lines)
            if (line.recent) checkLine(line, limits, findings);
        const QString whole = EffortUnknownText::tr(
            "Effort is missing on most sets of %n lift(s); more repetitions may only mean more effort.", nullptr,
            static_cast<int>(findings.size()));
        addByLineOrLifter(std::move(findings), snapshot, whole, flags);
    }

private:
    void checkLine(const SnapshotLine& line, const RuleParameters& limits, std::vector<LineFinding>& findings) const
    {
        const auto last = line.lastWorking(static_cast<std::size_t>(limits.whole(u"sessions")));
        if (std::ssize(last) < limits.whole(u"sessions")) return;
        int sets = 0;
        int known = 0;
        for (const CountedExposure* exposure : last) {
            sets += exposure->point.workSets;
            known += exposure->effortSets;
        }
        const double percent = 100.0 * (sets - known) / sets;
        if (percent <= limits.value(u"percent")) return;
        findings.push_back(
            {&line,
             {id(),
              line.record->id,
              Severity::Low,
              EffortUnknownText::tr("%1: %2 of the last %3 working sets have no effort written down.")
                  .arg(lineName(*line.record), QString::number(sets - known), QString::number(sets)),
              {{last.back()->point.date,
                EffortUnknownText::tr("% of sets without effort: %1").arg(lineName(*line.record)), percent}},
              {QStringLiteral("ask_effort")},
              measured(percent, limits)}});
    }
};

}  // namespace

const FlagRule& effortUnknownRule();
const FlagRule& effortUnknownRule()
{
    static const EffortUnknownRule rule;
    return rule;
}

}  // namespace steelyard
