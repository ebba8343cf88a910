#include "core/storage/damaged_file.h"

#include "core/storage/book_schema.h"
#include "core/storage/left_journal.h"
#include "core/storage/migrations.h"
#include "core/storage/row_rescue.h"
#include "core/storage/sqlite_library.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QtEndian>

#include <sqlite3.h>

#include <algorithm>

namespace steelyard {
namespace {

struct DamagedFileText {
    Q_DECLARE_TR_FUNCTIONS(DamagedFileText)
};

constexpr qint64 kPiece = 4096;

// Byte for byte, and with zeros where the disk gives nothing. Returns how many bytes that were; nothing when there is no file.
std::optional<qint64> copyReadable(const QString& from, const QString& to)
{
    QFile source(from);
    QFile copy(to);
    if (!source.open(QIODevice::ReadOnly | QIODevice::Unbuffered) || !copy.open(QIODevice::WriteOnly))
        return std::nullopt;
    copy.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner);
    qint64 unread = 0;
    const qint64 size = source.size();
    for (qint64 at = 0; at < size; at += kPiece) {
        const qint64 wanted = std::min(kPiece, size - at);
        QByteArray piece = source.seek(at) ? source.read(wanted) : QByteArray();
        unread += wanted - piece.size();
        piece.append(QByteArray(wanted - piece.size(), '\0'));
        if (copy.write(piece) != wanted) return std::nullopt;
    }
    return copy.flush() ? std::optional(unread) : std::nullopt;
}

bool isPageSize(quint32 size)
{
    return size >= 512 && size <= 65536 && (size & (size - 1)) == 0;
}

// The fixed parts of the first hundred bytes, as every book has them. Freed pages are forgotten: nobody writes here.
void mendHeader(QByteArray& header, qint64 fileSize)
{
    auto* bytes = header.data();
    const auto pageField = qFromBigEndian<quint16>(bytes + 16);
    quint32 page = pageField == 1 ? 65536 : pageField;
    if (!isPageSize(page)) page = 4096;
    std::copy_n("SQLite format 3", 16, bytes);
    qToBigEndian<quint16>(page == 65536 ? 1 : static_cast<quint16>(page), bytes + 16);
    const char fixed[] = {2, 2, 0, 64, 32, 32};  // journal twice, no reserve, shares of a page
    std::copy(std::begin(fixed), std::end(fixed), bytes + 18);
    qToBigEndian<quint32>(static_cast<quint32>(fileSize / page), bytes + 28);
    qToBigEndian<quint64>(0, bytes + 32);  // freed pages
    qToBigEndian<quint32>(4, bytes + 44);  // schema format
    qToBigEndian<quint32>(0, bytes + 52);
    qToBigEndian<quint32>(1, bytes + 56);  // UTF-8
    qToBigEndian<quint32>(0, bytes + 64);
    std::copy_n(bytes + 24, 4, bytes + 92);  // the size above holds for this change counter
}

}  // namespace

Result<std::unique_ptr<DamagedFile>> DamagedFile::open(const QString& path, const QString& folder)
{
    std::unique_ptr<DamagedFile> file(new DamagedFile);
    STEELYARD_CHECK(file->copyIn(path, folder));
    STEELYARD_CHECK(file->connect());
    if (QFile::exists(journalOf(file->m_path)) && !file->isSound()) {
        // Perhaps it isn't this book's journal.
        std::unique_ptr<DamagedFile> alone(new DamagedFile);
        const QString other = QDir(folder).filePath(QStringLiteral("alone"));
        if (!QDir().mkpath(other)) return file;
        STEELYARD_CHECK(alone->copyIn(path, other));
        QFile::remove(journalOf(alone->m_path));
        if (alone->connect() && alone->isSound()) {
            alone->m_journalLeftOut = true;
            file = std::move(alone);
        }
    }
    STEELYARD_CHECK(file->mendSchema());
    return file;
}

DamagedFile::~DamagedFile()
{
    sqlite3_close(m_handle);
}

