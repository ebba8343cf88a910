// Performs edits, and takes them back and forth. One history per opened book.
//
//   STEELYARD_TRY(const bool changed, history.perform(std::move(edit)));
//   if (history.canUndo()) STEELYARD_CHECK(history.undo());
//
// perform(): begin, apply, commit, publish, remember. An edit that changed nothing is not remembered. A failure leaves the
// book as it was. Undo fails with Conflict when a row has changed in the meantime behind the history's back.
#pragma once

#include "core/edits/change_hub.h"
#include "core/edits/edit.h"

#include <QtCore/QByteArray>

namespace steelyard {

class EditHistory {
public:
    static constexpr std::size_t kMostEdits = 200;

    EditHistory(Database& database, ChangeHub& hub) : m_database(database), m_hub(hub) {}

    // True when the book changed.
    [[nodiscard]] Result<bool> perform(std::unique_ptr<Edit> edit);
    [[nodiscard]] bool canUndo() const { return !m_undo.empty(); }
    [[nodiscard]] bool canRedo() const { return !m_redo.empty(); }
    [[nodiscard]] QString undoLabel() const { return canUndo() ? m_undo.back().label : QString(); }
    [[nodiscard]] QString redoLabel() const { return canRedo() ? m_redo.back().label : QString(); }
    [[nodiscard]] Result<void> undo();
    [[nodiscard]] Result<void> redo();
    // Remembers and announces what was committed elsewhere (a worker's own connection), so that it can be undone here.
    void adopt(QString label, QByteArray changeset, const Changes& changes);
    // After something that can't be taken back.
    void clear();

private:
    struct Done {
        QString label;
        QByteArray changeset;
        Changes changes;
    };
    [[nodiscard]] Result<void> replay(const Done&, bool forth);

    Database& m_database;
    ChangeHub& m_hub;
    std::vector<Done> m_undo;
    std::vector<Done> m_redo;
};

}  // namespace steelyard
