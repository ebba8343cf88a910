#include "app/console/commands/commands.h"
#include "app/console/passphrase_input.h"
#include "core/care/book_restore.h"
#include "core/care/sealed_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct RestoreCommandText {
    Q_DECLARE_TR_FUNCTIONS(RestoreCommandText)
};

QJsonObject toJson(const Rehearsal& seen)
{
    QJsonObject json{
        {QStringLiteral("athletes"), seen.content.athletes},
        {QStringLiteral("sessions"), seen.content.sessions},
        {QStringLiteral("sets"), seen.content.sets},
        {QStringLiteral("last_session"),
         seen.content.lastSession ? QJsonValue(seen.content.lastSession->toString(Qt::ISODate)) : QJsonValue()},
        {QStringLiteral("findings"), QJsonArray::fromStringList(seen.findings)}};
    if (seen.loss)
        json[QStringLiteral("would_lose")] = QJsonObject{{QStringLiteral("athletes"), seen.loss->athletes},
                                                         {QStringLiteral("sessions"), seen.loss->sessions},
                                                         {QStringLiteral("sets"), seen.loss->sets},
                                                         {QStringLiteral("sets_changed"), seen.loss->setsChanged}};
    return json;
}

void printSeen(const Console& console, const Rehearsal& seen)
{
    console.print(RestoreCommandText::tr("In it: %1 athletes, %2 sessions, %3 sets.")
                      .arg(seen.content.athletes)
                      .arg(seen.content.sessions)
                      .arg(seen.content.sets));
    if (seen.content.lastSession)
        console.print(RestoreCommandText::tr("Last session: %1.").arg(seen.content.lastSession->toString(Qt::ISODate)));
    if (seen.loss)
        console.print(RestoreCommandText::tr("The book has, and it lacks: %1 athletes, %2 sessions, %3 sets; %4 sets "
                                             "say something else now.")
                          .arg(seen.loss->athletes)
                          .arg(seen.loss->sessions)
                          .arg(seen.loss->sets)
                          .arg(seen.loss->setsChanged));
    for (const QString& finding : seen.findings) console.print(finding);
}

Result<void> preview(const Console& console, const RestoreWish& wish)
{
    STEELYARD_TRY(const Rehearsal seen, rehearseRestore(wish, console.clock(), console.progress()));
    if (console.json())
        console.print(QJsonDocument(toJson(seen)));
    else
        printSeen(console, seen);
    if (seen.findings.isEmpty()) return {};
    return fail(ErrorCode::Storage, RestoreCommandText::tr("This backup is not sound: %n finding(s).", nullptr,
                                                           static_cast<int>(seen.findings.size())));
}

Result<void> runRestore(const Console& console)
{
    RestoreWish wish;
    STEELYARD_TRY(wish.book, console.required(QStringLiteral("book")));
    STEELYARD_TRY(wish.from, console.required(QStringLiteral("from")));
    STEELYARD_TRY(const bool sealed, isSealedFile(wish.from));
    if (sealed) {
        STEELYARD_TRY(wish.passphrase, readPassphrase(console, Asked::Once));
    }
    if (console.has(QStringLiteral("preview"))) return preview(console, wish);
    STEELYARD_TRY(const StagedBook staged, stageRestore(wish, console.clock(), console.progress()));
    const BackupShelf shelf(BackupShelf::usualFolder(wish.book), console.clock());
    STEELYARD_TRY(const RestoredBook done, finishRestore(staged, shelf, console.clock()));
    if (console.json()) {
        QJsonObject json = toJson(staged.seen);
        json[QStringLiteral("set_aside")] = done.setAside.isEmpty() ? QJsonValue() : QJsonValue(done.setAside);
        json[QStringLiteral("backed_up")] = done.kept ? QJsonValue(done.kept->path) : QJsonValue();
        console.print(QJsonDocument(json));
        return {};
    }
    printSeen(console, staged.seen);
    if (!done.setAside.isEmpty())
        console.print(RestoreCommandText::tr("The book as it was is set aside: %1").arg(done.setAside));
    if (!done.kept && !done.setAside.isEmpty())
        console.say(RestoreCommandText::tr("It could not be read, so it has no backup among the others."));
    console.print(RestoreCommandText::tr("Restored."));
    return {};
}

}  // namespace

ConsoleCommand restoreCommand()
{
    return {QStringLiteral("restore"),
            RestoreCommandText::tr("put a backup in a book's place; the book is set aside"),
            {bookOption(),
             {QStringLiteral("from"),
              RestoreCommandText::tr("A backup or a sealed file; its passphrase is read from standard input."),
              QStringLiteral("file")},
             {QStringLiteral("preview"), RestoreCommandText::tr("Only say what is in it and what would be lost.")}},
            &runRestore};
}

}  // namespace steelyard
