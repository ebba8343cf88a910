// An entry that its neighbours make unlikely: a unit mixed up, a slipped decimal point, repetitions that can't be.
#include "core/flags/entry_doubts.h"
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ImplausibleEntryText {
    Q_DECLARE_TR_FUNCTIONS(ImplausibleEntryText)
};

class ImplausibleEntryRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("implausible_entry"); }
    QString title() const override { return ImplausibleEntryText::tr("Unlikely entry"); }
    QString explanation() const override
    {
        return ImplausibleEntryText::tr(
            "A load or a count that differs so much from the sessions around it that a slip of the "
            "pen is likelier: kilograms and pounds mixed up, a decimal point moved, two digits "
            "typed together, load and repetitions exchanged.");
    }
    Concern concern() const override { return Concern::Housekeeping; }
    bool isAboutEvents() const override { return true; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("ratio"), ImplausibleEntryText::tr("Load above or below"),
                 ImplausibleEntryText::tr("times the usual load"), 1.8, 1.2, 5,
                 ImplausibleEntryText::tr(
                     "Our convention: below the 2.2 between pounds and kilograms, above any jump in training.")},
                {QStringLiteral("reps_ratio"), ImplausibleEntryText::tr("Repetitions above or below"),
                 ImplausibleEntryText::tr("times the usual repetitions"), 2.5, 1.5, 10,
                 ImplausibleEntryText::tr("Our convention; the difference is at least ten repetitions as well.")},
                {QStringLiteral("days"), ImplausibleEntryText::tr("Looks back"), ImplausibleEntryText::tr("days"), 42,
                 7, 3650, ImplausibleEntryText::tr("Our convention: what somebody may still remember.")}};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        const QDate from = snapshot.asOf.addDays(-limits.whole(u"days"));
        const DoubtLimits doubtLimits{limits.value(u"ratio"), limits.value(u"reps_ratio")};
        for (const SnapshotLine& line : snapshot.lines) {
            Flag flag{id(), line.record->id, Severity::Medium, {}, {}, {QStringLiteral("correct_entry")}};
            for (const EntryDoubt& doubt : doubtfulEntries(line, from, snapshot.asOf, doubtLimits)) {
                flag.sentence = ImplausibleEntryText::tr("%1: %2 × %3 on %4 doesn't fit the sessions around it; %5.")
                                    .arg(lineName(*line.record), snapshot.wording.load(doubt.set->load),
                                         QString::number(doubt.set->reps), snapshot.wording.day(doubt.date),
                                         guessPart(doubt, snapshot.wording));
                flag.evidence.push_back(
                    {doubt.date,
                     ImplausibleEntryText::tr("load in %1, where about %2 %1 is usual")
                         .arg(snapshot.unitText(), snapshot.wording.number(snapshot.massIn(doubt.usualKg))),
                     snapshot.massIn(doubt.set->load.kilograms())});
            }
            if (!flag.evidence.empty()) flags.push_back(std::move(flag));
        }
    }

private:
    // What probably happened, and what would fit.
    static QString guessPart(const EntryDoubt& doubt, const Wording& wording)
    {
        const QString load = doubt.fitting ? wording.load(doubt.fitting->load) : QString();
        switch (doubt.slip) {
        case EntrySlip::Unit:
            return ImplausibleEntryText::tr("%1 would fit: perhaps kilograms and pounds were mixed up").arg(load);
        case EntrySlip::Converted:
            return ImplausibleEntryText::tr(
                       "about %1 would fit: perhaps it was turned from kilograms into pounds, or back, once too often")
                .arg(load);
        case EntrySlip::Point:
            return ImplausibleEntryText::tr("%1 would fit: perhaps the decimal point was moved").arg(load);
        case EntrySlip::Digits:
            return ImplausibleEntryText::tr("%1 × %2 would fit: perhaps two digits were typed together")
                .arg(load, QString::number(doubt.fitting->reps));
        case EntrySlip::Exchanged:
            return ImplausibleEntryText::tr("%1 × %2 would fit: perhaps load and repetitions changed places")
                .arg(load, QString::number(doubt.fitting->reps));
        case EntrySlip::Repetitions:
            return ImplausibleEntryText::tr("%1 repetitions are usual").arg(wording.number(doubt.usualReps, 0));
        case EntrySlip::Unclear:
            return ImplausibleEntryText::tr("perhaps a slip while writing it down");
        }
        return {};
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
