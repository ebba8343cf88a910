#include "core/storage/book_copy.h"

#include "core/storage/durable_file.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>

namespace steelyard {
namespace {

struct BookCopyText {
    Q_DECLARE_TR_FUNCTIONS(BookCopyText)
};

Result<void> writeCopy(Database& db, const QString& to)
{
    // Made first, so that nobody else can read it while it grows. SQLite writes into an empty file.
    QFile file(to);
    if (!file.open(QIODevice::WriteOnly | QIODevice::Truncate))
        return fail(ErrorCode::Storage, BookCopyText::tr("“%1” can't be made: %2.").arg(to, file.errorString()));
    file.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner);  // a stick that knows no owners refuses
    file.close();
    {
        // A connection that only reads may write another file all the same.
        STEELYARD_CHECK(db.execute("PRAGMA query_only = OFF"));
        STEELYARD_TRY(auto vacuum, db.prepare("VACUUM INTO ?1"));
        vacuum.bind(1, to);
        const auto written = vacuum.run();
        if (db.isReadOnly()) STEELYARD_CHECK(db.execute("PRAGMA query_only = ON"));
        STEELYARD_CHECK(written);
    }
    // Not Database::open(): it may have an older form, and is to keep it.
    STEELYARD_TRY(auto copy, Database::openReader(to));
    STEELYARD_TRY(auto check, copy->prepare("PRAGMA integrity_check"));
    STEELYARD_TRY(const bool row, check.step());
    if (!row || check.bytes(0) != "ok")
        return fail(ErrorCode::Storage, BookCopyText::tr("The copy of the book is not sound."), check.text(0));
    return {};
}

Result<void> makeCopy(Database& db, const QString& unfinished, const QString& to)
{
    STEELYARD_CHECK(writeCopy(db, unfinished));
    STEELYARD_CHECK(syncFile(unfinished));  // SQLite promises no sync of what VACUUM INTO wrote
    return renameOver(unfinished, to);
}

}  // namespace

Result<void> copyBook(Database& db, const QString& to)
{
    if (const auto there = fileIdentity(to); there && there == fileIdentity(db.path()))
        return fail(ErrorCode::Invalid,
                    BookCopyText::tr("“%1” is the book itself and was not touched. Choose another name.").arg(to));
    const QString unfinished = to + QStringLiteral(".part");
    auto made = makeCopy(db, unfinished, to);
    if (!made) QFile::remove(unfinished);
    return made;
}

}  // namespace steelyard
