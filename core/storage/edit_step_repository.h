// The steps of the history of edits: what was changed, row by row, so that it can be taken back after a restart too. A step is
// written in the transaction of the edit itself: the book never has a change without its step, nor a step without its change.
//
//   STEELYARD_TRY(const QByteArray changeset, recorder.finish());       // recording ends, the step itself is not recorded
//   STEELYARD_CHECK(steps.append(transaction, {label, changeset, transaction.changes()}, clock.nowUtc()));
//   STEELYARD_CHECK(transaction.commit());
//
// In order of their ids; those that are undone are the last ones. The newest hundred are kept as long as their records (which
// are stored compressed) have room in kMostStepBytes; the newest always is. No content of the book: exports pass over it.
#pragma once

#include "core/storage/transaction.h"

#include <QtCore/QByteArray>
#include <QtCore/QDateTime>

#include <vector>

namespace steelyard {

inline constexpr int kMostSteps = 100;
inline constexpr std::int64_t kMostStepBytes = 64LL * 1024 * 1024;

struct EditStep {
    QString label;         // for the undo menu
    QByteArray changeset;  // storage/changeset.h
    Changes changes;
};

// A step without its record, which may be long.
struct EditStepTitle {
    Id<EditStep> id;
    QString label;
    bool undone = false;
    friend bool operator==(const EditStepTitle&, const EditStepTitle&) = default;
};

class EditStepRepository {
public:
    explicit EditStepRepository(Database& database) : m_database(database) {}
    [[nodiscard]] Result<std::vector<EditStepTitle>> titles() const;
    // NotFound: the step is gone, or its record can't be read.
    [[nodiscard]] Result<EditStep> find(Id<EditStep>) const;
    // The new last step: those that were undone can't be redone any more, and the oldest make room.
    [[nodiscard]] Result<void> append(Transaction&, const EditStep&, const QDateTime& madeAt) const;
    [[nodiscard]] Result<void> setUndone(Transaction&, Id<EditStep>, bool undone) const;
    [[nodiscard]] Result<void> remove(Transaction&, Id<EditStep>) const;
    // After something that can't be taken back.
    [[nodiscard]] Result<void> clear(Transaction&) const;

private:
    [[nodiscard]] Result<void> makeRoom() const;
    Database& m_database;
};

}  // namespace steelyard
