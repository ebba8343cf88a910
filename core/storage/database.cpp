#include "core/storage/database.h"

#include "core/storage/book_schema.h"
#include "core/storage/left_journal.h"
#include "core/storage/migrations.h"
#include "core/storage/sqlite_library.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QUrl>
#include <QtCore/QUuid>
#include <QtCore/QtEndian>
#include <QtSql/QSqlDatabase>
#include <QtSql/QSqlDriver>
#include <QtSql/QSqlError>

#include <sqlite3.h>

namespace steelyard {
namespace {

struct DatabaseText {
    Q_DECLARE_TR_FUNCTIONS(DatabaseText)
};

Error notABook(const QString& path, const QString& detail)
{
    return {
        ErrorCode::Storage,
        DatabaseText::tr("“%1” is not a Steelyard book, or it is damaged at its beginning. It was not touched. Choose "
                         "a file that ends in .steelyard, or restore a backup.")
            .arg(path),
        detail};
}

// Looks at the file's first bytes without opening it as a database, so that a stranger's file stays untouched.
Result<void> checkHeader(const QString& path)
{
    const auto read = readHeader(path);
    if (!read)
        return fail(ErrorCode::Storage,
                    DatabaseText::tr("“%1” can't be read. Check that you may read it and that its disk is connected.")
                        .arg(path));
    const QByteArray& header = *read;
    if (header.size() < 100 || !header.startsWith(QByteArray("SQLite format 3\0", 16)))
        return fail(notABook(path, QStringLiteral("no SQLite header")));
    if (qFromBigEndian<qint32>(header.constData() + 68) != kApplicationId)
        return fail(notABook(path, QStringLiteral("another application_id")));
    const int version = qFromBigEndian<qint32>(header.constData() + 60);
    if (version > builtInMigrations().back().version) return fail(tooNew(version));
    return {};
}

// The book as it will read with the journal beside it, before anybody writes: whose it is, of which version, and whether the two
// fit.
Result<void> checkWithJournal(const QString& path)
{
    STEELYARD_TRY(const auto reader, Database::openReader(path));
    STEELYARD_TRY(const int version, schemaVersion(*reader));
    if (version > builtInMigrations().back().version) return fail(tooNew(version));
    return checkLeftJournal(*reader);
}

// Owner only: a book holds other people's health.
void keepPrivate(const QString& path)
{
    QFile::setPermissions(path, QFileDevice::ReadOwner | QFileDevice::WriteOwner);
}

}  // namespace

Database::Database(QString path, Access access)
    : m_path(std::move(path)),
      m_access(access),
      m_connectionName(QStringLiteral("book-") + QUuid::createUuid().toString(QUuid::WithoutBraces))
{}

Database::~Database()
{
    for (auto& [sql, statements] : m_cache)
        for (sqlite3_stmt* statement : statements) sqlite3_finalize(statement);
    if (m_connection) {
        if (m_handle && !isReadOnly()) static_cast<void>(checkPlace());
        m_connection->close();
        m_connection.reset();
        QSqlDatabase::removeDatabase(m_connectionName);
    }
}

Result<std::unique_ptr<Database>> Database::create(const QString& path)
{
    return create(path, builtInMigrations());
}

Result<std::unique_ptr<Database>> Database::create(const QString& path, const std::vector<Migration>& steps)
{
    if (QFileInfo::exists(path))
        return fail(ErrorCode::Invalid,
                    DatabaseText::tr("“%1” is there already and was not touched. Choose another name.").arg(path));
    // An empty file would make SQLite throw it away: it may be the newest part of a book that was moved without it.
    if (hasJournal(path))
        return fail(
            ErrorCode::Invalid,
            DatabaseText::tr("At “%1” a book was kept whose journal (%2) is still there. Move it away, or put it "
                             "back beside its book; or choose another name.")
                .arg(path, QFileInfo(journalOf(path)).fileName()));
    std::unique_ptr<Database> db(new Database(path, Access::ReadWrite));
    const auto attempt = [&]() -> Result<void> {
        STEELYARD_CHECK(db->connect(true));
        keepPrivate(path);
        // Everything up to here lands in the file itself before the journal moves to a side file, so that the first
        // bytes alone tell what it is.
        const QByteArray id = "PRAGMA application_id = " + QByteArray::number(kApplicationId);
        STEELYARD_CHECK(db->execute(id.constData()));
        STEELYARD_CHECK(migrate(*db, steps, {}));
        return db->configure();
    };
    if (auto outcome = attempt(); !outcome) {
        db.reset();
        QFile::remove(path);
        return fail(outcome.error());
    }
    return db;
}

Result<std::unique_ptr<Database>> Database::open(const QString& path, Access access, Older older)
{
    if (!QFileInfo(path).isFile())
        return fail(ErrorCode::NotFound, DatabaseText::tr("There is no book at “%1”.").arg(path));
    STEELYARD_CHECK(checkHeader(path));
    // Who only reads finds a journal as often as somebody else writes.
    if (access == Access::ReadWrite && hasJournal(path)) STEELYARD_CHECK(checkWithJournal(path));
    STEELYARD_TRY(auto db, openSomehow(path, access));
    STEELYARD_CHECK(checkSchema(*db));
    const auto migrations = builtInMigrations();
    STEELYARD_TRY(const int version, schemaVersion(*db));
    if (version < migrations.back().version && access == Access::ReadOnly)
        return fail(ErrorCode::Storage,
                    DatabaseText::tr("This book has an older form and can only be brought up to date where it can be "
                                     "written. Close the other program that holds it, or copy the book."));
    const QString aside = path + QStringLiteral(".before-version-%1").arg(migrations.back().version);
    STEELYARD_CHECK(migrate(*db, migrations, older == Older::CopyAside ? aside : QString()));
    return db;
}

Result<bool> Database::isOlder(const QString& path)
{
    if (!QFileInfo(path).isFile())
        return fail(ErrorCode::NotFound, DatabaseText::tr("There is no book at “%1”.").arg(path));
    STEELYARD_CHECK(checkHeader(path));
    STEELYARD_TRY(const auto db, openSomehow(path, Access::ReadOnly));
    STEELYARD_TRY(const int version, schemaVersion(*db));
    return version < builtInMigrations().back().version;
}

Result<std::unique_ptr<Database>> Database::openReader(const QString& path)
{
    return openSomehow(path, Access::ReadOnly);
}

Result<std::unique_ptr<Database>> Database::openWriter(const QString& path)
{
    return openAnother(path, Access::ReadWrite);
}

// Does not look at the file's bytes first: closing a plain handle on it would drop this process's locks.
Result<std::unique_ptr<Database>> Database::openAnother(const QString& path, Access access, Media media)
{
    std::unique_ptr<Database> db(new Database(path, access));
    STEELYARD_CHECK(db->connect(false, media));
    STEELYARD_CHECK(db->configure());
    return db;
}

// Even a reader wants files beside the book, which a protected folder refuses. The book alone can be read then, if nothing
// stands in a journal beside it.
Result<std::unique_ptr<Database>> Database::openSomehow(const QString& path, Access access)
{
    auto db = openAnother(path, access);
    const QFileInfo file(path);
    if (db || access == Access::ReadWrite || QFileInfo(file.path()).isWritable()) return db;
    if (hasJournal(path))
        return fail(ErrorCode::Storage,
                    DatabaseText::tr("“%1” was not closed by the program that wrote it, and its folder is protected. "
                                     "Copy the whole folder to a place where you may write, and open the copy.")
                        .arg(path),
                    db.error().detail);
    return openAnother(path, access, Media::Immutable);
}

Result<void> Database::connect(bool create, Media media)
{
    prepareLibrary();
    m_connection =
        std::make_unique<QSqlDatabase>(QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), m_connectionName));
    m_connection->setDatabaseName(m_path);
    QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000");
    if (m_access == Access::ReadOnly) options += QStringLiteral(";QSQLITE_OPEN_READONLY");
    if (media == Media::Immutable) {
        options += QStringLiteral(";QSQLITE_OPEN_URI");
        m_connection->setDatabaseName(
            QString::fromLatin1(QUrl::fromLocalFile(QFileInfo(m_path).absoluteFilePath()).toEncoded())
            + QStringLiteral("?immutable=1"));
    }
    m_connection->setConnectOptions(options);
    if (!m_connection->open())
        return fail(
            ErrorCode::Storage,
            create
                ? DatabaseText::tr("“%1” can't be made. Check that the folder exists and can be written.").arg(m_path)
                : DatabaseText::tr("“%1” can't be opened.").arg(m_path),
            m_connection->lastError().text());
    const QVariant handle = m_connection->driver()->handle();
    m_handle = *static_cast<sqlite3* const*>(handle.constData());
    sqlite3_extended_result_codes(m_handle, 1);
    m_file = fileIdentity(m_path);
    return tameConnection(m_handle);
}

