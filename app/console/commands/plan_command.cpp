#include "app/console/commands/commands.h"
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

QString bandText(const RepBand& band)
{
    return QStringLiteral("%1–%2").arg(band.low).arg(band.high);
}

QJsonObject slotObject(const Slot& slot, const Library& library, Id<Athlete> athlete)
{
    const auto* standard = library.find(slot.standard);
    return {{QStringLiteral("lift"), planLiftName(library, {athlete, slot.variant, slot.grip, slot.standard})},
            {QStringLiteral("standard"), standard ? standard->value.name : QString()},
            {QStringLiteral("sets"), slot.sets},
            {QStringLiteral("band_low"), slot.band.low},
            {QStringLiteral("band_high"), slot.band.high},
            {QStringLiteral("planned_rir"), slot.plannedRir ? QJsonValue(slot.plannedRir->toDouble()) : QJsonValue()}};
}

QJsonObject planJson(const Row<Athlete>& athlete, const Library& library, const BlockProposal& proposal, bool accepted)
{
    QJsonArray weeks;
    for (const PlannedWeek& week : proposal.block.weeks) {
        QJsonArray days;
        for (const PlannedDay& day : week.days) {
            QJsonArray lifts;
            for (const Slot& slot : day.slotList) lifts.append(slotObject(slot, library, athlete.id));
            days.append(QJsonObject{{QStringLiteral("date"), day.date.toString(Qt::ISODate)},
                                    {QStringLiteral("slots"), lifts}});
        }
        weeks.append(QJsonObject{{QStringLiteral("kind"), toText(week.kind)}, {QStringLiteral("days"), days}});
    }
    QJsonArray why;
    for (const ProposedSlot& slot : proposal.week)
        why.append(QJsonObject{{QStringLiteral("weekday"), slot.weekday},
                               {QStringLiteral("lift"), planLiftName(library, slot.lift)},
                               {QStringLiteral("sets"), slot.sets},
                               {QStringLiteral("why"), slot.why}});
    return {{QStringLiteral("athlete"), athlete.value.name},
            {QStringLiteral("name"), proposal.block.name},
            {QStringLiteral("start"), proposal.block.start.toString(Qt::ISODate)},
            {QStringLiteral("accepted"), accepted},
            {QStringLiteral("weeks"), weeks},
            {QStringLiteral("why"), why},
            {QStringLiteral("cautions"), QJsonArray::fromStringList(proposal.cautions)},
            {QStringLiteral("unmet"), QJsonArray::fromStringList(proposal.unmet)}};
}

QString weekTitle(int number, WeekKind kind)
{
    return kind == WeekKind::Deload ? PlanCommandText::tr("Week %1, deload").arg(number)
                                    : PlanCommandText::tr("Week %1").arg(number);
}

QStringList weekLines(const PlannedWeek& week, const Library& library, Id<Athlete> athlete)
{
    QStringList lines;
    for (const PlannedDay& day : week.days) {
        lines << QStringLiteral("  ") + day.date.toString(Qt::ISODate);
        for (const Slot& slot : day.slotList)
            lines << PlanCommandText::tr("    %1: %2 x %3, %4 in reserve")
                         .arg(planLiftName(library, {athlete, slot.variant, slot.grip, slot.standard}),
                              QString::number(slot.sets), bandText(slot.band),
                              slot.plannedRir ? slot.plannedRir->toString() : QStringLiteral("?"));
    }
    return lines;
}

QString planText(const Row<Athlete>& athlete, const Library& library, const BlockProposal& proposal)
{
    QStringList lines{QStringLiteral("%1: %2").arg(athlete.value.name, proposal.block.name)};
    for (std::size_t i = 0; i < proposal.block.weeks.size(); ++i) {
        const PlannedWeek& week = proposal.block.weeks[i];
        lines << weekTitle(static_cast<int>(i) + 1, week.kind) << weekLines(week, library, athlete.id);
    }
    lines << PlanCommandText::tr("Why");
    for (const ProposedSlot& slot : proposal.week)
        lines << QStringLiteral("  %1: %2").arg(planLiftName(library, slot.lift), slot.why);
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
    if (accept) STEELYARD_CHECK(acceptPlan(path, console.clock(), proposal.block));
    if (console.json())
        console.print(QJsonDocument(planJson(athlete, library, proposal, accept)));
    else
        console.print(planText(athlete, library, proposal));
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
