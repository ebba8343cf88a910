// One connection to one book (an SQLite file with the suffix .steelyard).
//
//   STEELYARD_TRY(auto db, Database::create(path));            // a new, empty book; refuses to overwrite
//   STEELYARD_TRY(auto db, Database::open(path, Access::ReadWrite));
//   STEELYARD_TRY(auto statement, db->prepare("SELECT name FROM athlete WHERE id = ?1"));
//
// Qt Sql opens the connection and owns it; statements run on its SQLite handle (statement.h), because binding through
// QVariant costs two to four times the insert itself. A Database is used only in the thread that made it; another
// thread opens its own.
//
// A file that is moved, deleted or replaced while it is open would take what is written to it along into nowhere. So a
// transaction begins and commits only while the path leads to the file that was opened (checkPlace), and a connection that has
// lost its place leaves no journal behind that would be taken for one of the file that came there.
//
// Failures: NotFound (no such file), Invalid (create over a file), Storage (no book, damaged, I/O), NewerFormat.
// Opening never changes a file that is not a book, nor one that a newer program wrote, nor one that holds more than its version
// should (book_schema.h), nor one beside which a journal stands that isn't its own (left_journal.h).
#pragma once

#include "core/base/result.h"
#include "core/storage/file_identity.h"

#include <QtCore/QString>

#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;
class QSqlDatabase;

namespace steelyard {

class Statement;
struct Migration;

enum class Access { ReadWrite, ReadOnly };

// "SYRD": tells a book from any other SQLite file.
inline constexpr int kApplicationId = 0x53595244;

class Database {
public:
    [[nodiscard]] static Result<std::unique_ptr<Database>> create(const QString& path);
    // Made by these steps alone: a book of an older version.
    [[nodiscard]] static Result<std::unique_ptr<Database>> create(const QString& path, const std::vector<Migration>&);
    // What is done about a book of an older form before it is brought up to date.
    enum class Older { CopyAside, ChangeInPlace };
    // In place only where the file itself is a copy that can be thrown away.
    [[nodiscard]] static Result<std::unique_ptr<Database>> open(const QString& path, Access access,
                                                                Older older = Older::CopyAside);
    // Whether a book has an older form than this program's. NotFound and damage as open().
    [[nodiscard]] static Result<bool> isOlder(const QString& path);
    // Another connection to a book that this process has open already (for a worker thread; read-only).
    [[nodiscard]] static Result<std::unique_ptr<Database>> openReader(const QString& path);
    // The same for a worker that writes (an import): whoever holds the book hands it on.
    [[nodiscard]] static Result<std::unique_ptr<Database>> openWriter(const QString& path);
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    [[nodiscard]] const QString& path() const { return m_path; }
    [[nodiscard]] bool isReadOnly() const { return m_access == Access::ReadOnly; }
    // Storage when the path no longer leads to the file that was opened.
    [[nodiscard]] Result<void> checkPlace();
    [[nodiscard]] sqlite3* handle() const { return m_handle; }

    // A statement for this text, from the cache when it was used before. It goes back to the cache when it dies.
    [[nodiscard]] Result<Statement> prepare(std::string_view sql);
    // Runs a script of any number of statements without results.
    [[nodiscard]] Result<void> execute(const char* script);
    // The newest failure of this connection as an Error, with a sentence that says what was being done.
    [[nodiscard]] Error lastError(const QString& doing) const;
    [[nodiscard]] Result<std::int64_t> integer(std::string_view sql);

private:
    friend class Statement;
    Database(QString path, Access access);
    // Immutable: without a journal and without locks, for a folder in which not even a reader may put these.
    enum class Media { Usual, Immutable };
    [[nodiscard]] static Result<std::unique_ptr<Database>> openAnother(const QString& path, Access access,
                                                                       Media media = Media::Usual);
    [[nodiscard]] static Result<std::unique_ptr<Database>> openSomehow(const QString& path, Access access);
    [[nodiscard]] Result<void> connect(bool create, Media media = Media::Usual);
    [[nodiscard]] Result<void> configure();
    // Statements for one text that nobody uses right now. Nodes of the map stay where they are, so a Statement points
    // at its own and no text is copied or hashed when it goes back.
    using Idle = std::vector<sqlite3_stmt*>;
    struct TextHash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const noexcept { return std::hash<std::string_view>{}(text); }
    };

    QString m_path;
    Access m_access;
    std::optional<FileIdentity> m_file;  // that was opened
    QString m_connectionName;
    std::unique_ptr<QSqlDatabase> m_connection;
    sqlite3* m_handle = nullptr;
    std::unordered_map<std::string, Idle, TextHash, std::equal_to<>> m_cache;
};

}  // namespace steelyard
