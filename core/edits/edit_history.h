// Performs edits, and takes them back and forth, in this run of the program or a later one. One history per opened book.
//
//   STEELYARD_TRY(const bool changed, history.perform(std::move(edit)));
//   if (history.canUndo()) STEELYARD_CHECK(history.undo());
//
// perform(): begin, apply, remember, commit, publish. An edit that changed nothing is not remembered. A failure leaves the
// book as it was. Steps live in the book itself (storage/edit_step_repository.h), the newest hundred of them; here are only
// their titles.
//
// Undo and redo fail with Conflict when a row has changed in the meantime behind the history's back, or when more would go
// than the edit had brought. Such a step can never be taken back any more and is dropped. They fail with Conflict too, and drop
// nothing, when the step that the menu named is no longer the one in turn.
#pragma once

#include "core/base/clock.h"
#include "core/edits/change_hub.h"
#include "core/edits/edit.h"
#include "core/storage/changeset.h"
#include "core/storage/edit_step_repository.h"

namespace steelyard {

class EditHistory {
public:
    EditHistory(Database& database, ChangeHub& hub, const Clock& clock)
        : m_database(database), m_hub(hub), m_clock(clock)
    {}

    // What earlier runs left. A book that can only be read has none.
    [[nodiscard]] Result<void> load();
    // True when the book changed.
    [[nodiscard]] Result<bool> perform(std::unique_ptr<Edit> edit);
    [[nodiscard]] bool canUndo() const { return m_done > 0; }
    [[nodiscard]] bool canRedo() const { return m_done < m_steps.size(); }
    [[nodiscard]] QString undoLabel() const { return canUndo() ? m_steps[m_done - 1].label : QString(); }
    [[nodiscard]] QString redoLabel() const { return canRedo() ? m_steps[m_done].label : QString(); }
    [[nodiscard]] Result<void> undo();
    [[nodiscard]] Result<void> redo();
    // Looks at the steps anew and announces what was committed elsewhere: on a worker's own connection, with its step
    // (rememberStep), or as something that ended the history.
    void adopt(const Changes& changes);
    // Nothing can be undone any more once the caller's transaction is committed; adopt() tells of it.
    [[nodiscard]] Result<void> clear(Transaction& transaction);

private:
    using Steps = std::vector<EditStepTitle>;
    [[nodiscard]] Result<void> replay(Id<EditStep> step, Direction direction);
    [[nodiscard]] Result<void> drop(Id<EditStep> step, const QString& why);
    void show(Steps steps);

    Database& m_database;
    ChangeHub& m_hub;
    const Clock& m_clock;
    Steps m_steps;           // oldest first, those that are undone last
    std::size_t m_done = 0;  // how many are not undone
};

// Ends a recording inside the transaction that it recorded, and keeps it as a step. False: nothing had changed.
[[nodiscard]] Result<bool> rememberStep(Transaction&, ChangesetRecorder&, const QString& label, const QDateTime& madeAt,
                                        const Progress& = {});

}  // namespace steelyard