Result<void> Database::checkPlace()
{
    if (!m_file || fileIdentity(m_path) == m_file) return {};
    // What is committed goes into the file that is held, wherever it is now. What stayed in the journal would be lost with it,
    // or be taken for a journal of the file that came to this place.
    static_cast<void>(execute("PRAGMA wal_checkpoint(TRUNCATE)"));
    return fail(
        ErrorCode::Storage,
        DatabaseText::tr("The book's file was moved, deleted or replaced while it was open, so nothing was written: "
                         "“%1”. What was saved before is still held here. Put the file back and try again, or choose "
                         "Book, Save a copy.")
            .arg(m_path));
}

Result<void> Database::configure()
{
    if (auto probe = integer("SELECT count(*) FROM sqlite_schema"); !probe)
        return fail(notABook(m_path, probe.error().detail));
    STEELYARD_CHECK(
        execute("PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON; "
                "PRAGMA mmap_size = 0; PRAGMA temp_store = MEMORY; PRAGMA cache_size = -65536;"));
    if (m_access == Access::ReadOnly) return execute("PRAGMA query_only = ON");
    return execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA secure_delete = ON;");
}

Result<Statement> Database::prepare(std::string_view sql)
{
    auto entry = m_cache.find(sql);
    if (entry == m_cache.end()) entry = m_cache.emplace(std::string(sql), Idle{}).first;
    if (Idle& idle = entry->second; !idle.empty()) {
        sqlite3_stmt* statement = idle.back();
        idle.pop_back();
        return Statement(*this, idle, statement);
    }
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v3(m_handle, sql.data(), static_cast<int>(sql.size()), SQLITE_PREPARE_PERSISTENT, &statement,
                           nullptr)
        != SQLITE_OK)
        return fail(lastError(DatabaseText::tr("reading or writing the book")));
    return Statement(*this, entry->second, statement);
}

