#include "core/storage/changeset.h"

#include <QtCore/QCoreApplication>

#include <sqlite3.h>

#include <memory>

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

tl::unexpected<Error> notTurned()
{
    return fail(ErrorCode::Storage, ChangesetText::tr("The change could not be turned round; nothing was changed."));
}

Result<QByteArray> inverseOf(const QByteArray& changeset)
{
    int size = 0;
    void* bytes = nullptr;
    if (sqlite3changeset_invert(static_cast<int>(changeset.size()), changeset.constData(), &size, &bytes) != SQLITE_OK)
        return notTurned();
    const std::unique_ptr<void, decltype(&sqlite3_free)> owner(bytes, &sqlite3_free);
    return QByteArray(static_cast<const char*>(bytes), size);
}

// Whether two changesets, one after the other, leave everything as it was.
Result<bool> comesToNothing(const QByteArray& first, const QByteArray& second)
{
    sqlite3_changegroup* made = nullptr;
    if (sqlite3changegroup_new(&made) != SQLITE_OK) return notTurned();
    const std::unique_ptr<sqlite3_changegroup, decltype(&sqlite3changegroup_delete)> group(made,
                                                                                           &sqlite3changegroup_delete);
    for (const QByteArray* part : {&first, &second})
        if (sqlite3changegroup_add(made, static_cast<int>(part->size()), const_cast<char*>(part->constData()))
            != SQLITE_OK)
            return notTurned();
    int size = 0;
    void* bytes = nullptr;
    if (sqlite3changegroup_output(made, &size, &bytes) != SQLITE_OK) return notTurned();
    sqlite3_free(bytes);
    return size == 0;
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
    sqlite3session_delete(std::exchange(m_session, nullptr));
    if (code == SQLITE_INTERRUPT) return fail(ErrorCode::Cancelled, ChangesetText::tr("Stopped; nothing was changed."));
    if (code != SQLITE_OK)
        return fail(ErrorCode::Storage,
                    ChangesetText::tr("What changed could not be recorded, so nothing was changed."));
    return std::move(output.bytes);
}

Result<bool> applyChangeset(Transaction& transaction, const QByteArray& changeset, Direction direction)
{
    STEELYARD_TRY(const QByteArray inverse, inverseOf(changeset));
    const QByteArray& forward = direction == Direction::Forth ? changeset : inverse;
    const QByteArray& cancelling = direction == Direction::Forth ? inverse : changeset;
    Database& database = transaction.database();
    STEELYARD_TRY(auto recorder, ChangesetRecorder::start(database));
    const int code = sqlite3changeset_apply(database.handle(), static_cast<int>(forward.size()),
                                            const_cast<char*>(forward.constData()), nullptr, stopAtConflict, nullptr);
    if (code == SQLITE_ABORT) return false;
    if (code != SQLITE_OK) return fail(database.lastError(ChangesetText::tr("undoing")));
    STEELYARD_TRY(const QByteArray done, recorder.finish());
    return comesToNothing(done, cancelling);
}

}  // namespace steelyard
