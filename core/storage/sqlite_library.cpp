#include "core/storage/sqlite_library.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QLoggingCategory>

#include <sqlite3.h>

#include <algorithm>
#include <atomic>
#include <vector>

namespace steelyard {
namespace {

struct LibraryText {
    Q_DECLARE_TR_FUNCTIONS(LibraryText)
};

Q_LOGGING_CATEGORY(sqliteLog, "steelyard.sqlite", QtWarningMsg)

constexpr int kHeaderBytes = 100;

// What a damaged file has to say ten thousand times is known after the first hundred.
constexpr int kMostHeard = 100;

// The number alone: SQLite's own sentence may hold a path, and so a person's name.
void hearSqlite(void*, int code, const char*)
{
    static std::atomic<int> heard{0};
    if (heard.load() >= kMostHeard) return;
    switch (code & 0xff) {
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
    case SQLITE_IOERR:
    case SQLITE_FULL:
    case SQLITE_NOMEM:
    case SQLITE_WARNING:
        ++heard;
        qCWarning(sqliteLog, "SQLite %d: %s", code, sqlite3_errstr(code));
        break;
    default:
        break;  // what a statement was refused for is told where it was run
    }
}

struct ConnectionLimit {
    int what;
    int most;
};

// Far above what this program asks for, far below what could hold a reader up. A step of the history is a record of up to 64 MB; a
// copy of the book (VACUUM INTO) attaches one file.
constexpr ConnectionLimit kLimits[] = {
    {SQLITE_LIMIT_LENGTH, 256 * 1024 * 1024},
    {SQLITE_LIMIT_SQL_LENGTH, 1'000'000},
    {SQLITE_LIMIT_COLUMN, 200},
    {SQLITE_LIMIT_EXPR_DEPTH, 200},
    {SQLITE_LIMIT_COMPOUND_SELECT, 50},
    {SQLITE_LIMIT_VDBE_OP, 100'000},
    {SQLITE_LIMIT_FUNCTION_ARG, 127},
    {SQLITE_LIMIT_ATTACHED, 1},
    {SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 500},
    {SQLITE_LIMIT_VARIABLE_NUMBER, 1000},
    {SQLITE_LIMIT_TRIGGER_DEPTH, 10},
    {SQLITE_LIMIT_WORKER_THREADS, 0},
};

bool isOneLibrary(sqlite3* handle)
{
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(handle, "SELECT sqlite_source_id()", -1, &statement, nullptr) != SQLITE_OK) return true;
    const bool row = sqlite3_step(statement) == SQLITE_ROW;
    const auto* id = row ? reinterpret_cast<const char*>(sqlite3_column_text(statement, 0)) : nullptr;
    const bool same = !id || qstrcmp(id, sqlite3_sourceid()) == 0;
    sqlite3_finalize(statement);
    return same;
}

}  // namespace

// SQLite counts its memory behind one lock that all connections share, so threads that read side by side wait for each
// other. Nobody asks for the count. Both only have an effect before the first connection of the program.
void prepareLibrary()
{
    [[maybe_unused]] static const bool done = [] {
        sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
        sqlite3_config(SQLITE_CONFIG_LOG, &hearSqlite, nullptr);
        return true;
    }();
}

Result<void> tameConnection(sqlite3* handle)
{
    if (!isOneLibrary(handle))
        return fail(ErrorCode::Storage,
                    LibraryText::tr("This program was put together with two versions of its database, which would "
                                    "harm the book. Nothing was opened. Install Steelyard anew."),
                    QString::fromLatin1(sqlite3_sourceid()));
    for (const ConnectionLimit& limit : kLimits) sqlite3_limit(handle, limit.what, limit.most);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    return {};
}

std::optional<QByteArray> readHeader(const QString& path)
{
    prepareLibrary();
    sqlite3_initialize();
    sqlite3_vfs* vfs = sqlite3_vfs_find(nullptr);
    // The file itself: this call, unlike opening a database, follows no link.
    const QString itself = QFileInfo(path).canonicalFilePath();
    const QByteArray name = QFile::encodeName(itself.isEmpty() ? QFileInfo(path).absoluteFilePath() : itself);
    sqlite3_filename whole = sqlite3_create_filename(name.constData(), "", "", 0, nullptr);
    if (!whole) return std::nullopt;
    std::vector<char> memory(static_cast<std::size_t>(vfs->szOsFile), '\0');
    auto* file = reinterpret_cast<sqlite3_file*>(memory.data());
    std::optional<QByteArray> header;
    if (vfs->xOpen(vfs, whole, file, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, nullptr) == SQLITE_OK) {
        sqlite3_int64 size = 0;
        if (file->pMethods->xFileSize(file, &size) == SQLITE_OK) {
            QByteArray bytes(static_cast<qsizetype>(std::clamp<sqlite3_int64>(size, 0, kHeaderBytes)), '\0');
            if (bytes.isEmpty()
                || file->pMethods->xRead(file, bytes.data(), static_cast<int>(bytes.size()), 0) == SQLITE_OK)
                header = bytes;
        }
    }
    if (file->pMethods) file->pMethods->xClose(file);
    sqlite3_free_filename(whole);
    return header;
}

}  // namespace steelyard