Result<void> Database::execute(const char* script)
{
    if (sqlite3_exec(m_handle, script, nullptr, nullptr, nullptr) != SQLITE_OK)
        return fail(lastError(DatabaseText::tr("reading or writing the book")));
    return {};
}

Error Database::lastError(const QString& doing) const
{
    const int code = sqlite3_extended_errcode(m_handle);
    const QString detail =
        QStringLiteral("SQLite %1: %2").arg(QString::number(code), QString::fromUtf8(sqlite3_errmsg(m_handle)));
    switch (code & 0xff) {
    case SQLITE_FULL:
        return {ErrorCode::Storage,
                DatabaseText::tr("The disk is full, so nothing was changed. Free some space and try again."), detail};
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return {
            ErrorCode::Conflict,
            DatabaseText::tr("Another program is writing to this book, so nothing was changed. Try again when it is "
                             "done."),
            detail};
    case SQLITE_CONSTRAINT:
        // Names a table and a column, and nothing that anybody typed.
        return {ErrorCode::Invalid,
                DatabaseText::tr("The book can't hold this: something stands in it twice or breaks a rule of the book. "
                                 "Nothing was changed."),
                detail};
    case SQLITE_READONLY:
        return {ErrorCode::Storage, DatabaseText::tr("The book is open for reading only, so nothing was changed."),
                detail};
    case SQLITE_IOERR:
    case SQLITE_CANTOPEN:
        return {ErrorCode::Storage,
                DatabaseText::tr("The disk did not take or give the data, so nothing was changed. Check that there is "
                                 "room on it and that it is still connected, and try again."),
                detail};
    case SQLITE_NOTADB:
    case SQLITE_CORRUPT:
        return {ErrorCode::Storage,
                DatabaseText::tr("The book's file is damaged. Nothing was changed; restore a backup."), detail};
    default:
        return {ErrorCode::Storage, DatabaseText::tr("Something failed while %1. Nothing was changed.").arg(doing),
                detail};
    }
}

Result<std::int64_t> Database::integer(std::string_view sql)
{
    STEELYARD_TRY(auto statement, prepare(sql));
    STEELYARD_TRY(const bool row, statement.step());
    return row ? statement.int64(0) : 0;
}

}  // namespace steelyard
