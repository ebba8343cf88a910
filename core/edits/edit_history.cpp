#include "core/edits/edit_history.h"

#include "core/storage/changeset.h"

namespace steelyard {

Result<bool> EditHistory::perform(std::unique_ptr<Edit> edit)
{
    STEELYARD_TRY(auto transaction, Transaction::begin(m_database));
    STEELYARD_TRY(auto recorder, ChangesetRecorder::start(m_database));
    STEELYARD_CHECK(edit->apply(transaction));
    STEELYARD_TRY(const QByteArray changeset, recorder.finish());
    if (changeset.isEmpty()) return false;
    const Changes changes = transaction.changes();
    STEELYARD_CHECK(transaction.commit());
    adopt(edit->label(), changeset, changes);
    return true;
}

void EditHistory::adopt(QString label, QByteArray changeset, const Changes& changes)
{
    if (changeset.isEmpty()) return;
    m_redo.clear();
    m_undo.push_back({std::move(label), std::move(changeset), changes});
    if (m_undo.size() > kMostEdits) m_undo.erase(m_undo.begin());
    m_hub.publish(changes);
}

Result<void> EditHistory::replay(const Done& done, bool forth)
{
    STEELYARD_TRY(auto transaction, Transaction::begin(m_database));
    STEELYARD_CHECK(applyChangeset(transaction, done.changeset, forth ? Direction::Forth : Direction::Back));
    return transaction.commit();
}

Result<void> EditHistory::undo()
{
    if (!canUndo()) return {};
    STEELYARD_CHECK(replay(m_undo.back(), false));
    m_redo.push_back(std::move(m_undo.back()));
    m_undo.pop_back();
    const Changes changes = m_redo.back().changes;
    m_hub.publish(changes);
    return {};
}

Result<void> EditHistory::redo()
{
    if (!canRedo()) return {};
    STEELYARD_CHECK(replay(m_redo.back(), true));
    m_undo.push_back(std::move(m_redo.back()));
    m_redo.pop_back();
    const Changes changes = m_undo.back().changes;
    m_hub.publish(changes);
    return {};
}

void EditHistory::clear()
{
    m_undo.clear();
    m_redo.clear();
}

}  // namespace steelyard
