#include "core/storage/changeset.h"

#include <QtCore/QCoreApplication>

#include <sqlite3.h>

namespace steelyard {
namespace {

struct ChangesetText {
    Q_DECLARE_TR_FUNCTIONS(ChangesetText)
};

// A row to be deleted that is gone already is no conflict: deleting its owner took it along (ON DELETE CASCADE). Anything
// else means that the book is not what the changeset knows.
int stopAtConflict(void*, int kind, sqlite3_changeset_iter* change)
{
    const char* table = nullptr;
    int columns = 0;
    int operation = 0;
    int indirect = 0;
    if (kind == SQLITE_CHANGESET_NOTFOUND
        && sqlite3changeset_op(change, &table, &columns, &operation, &indirect) == SQLITE_OK
        && operation == SQLITE_DELETE)
        return SQLITE_CHANGESET_OMIT;
    return SQLITE_CHANGESET_ABORT;
}

struct ChangesetOutput {
    const Progress& progress;
    QByteArray bytes;
};

// SQLite hands the record over in parts of about a kilobyte.
int takeChangesetPart(void* output, const void* part, int size)
{
    auto& [progress, bytes] = *static_cast<ChangesetOutput*>(output);
    if (progress.cancelled()) return SQLITE_INTERRUPT;
    bytes.append(static_cast<const char*>(part), size);
    return SQLITE_OK;
}

}  // namespace

Result<ChangesetRecorder> ChangesetRecorder::start(Database& database)
{
    sqlite3_session* session = nullptr;
    if (sqlite3session_create(database.handle(), "main", &session) != SQLITE_OK)
        return fail(database.lastError(ChangesetText::tr("preparing to undo")));
    ChangesetRecorder recorder(session);
    if (sqlite3session_attach(session, nullptr) != SQLITE_OK)
        return fail(database.lastError(ChangesetText::tr("preparing to undo")));
    return recorder;
}

ChangesetRecorder::~ChangesetRecorder()
{
    if (m_session) sqlite3session_delete(m_session);
}

Result<QByteArray> ChangesetRecorder::finish(const Progress& progress)
{
    ChangesetOutput output{progress, {}};
    const int code = sqlite3session_changeset_strm(m_session, takeChangesetPart, &output);
    if (code == SQLITE_INTERRUPT) return fail(ErrorCode::Cancelled, ChangesetText::tr("Stopped; nothing was changed."));
    if (code != SQLITE_OK)
        return fail(ErrorCode::Storage,
                    ChangesetText::tr("What changed could not be recorded, so nothing was changed."));
    return std::move(output.bytes);
}

Result<void> applyChangeset(Transaction& transaction, const QByteArray& changeset, Direction direction)
{
    QByteArray forward = changeset;
    int size = static_cast<int>(forward.size());
    void* bytes = forward.data();
    void* inverted = nullptr;
    if (direction == Direction::Back) {
        if (sqlite3changeset_invert(size, bytes, &size, &inverted) != SQLITE_OK)
            return fail(ErrorCode::Storage,
                        ChangesetText::tr("The change could not be turned round; nothing was changed."));
        bytes = inverted;
    }
    sqlite3* handle = transaction.database().handle();
    const int code = sqlite3changeset_apply(handle, size, bytes, nullptr, stopAtConflict, nullptr);
    sqlite3_free(inverted);
    if (code == SQLITE_ABORT)
        return fail(ErrorCode::Conflict,
                    ChangesetText::tr("The book has changed since, so this can't be undone or redone any more."));
    if (code != SQLITE_OK) return fail(transaction.database().lastError(ChangesetText::tr("undoing")));
    return {};
}

}  // namespace steelyard