Result<void> DamagedFile::copyIn(const QString& path, const QString& folder)
{
    if (!QFileInfo(path).isFile())
        return fail(ErrorCode::NotFound, DamagedFileText::tr("There is no book at “%1”.").arg(path));
    m_path = QDir(folder).filePath(QStringLiteral("damaged.steelyard"));
    const auto unread = copyReadable(path, m_path);
    if (!unread)
        return fail(ErrorCode::Storage,
                    DamagedFileText::tr("“%1” can't be read, or there is no room to work on a copy of it.").arg(path));
    m_unreadBytes = *unread;
    if (hasJournal(path)) m_unreadBytes += copyReadable(journalOf(path), journalOf(m_path)).value_or(0);
    return {};
}

Result<void> DamagedFile::connect()
{
    prepareLibrary();
    const int newest = builtInMigrations().back().version;
    QFile file(m_path);
    const Error nothing{ErrorCode::Storage,
                        DamagedFileText::tr("Nothing in this file can be read as a book. Restore a backup.")};
    if (!file.open(QIODevice::ReadWrite)) return fail(nothing);
    QByteArray header = file.read(100);
    if (header.size() < 100) return fail(nothing);
    const int said = qFromBigEndian<qint32>(header.constData() + 60);
    if (qFromBigEndian<qint32>(header.constData() + 68) == kApplicationId && said > newest) return fail(tooNew(said));
    m_version = said >= 1 && said <= newest ? said : newest;
    mendHeader(header, file.size());
    if (!file.seek(0) || file.write(header) != header.size()) return fail(nothing);
    file.close();
    if (sqlite3_open_v2(QFile::encodeName(m_path).constData(), &m_handle, SQLITE_OPEN_READWRITE, nullptr) != SQLITE_OK)
        return fail(nothing);
    STEELYARD_CHECK(tameConnection(m_handle));
    // A list of tables that can't be understood as a whole is read as far as it goes.
    sqlite3_db_config(m_handle, SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
    sqlite3_exec(m_handle, "PRAGMA writable_schema = ON; PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0", nullptr,
                 nullptr, nullptr);
    if (sqlite3_exec(m_handle, "SELECT count(*) FROM sqlite_schema", nullptr, nullptr, nullptr) == SQLITE_NOTADB)
        return fail(nothing);
    return {};
}

bool DamagedFile::isSound() const
{
    sqlite3_stmt* statement = nullptr;
    bool sound = false;
    if (sqlite3_prepare_v2(m_handle, "PRAGMA integrity_check(1)", -1, &statement, nullptr) == SQLITE_OK
        && sqlite3_step(statement) == SQLITE_ROW)
        sound = qstrcmp(reinterpret_cast<const char*>(sqlite3_column_text(statement, 0)), "ok") == 0;
    sqlite3_finalize(statement);
    return sound;
}

// Tables are read as this program knows them, whatever the file says of them; nothing in it runs.
Result<void> DamagedFile::mendSchema()
{
    STEELYARD_TRY(const Schema expected, schemaOfVersion(m_version));
    const auto run = [&](const char* sql, const QByteArray& name, const QByteArray& text) {
        sqlite3_stmt* statement = nullptr;
        if (sqlite3_prepare_v2(m_handle, sql, -1, &statement, nullptr) == SQLITE_OK) {
            sqlite3_bind_text(statement, 1, name.constData(), -1, SQLITE_TRANSIENT);
            sqlite3_bind_text(statement, 2, text.constData(), -1, SQLITE_TRANSIENT);
            sqlite3_step(statement);  // where the list itself is damaged, it stays as it is
        }
        sqlite3_finalize(statement);
    };
    run("DELETE FROM sqlite_schema WHERE type IN ('trigger', 'view') OR (type = 'index' AND sql IS NOT NULL) OR sql "
        "LIKE "
        "'create virtual%'",
        {}, {});
    for (const auto& [name, sql] : expected)
        if (name.startsWith(u"table "))
            run("UPDATE sqlite_schema SET sql = ?2 WHERE type = 'table' AND name = ?1 AND sql IS NOT ?2",
                name.mid(6).toUtf8(), sql.toUtf8());
    // Read anew by another connection, which keeps its tolerance.
    sqlite3_close(m_handle);
    m_handle = nullptr;
    return connect();
}

Result<RescuedTable> DamagedFile::rescue(const QString& table, Database& into, const Progress& progress)
{
    return rescueRows(m_handle, table, into, progress);
}

}  // namespace steelyard
