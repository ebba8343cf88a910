#include "core/storage/left_journal.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>

namespace steelyard {
namespace {

struct LeftJournalText {
    Q_DECLARE_TR_FUNCTIONS(LeftJournalText)
};

Result<QString> firstFinding(Database& db)
{
    STEELYARD_TRY(auto check, db.prepare("PRAGMA integrity_check(1)"));
    STEELYARD_TRY(const bool row, check.step());
    if (!row || check.bytes(0) != "ok") return check.text(0);
    STEELYARD_TRY(auto keys, db.prepare("PRAGMA foreign_key_check"));
    STEELYARD_TRY(const bool broken, keys.step());
    return broken ? keys.text(0) : QString();
}

}  // namespace

QString journalOf(const QString& book)
{
    return book + QStringLiteral("-wal");
}

bool hasJournal(const QString& book)
{
    return QFileInfo(journalOf(book)).size() > 0;
}

Result<void> checkLeftJournal(Database& reader)
{
    const auto finding = firstFinding(reader);
    if (finding && finding->isEmpty()) return {};
    return fail(
        ErrorCode::Storage,
        LeftJournalText::tr("Beside “%1” stands a journal (%2) with which the book is not sound: one of the two is "
                            "damaged, or they do not belong together. Neither was touched. Restore a backup, "
                            "or save what can be saved from the book.")
            .arg(reader.path(), QFileInfo(journalOf(reader.path())).fileName()),
        finding ? *finding : finding.error().detail);
}

}  // namespace steelyard
