#include "app/console/commands/commands.h"
#include "core/book/block_outlook.h"
#include "core/book/block_proposal.h"
#include "core/book/book.h"
#include "core/edits/edits.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct PlanCommandText {
    Q_DECLARE_TR_FUNCTIONS(PlanCommandText)
};

constexpr int kUsualWeeks = 5;
constexpr int kMostPlanMinutes = 600;

Result<ProposalWishes> planWishes(const Console& console)
{
    ProposalWishes wishes;
    wishes.today = console.clock().today();
    STEELYARD_TRY(const QString from, console.required(QStringLiteral("from")));
    wishes.from = QDate::fromString(from, Qt::ISODate);
    if (!wishes.from.isValid())
        return fail(ErrorCode::Unsupported, PlanCommandText::tr("--from is a date like 2027-03-01."));
    STEELYARD_TRY(wishes.weeks, console.integer(QStringLiteral("weeks"), kUsualWeeks, 1, kMostProposalWeeks));
    STEELYARD_TRY(const int days, console.integer(QStringLiteral("days"), 0, 1, kMostPlanDays));
    if (days > 0) wishes.daysPerWeek = days;
    STEELYARD_TRY(const int minutes, console.integer(QStringLiteral("minutes"), 0, 1, kMostPlanMinutes));
    if (minutes > 0) wishes.minutesPerDay = minutes;
    return wishes;
}

QString planLiftName(const Library& library, const LiftLine& lift)
{
    const auto* variant = library.find(lift.variant);
    const auto* grip = library.find(lift.grip);
    QString name = variant ? library.fullName(variant->value) : QString();
    if (grip && grip->value.name != asUsualName()) name += QStringLiteral(", ") + grip->value.name;
    return name;
}

// What was proposed, and the loads that it would start with.
struct ProposedPlan {
    const Row<Athlete>& athlete;
    const Library& library;
    const BlockProposal& proposal;
    const BlockForecast& loads;
};

QString bandText(const RepBand& band)
{
    return QStringLiteral("%1–%2").arg(band.low).arg(band.high);
}

QJsonValue orNull(std::optional<double> value)
{
    return value ? QJsonValue(*value) : QJsonValue();
}

QJsonValue loadObject(const SlotForecast* forecast)
{
    if (!forecast) return {};
    const SlotLoad& load = forecast->load;
    QJsonArray targets;
    for (const int reps : load.targetReps) targets.append(reps);
    return QJsonObject{{QStringLiteral("load"), load.load ? QJsonValue(load.load->toString()) : QJsonValue()},
                       {QStringLiteral("load_kg"), load.load ? QJsonValue(load.load->kilograms()) : QJsonValue()},
                       {QStringLiteral("target_reps"), targets},
                       {QStringLiteral("chance"), orNull(load.chance)},
                       {QStringLiteral("reps_low80"), load.within80 ? QJsonValue(load.within80->low) : QJsonValue()},
                       {QStringLiteral("reps_high80"), load.within80 ? QJsonValue(load.within80->high) : QJsonValue()},
                       {QStringLiteral("why"), load.why}};
}

QJsonObject slotObject(const ProposedPlan& plan, const PlanPlace& place, const Slot& slot)
{
    const auto* standard = plan.library.find(slot.standard);
    const LiftLine lift{plan.athlete.id, slot.variant, slot.grip, slot.standard};
    return {{QStringLiteral("lift"), planLiftName(plan.library, lift)},
            {QStringLiteral("standard"), standard ? standard->value.name : QString()},
            {QStringLiteral("sets"), slot.sets},
            {QStringLiteral("band_low"), slot.band.low},
            {QStringLiteral("band_high"), slot.band.high},
            {QStringLiteral("planned_rir"), slot.plannedRir ? QJsonValue(slot.plannedRir->toDouble()) : QJsonValue()},
            {QStringLiteral("expected"), loadObject(plan.loads.at(place))}};
}

QJsonArray weekArray(const ProposedPlan& plan)
{
    QJsonArray weeks;
    PlanPlace place;
    for (const PlannedWeek& week : plan.proposal.block.weeks) {
        QJsonArray days;
        place.day = 0;
        for (const PlannedDay& day : week.days) {
            QJsonArray lifts;
            place.slot = 0;
            for (const Slot& slot : day.slotList) {
                lifts.append(slotObject(plan, place, slot));
                ++place.slot;
            }
            days.append(QJsonObject{{QStringLiteral("date"), day.date.toString(Qt::ISODate)},
                                    {QStringLiteral("slots"), lifts}});
            ++place.day;
        }
        weeks.append(QJsonObject{{QStringLiteral("kind"), toText(week.kind)}, {QStringLiteral("days"), days}});
        ++place.week;
    }
    return weeks;
}

QJsonObject planJson(const ProposedPlan& plan, bool accepted)
{
    const BlockProposal& proposal = plan.proposal;
    QJsonArray why;
    for (const ProposedSlot& slot : proposal.week)
        why.append(QJsonObject{{QStringLiteral("weekday"), slot.weekday},
                               {QStringLiteral("lift"), planLiftName(plan.library, slot.lift)},
                               {QStringLiteral("sets"), slot.sets},
                               {QStringLiteral("why"), slot.why}});
    return {{QStringLiteral("athlete"), plan.athlete.value.name},
            {QStringLiteral("name"), proposal.block.name},
            {QStringLiteral("start"), proposal.block.start.toString(Qt::ISODate)},
            {QStringLiteral("accepted"), accepted},
            {QStringLiteral("weeks"), weekArray(plan)},
            {QStringLiteral("why"), why},
            {QStringLiteral("cautions"), QJsonArray::fromStringList(proposal.cautions)},
            {QStringLiteral("unmet"), QJsonArray::fromStringList(proposal.unmet)}};
}

