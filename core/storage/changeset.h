// What a piece of work changed in the book, row by row, as SQLite's session extension records it. The base of undo:
// any edit can be taken back exactly, without code of its own for going back.
//
//   STEELYARD_TRY(auto recorder, ChangesetRecorder::start(db));
//   ... write ...
//   STEELYARD_TRY(const QByteArray changeset, recorder.finish());   // empty: nothing changed
//   STEELYARD_TRY(const bool fits, applyChangeset(transaction, changeset, Direction::Back));
//
// What is applied is recorded in its turn, and both records together must come to nothing. So a row that somebody else hung
// on one that would go (and that would go along with it) is noticed, and nothing is lost unseen.
#pragma once

#include "core/base/progress.h"
#include "core/storage/transaction.h"

#include <QtCore/QByteArray>

struct sqlite3_session;

namespace steelyard {

class ChangesetRecorder {
public:
    [[nodiscard]] static Result<ChangesetRecorder> start(Database&);
    ChangesetRecorder(ChangesetRecorder&& other) noexcept : m_session(std::exchange(other.m_session, nullptr)) {}
    ChangesetRecorder& operator=(ChangesetRecorder&&) = delete;
    ChangesetRecorder(const ChangesetRecorder&) = delete;
    ~ChangesetRecorder();

    // Ends the recording. Reads every changed row once more, so it takes a while after an import and can be stopped
    // (Cancelled).
    [[nodiscard]] Result<QByteArray> finish(const Progress& = {});

private:
    explicit ChangesetRecorder(sqlite3_session* session) : m_session(session) {}
    sqlite3_session* m_session;
};

enum class Direction { Forth, Back };

// False: the book is not what the changeset expects; the transaction is then to be dropped.
[[nodiscard]] Result<bool> applyChangeset(Transaction&, const QByteArray& changeset, Direction direction);

}  // namespace steelyard
