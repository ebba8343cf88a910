#include "ui/format/plan_words.h"

#include "core/flags/actions.h"
#include "core/planning/load_steps.h"
#include "core/planning/comparable.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard::format {
namespace {

struct PlanText {
    Q_DECLARE_TR_FUNCTIONS(PlanText)
};

QString setsWords(const Slot& slot)
{
    return PlanText::tr("%n set(s) of %1", nullptr, slot.sets).arg(band(slot.band));
}

QString reserveText(const Slot& slot)
{
    return slot.plannedRir ? PlanText::tr("RIR %1").arg(decimal(*slot.plannedRir)) : PlanText::tr("RIR open");
}

QString loadText(const Slot& slot)
{
    return slot.load ? load(*slot.load) : PlanText::tr("load from the record");
}

template <class Entity>
QString nameIn(const Library& library, Id<Entity> id)
{
    const auto* row = library.find(id);
    return row ? row->value.name : QString();
}

// The load that a note to hold means, where the record says one.
std::optional<Load> heldLoad(const ReplanInput& input)
{
    if (!input.lift) return std::nullopt;
    const LineRecord* line =
        lineOf(input.log, {.variant = input.lift->variant, .grip = input.lift->grip, .standard = input.lift->standard});
    const auto before = line ? comparableBefore(*line, input.today.addDays(1)) : std::vector<Exposure>();
    return before.empty() ? std::nullopt : workingLoad(doneSets(before.back()));
}

}  // namespace

QString band(const RepBand& band)
{
    return QStringLiteral("%1–%2").arg(QString::number(band.low), QString::number(band.high));
}

QString shortDay(QDate date)
{
    return QLocale().toString(date, QStringLiteral("ddd d MMM"));
}

QString liftName(const LiftLine& lift, const Library& library)
{
    const auto* variant = library.find(lift.variant);
    QStringList parts;
    if (variant) parts.push_back(nameIn(library, variant->value.exercise));
    if (variant && variant->value.name != asUsualName()) parts.push_back(variant->value.name);
    if (const QString grip = nameIn(library, lift.grip); grip != asUsualName()) parts.push_back(grip);
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

BeforeAfter slotDifference(const PlannedChange& change, const Library& library)
{
    const Slot& before = change.before;
    const Slot& after = change.after;
    QStringList was;
    QStringList will;
    const auto differ = [&](bool differs, const QString& old, const QString& now) {
        if (!differs) return;
        was.push_back(old);
        will.push_back(now);
    };
    differ(change.dayBefore != change.dayAfter, shortDay(change.dayBefore), shortDay(change.dayAfter));
    differ(before.variant != after.variant, nameIn(library, before.variant), nameIn(library, after.variant));
    differ(before.grip != after.grip, nameIn(library, before.grip), nameIn(library, after.grip));
    differ(before.standard != after.standard && before.variant == after.variant, nameIn(library, before.standard),
           nameIn(library, after.standard));
    differ(before.sets != after.sets || before.band != after.band, setsWords(before), setsWords(after));
    differ(before.plannedRir != after.plannedRir, reserveText(before), reserveText(after));
    differ(before.load != after.load, loadText(before), loadText(after));
    return {was.join(QStringLiteral(" · ")), will.join(QStringLiteral(" · "))};
}

QString replanWords(const Replan& plan)
{
    switch (plan.outcome) {
    case ReplanOutcome::Changed:
        return PlanText::tr("In “%1”, %n slot(s) change:", nullptr, static_cast<int>(plan.changes.size()))
            .arg(plan.block ? plan.block->name : QString());
    case ReplanOutcome::NoBlock:
        return PlanText::tr("No block is planned: it becomes a note on the next sheet.");
    case ReplanOutcome::NotPlanned:
        return PlanText::tr("It isn't in the planned days ahead: it becomes a note on the next sheet.");
    case ReplanOutcome::NothingToChange:
        return PlanText::tr("No planned slot would be different: it becomes a note on the next sheet.");
    case ReplanOutcome::OnSheet:
        return PlanText::tr("The plan stays as it is; it becomes a note on the next sheet.");
    case ReplanOutcome::AtDesk:
        return PlanText::tr("The plan and the sheets stay as they are; the decision is kept.");
    }
    return {};
}

QString choiceWords(const ReplanChoice& choice, const Library& library)
{
    if (choice.band) return PlanText::tr("%1 repetitions").arg(band(*choice.band));
    if (choice.grip) return nameIn(library, *choice.grip);
    if (choice.variant) return nameIn(library, *choice.variant);
    return choice.weekday ? QLocale().dayName(*choice.weekday) : QString();
}

QString actionNote(const ReplanInput& input, const ReplanChoice& choice)
{
    const QString chosen = choiceWords(choice, input.library);
    if (input.action == u"hold_load")
        if (const auto held = heldLoad(input)) return PlanText::tr("Stay at %1.").arg(load(*held));
    if (choice.band) return PlanText::tr("New rep band: %1, with a load that fits it.").arg(chosen);
    if (choice.grip) return PlanText::tr("New grip: %1. A new lift line starts: find the load afresh.").arg(chosen);
    if (choice.variant)
        return PlanText::tr("New variant: %1. A new lift line starts: find the load afresh.").arg(chosen);
    if (choice.weekday) return PlanText::tr("Do it on another day: %1.").arg(chosen);
    return steelyard::actionNote(input.action);
}

}  // namespace steelyard::format