QString weekTitle(int number, WeekKind kind)
{
    return kind == WeekKind::Deload ? PlanCommandText::tr("Week %1, deload").arg(number)
                                    : PlanCommandText::tr("Week %1").arg(number);
}

// "42.5 kg, 9, 9, 8"; empty when nothing can be said.
QString expectedText(const SlotForecast* forecast)
{
    if (!forecast || !forecast->load.load) return {};
    QStringList parts{forecast->load.load->toString()};
    for (const int reps : forecast->load.targetReps) parts << QString::number(reps);
    return parts.join(QStringLiteral(", "));
}

QString slotLine(const ProposedPlan& plan, const PlanPlace& place, const Slot& slot)
{
    const LiftLine lift{plan.athlete.id, slot.variant, slot.grip, slot.standard};
    const QString dose = PlanCommandText::tr("    %1: %2 x %3, %4 in reserve")
                             .arg(planLiftName(plan.library, lift), QString::number(slot.sets), bandText(slot.band),
                                  slot.plannedRir ? slot.plannedRir->toString() : QStringLiteral("?"));
    const QString expected = expectedText(plan.loads.at(place));
    return expected.isEmpty() ? dose : PlanCommandText::tr("%1: %2", "a slot, and its load").arg(dose, expected);
}

QString planText(const ProposedPlan& plan)
{
    const BlockProposal& proposal = plan.proposal;
    QStringList lines{QStringLiteral("%1: %2").arg(plan.athlete.value.name, proposal.block.name)};
    PlanPlace place;
    for (const PlannedWeek& week : proposal.block.weeks) {
        lines << weekTitle(static_cast<int>(place.week) + 1, week.kind);
        place.day = 0;
        for (const PlannedDay& day : week.days) {
            lines << QStringLiteral("  ") + day.date.toString(Qt::ISODate);
            for (place.slot = 0; place.slot < day.slotList.size(); ++place.slot)
                lines << slotLine(plan, place, day.slotList[place.slot]);
            ++place.day;
        }
        ++place.week;
    }
    lines << PlanCommandText::tr("Why");
    for (const ProposedSlot& slot : proposal.week)
        lines << QStringLiteral("  %1: %2").arg(planLiftName(plan.library, slot.lift), slot.why);
    const auto list = [&](const QString& title, const QStringList& sentences) {
        if (!sentences.isEmpty()) lines << title;
        for (const QString& sentence : sentences) lines << QStringLiteral("  ") + sentence;
    };
    list(PlanCommandText::tr("Mind"), proposal.cautions);
    list(PlanCommandText::tr("Not met"), proposal.unmet);
    return lines.join(u'\n');
}

Result<void> acceptPlan(const QString& path, const Clock& clock, const Block& block)
{
    STEELYARD_TRY(const auto book, Book::open(path, clock));
    if (book->isReadOnly())
        return fail(ErrorCode::Storage,
                    PlanCommandText::tr("The book is open elsewhere (%1); close it there first. Nothing was changed.")
                        .arg(book->holder()));
    STEELYARD_CHECK(book->history().perform(addBlock(block)));
    return {};
}

Result<void> runPlan(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const QString name, console.required(QStringLiteral("athlete")));
    STEELYARD_TRY(const ProposalWishes wishes, planWishes(console));
    const bool accept = console.has(QStringLiteral("accept"));
    STEELYARD_TRY(const auto book, Book::openForReading(path, console.clock()));
    STEELYARD_TRY(const auto athlete, book->athletes().findByName(name));
    STEELYARD_TRY(const auto library, book->library().read());
    STEELYARD_TRY(const auto proposal, readProposal(book->database(), athlete.id, wishes, console.progress()));
    STEELYARD_TRY(const auto outlook, readBlockOutlook(book->database(), {athlete.id, proposal.block, wishes.today}));
    if (accept) STEELYARD_CHECK(acceptPlan(path, console.clock(), proposal.block));
    const ProposedPlan plan{athlete, library, proposal, outlook.forecast};
    if (console.json())
        console.print(QJsonDocument(planJson(plan, accept)));
    else
        console.print(planText(plan));
    return {};
}

}  // namespace

ConsoleCommand planCommand()
{
    return {QStringLiteral("plan"),
            PlanCommandText::tr("propose a lifter's next block"),
            {bookOption(),
             athleteOption(),
             {QStringLiteral("from"), PlanCommandText::tr("The block's first day."), QStringLiteral("date")},
             {QStringLiteral("weeks"), PlanCommandText::tr("How many weeks; 5 if not said."), QStringLiteral("n")},
             {QStringLiteral("days"), PlanCommandText::tr("Training days a week; the lifter's if not said."),
              QStringLiteral("n")},
             {QStringLiteral("minutes"), PlanCommandText::tr("Minutes a day; the lifter's if not said."),
              QStringLiteral("n")},
             {QStringLiteral("accept"), PlanCommandText::tr("Keep it in the book; undo takes it back.")}},
            &runPlan};
}

}  // namespace steelyard
