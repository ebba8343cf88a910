#include "app/console/commands/commands.h"
#include "core/care/backup_shelf.h"
#include "core/care/erased_list.h"
#include "core/care/erasure.h"
#include "core/care/erasure_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct EraseCommandText {
    Q_DECLARE_TR_FUNCTIONS(EraseCommandText)
};

struct EraseOutcome {
    ErasurePlan plan;
    bool erased = false;
    bool fileCleaned = true;
    QStringList stillNaming;  // files
    std::vector<CopyFinding> copies;
};

QString copyLine(const CopyFinding& copy)
{
    return copy.state == CopyState::Holds
               ? EraseCommandText::tr("This copy still has them: %1").arg(copy.path)
               : EraseCommandText::tr("This copy may have them; it can't be looked into: %1").arg(copy.path);
}

QJsonObject toJson(const EraseOutcome& outcome)
{
    QJsonObject counts;
    for (const RowCount& count : outcome.plan.counts)
        counts[QString::fromStdString(count.table)] = static_cast<qint64>(count.rows);
    QJsonArray mentions;
    for (const NameMention& mention : outcome.plan.mentions) mentions.append(mentionLine(mention));
    QJsonArray holding;
    for (const CopyFinding& copy : outcome.copies)
        if (copy.state != CopyState::Free) holding.append(copy.path);
    return {{QStringLiteral("erased"), outcome.erased},
            {QStringLiteral("rows"), counts},
            {QStringLiteral("steps_forgotten"), outcome.plan.stepsForgotten},
            {QStringLiteral("mentions"), mentions},
            {QStringLiteral("copies"), holding},
            {QStringLiteral("file_cleaned"), outcome.fileCleaned},
            {QStringLiteral("files_still_naming"), QJsonArray::fromStringList(outcome.stillNaming)}};
}

void printOutcome(const Console& console, const EraseOutcome& outcome)
{
    if (console.json()) return console.print(QJsonDocument(toJson(outcome)));
    console.print(outcome.erased ? EraseCommandText::tr("Erased:") : EraseCommandText::tr("This would be erased:"));
    for (const QString& line : erasureLines(outcome.plan.counts)) console.print(QStringLiteral("  ") + line);
    console.print(EraseCommandText::tr("Steps of undo and redo that are forgotten, of everybody: %1")
                      .arg(outcome.plan.stepsForgotten));
    for (const NameMention& mention : outcome.plan.mentions)
        console.print(
            EraseCommandText::tr("The name stays where it is not theirs; change it there if it should not: %1")
                .arg(mentionLine(mention)));
    for (const CopyFinding& copy : outcome.copies)
        if (copy.state != CopyState::Free) console.print(copyLine(copy));
    if (!outcome.erased)
        console.print(
            EraseCommandText::tr("Nothing was changed. It can't be undone: to go on, add --confirm with "
                                 "the same name."));
}

Result<void> eraseConfirmed(const Console& console, const QString& path, const QString& name, EraseOutcome& outcome)
{
    {
        STEELYARD_TRY(const auto book, Book::open(path, console.clock()));
        STEELYARD_TRY(const auto athlete, book->athletes().findByName(name));
        STEELYARD_TRY(outcome.plan, planErasure(book->database(), athlete.id));
        const BackupShelf shelf(BackupShelf::usualFolder(path), console.clock());
        STEELYARD_TRY([[maybe_unused]] const Backup before, shelf.keep(book->database(), BackupReason::Erase));
        STEELYARD_TRY(const auto report, eraseAthlete(*book, athlete.id));
        outcome.erased = true;
        outcome.fileCleaned = report.fileCleaned;
        if (!report.fileCleaned) console.say(report.why);
        if (const auto kept = rememberErased(shelf.folder(), {report.erased}); !kept) console.say(kept.error().what);
    }
    STEELYARD_TRY(outcome.stillNaming, filesNaming(path, outcome.plan.traces));
    return {};
}

Result<void> runErase(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    STEELYARD_TRY(const QString name, console.required(QStringLiteral("athlete")));
    const bool confirmed = console.has(QStringLiteral("confirm"));
    if (confirmed && console.value(QStringLiteral("confirm")) != name)
        return fail(ErrorCode::Invalid,
                    EraseCommandText::tr("--confirm is not the name after --athlete. Nobody was erased; give the same "
                                         "name twice."));
    EraseOutcome outcome;
    if (confirmed) {
        STEELYARD_CHECK(eraseConfirmed(console, path, name, outcome));
    } else {
        STEELYARD_TRY(const auto book, Book::openForReading(path, console.clock()));
        STEELYARD_TRY(const auto athlete, book->athletes().findByName(name));
        STEELYARD_TRY(outcome.plan, planErasure(book->database(), athlete.id));
    }
    QStringList copies = copiesBeside(path);
    for (const Backup& backup : BackupShelf(BackupShelf::usualFolder(path), console.clock()).list())
        copies += backup.path;
    outcome.copies = copiesHolding(copies, outcome.plan.mark);
    printOutcome(console, outcome);
    for (const QString& file : outcome.stillNaming)
        console.say(EraseCommandText::tr("The name still stands in “%1”.").arg(file));
    return {};
}

}  // namespace

ConsoleCommand eraseCommand()
{
    return {
        QStringLiteral("erase"),
        EraseCommandText::tr("remove one athlete and every trace of them in the book; without --confirm: say what "
                             "would go"),
        {bookOption(),
         athleteOption(),
         {QStringLiteral("confirm"), EraseCommandText::tr("The athlete's name once more."), QStringLiteral("name")}},
        &runErase};
}

}  // namespace steelyard
