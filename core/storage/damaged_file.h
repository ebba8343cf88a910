// The file of a book that doesn't open, so that what is still readable in it can be read. It works on a private copy: what stands in the
// way of reading at all (the first hundred bytes; a list of tables with things in it that don't belong there) is mended in that
// copy, and the file itself is left as it is.
//
//   STEELYARD_TRY(auto damaged, DamagedFile::open(path, folder.path()));
//   STEELYARD_TRY(const RescuedTable sets, damaged->rescue("set_entry", book, progress));
//
// A page that can't be read takes its rows with it; those before and behind it are found by their row ids. Rows that the new book's
// schema refuses are left out and counted. Source for what a file consists of: sqlite.org/fileformat2.html (1.3, 1.5, 2.6).
// Failures: NotFound, Storage (nothing of it can be read; the new book can't be written), Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/storage/database.h"

struct sqlite3;

namespace steelyard {

struct RescuedTable {
    QString table;
    std::int64_t rows = 0;        // are in the new book
    std::int64_t refused = 0;     // could be read, but can't be true
    std::int64_t unreadable = 0;  // at most so many are missing between those that could be read
    bool endUnknown = false;      // behind the last one that could be read may have been more
    bool wasThere = true;         // the file still knew where it stands
};

class DamagedFile {
public:
    // The folder must be empty and private; the copy stays there until the caller removes it.
    [[nodiscard]] static Result<std::unique_ptr<DamagedFile>> open(const QString& path, const QString& folder);
    ~DamagedFile();
    DamagedFile(const DamagedFile&) = delete;
    DamagedFile& operator=(const DamagedFile&) = delete;

    // Of the book's form; this program's newest where the file no longer says it credibly.
    [[nodiscard]] int version() const { return m_version; }
    // What the disk itself didn't give, in bytes.
    [[nodiscard]] qint64 unreadBytes() const { return m_unreadBytes; }
    // A journal was there, and the book without it is in better order than with it.
    [[nodiscard]] bool isJournalLeftOut() const { return m_journalLeftOut; }

    // Copies every row that can be read into the table of that name, which has the form of version() and is empty.
    [[nodiscard]] Result<RescuedTable> rescue(const QString& table, Database& into, const Progress& progress);

private:
    DamagedFile() = default;
    [[nodiscard]] Result<void> copyIn(const QString& path, const QString& folder);
    [[nodiscard]] Result<void> connect();
    [[nodiscard]] bool isSound() const;
    [[nodiscard]] Result<void> mendSchema();

    QString m_path;  // of the copy
    sqlite3* m_handle = nullptr;
    int m_version = 0;
    qint64 m_unreadBytes = 0;
    bool m_journalLeftOut = false;
};

}  // namespace steelyard
