#include "app/console/commands/commands.h"
#include "app/console/passphrase_input.h"
#include "core/care/backup_shelf.h"
#include "core/care/sealed_file.h"
#include "core/storage/book_copy.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

struct BackupCommandText {
    Q_DECLARE_TR_FUNCTIONS(BackupCommandText)
};

QJsonObject toJson(const Backup& backup, bool sound)
{
    return {{QStringLiteral("file"), backup.path},
            {QStringLiteral("number"), backup.number},
            {QStringLiteral("made_at"), backup.madeAt.toString(Qt::ISODate)},
            {QStringLiteral("reason"), toText(backup.reason)},
            {QStringLiteral("bytes"), backup.bytes},
            {QStringLiteral("sound"), sound}};
}

Result<void> listBackups(const Console& console, const BackupShelf& shelf)
{
    QJsonArray rows;
    QString text;
    for (const Backup& backup : shelf.list()) {
        const bool sound = shelf.check(backup, {}).has_value();
        rows.append(toJson(backup, sound));
        text += QStringLiteral("%1  %2  %3  %4\n")
                    .arg(backup.madeAt.toString(Qt::ISODate), toText(backup.reason).leftJustified(8),
                         sound ? BackupCommandText::tr("sound  ") : BackupCommandText::tr("changed"), backup.path);
    }
    if (console.json())
        console.print(
            QJsonDocument(QJsonObject{{QStringLiteral("folder"), shelf.folder()}, {QStringLiteral("backups"), rows}}));
    else
        console.print(rows.isEmpty() ? BackupCommandText::tr("There are no backups of this book yet.") : text);
    return {};
}

// Never in clear where the sealed file goes: what is sealed is a backup on the book's own shelf.
Result<void> sealBackup(const Console& console, Database& book, const BackupShelf& shelf, const QString& to)
{
    STEELYARD_TRY(const auto passphrase, readPassphrase(console, Asked::Twice));
    STEELYARD_TRY(const Backup made, shelf.keep(book, BackupReason::Asked));
    return sealFile(made.path, to, *passphrase, SealCost::usual(), console.progress());
}

Result<void> runBackup(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    const BackupShelf shelf(BackupShelf::usualFolder(path), console.clock());
    if (console.has(QStringLiteral("list"))) return listBackups(console, shelf);
    const QString to = console.value(QStringLiteral("to"));
    const bool encrypt = console.has(QStringLiteral("encrypt"));
    if (encrypt && to.isEmpty())
        return fail(ErrorCode::Unsupported, BackupCommandText::tr("--encrypt needs --to FILE."));
    if (!to.isEmpty() && QFileInfo::exists(to))
        return fail(ErrorCode::Invalid,
                    BackupCommandText::tr("“%1” is there already and was not touched. Choose another name.").arg(to));
    // Says what is no book, or a newer one; an older one is backed up in the form that it has.
    STEELYARD_TRY([[maybe_unused]] const bool older, Database::isOlder(path));
    STEELYARD_TRY(const auto book, Database::openReader(path));
    QString made = to;
    if (encrypt) {
        STEELYARD_CHECK(sealBackup(console, *book, shelf, to));
    } else if (!to.isEmpty()) {
        STEELYARD_CHECK(copyBook(*book, to));
    } else {
        STEELYARD_TRY(const Backup backup, shelf.keep(*book, BackupReason::Asked));
        made = backup.path;
    }
    if (console.json())
        console.print(QJsonDocument(QJsonObject{{QStringLiteral("file"), made},
                                                {QStringLiteral("bytes"), QFileInfo(made).size()},
                                                {QStringLiteral("sealed"), encrypt}}));
    else
        console.print(encrypt
                          ? BackupCommandText::tr("Sealed: %1. Without the passphrase there is no way back.").arg(made)
                          : BackupCommandText::tr("Backed up: %1").arg(made));
    return {};
}

}  // namespace

ConsoleCommand backupCommand()
{
    return {QStringLiteral("backup"),
            BackupCommandText::tr("copy a book while it may be open, and check the copy"),
            {bookOption(),
             {QStringLiteral("to"),
              BackupCommandText::tr("A file that isn't there yet; without it, among the book's backups."),
              QStringLiteral("file")},
             {QStringLiteral("encrypt"), BackupCommandText::tr("Seal it with a passphrase, read from standard input.")},
             {QStringLiteral("list"), BackupCommandText::tr("Only list the book's backups, newest first.")}},
            &runBackup};
}

}  // namespace steelyard
