#include "core/edits/edit_history.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct HistoryText {
    Q_DECLARE_TR_FUNCTIONS(HistoryText)
};

}  // namespace

Result<bool> rememberStep(Transaction& transaction, ChangesetRecorder& recorder, const QString& label,
                          const QDateTime& madeAt, const Progress& progress)
{
    STEELYARD_TRY(const QByteArray changeset, recorder.finish(progress));
    if (changeset.isEmpty()) return false;
    const EditStepRepository steps(transaction.database());
    STEELYARD_CHECK(steps.append(transaction, {label, changeset, transaction.changes()}, madeAt));
    return true;
}

Result<void> EditHistory::load()
{
    if (m_database.isReadOnly()) return {};
    STEELYARD_TRY(Steps steps, EditStepRepository(m_database).titles());
    show(std::move(steps));
    return {};
}

void EditHistory::show(Steps steps)
{
    m_steps = std::move(steps);
    m_done = static_cast<std::size_t>(std::ranges::count(m_steps, false, &EditStepTitle::undone));
}

Result<bool> EditHistory::perform(std::unique_ptr<Edit> edit)
{
    STEELYARD_TRY(auto transaction, Transaction::begin(m_database));
    STEELYARD_TRY(auto recorder, ChangesetRecorder::start(m_database));
    STEELYARD_CHECK(edit->apply(transaction));
    STEELYARD_TRY(const bool changed, rememberStep(transaction, recorder, edit->label(), m_clock.nowUtc()));
    if (!changed) return false;
    STEELYARD_TRY(Steps steps, EditStepRepository(m_database).titles());
    const Changes changes = transaction.changes();
    STEELYARD_CHECK(transaction.commit());
    show(std::move(steps));
    m_hub.publish(changes);
    return true;
}

void EditHistory::adopt(const Changes& changes)
{
    // The change is made; if its step can't be read now, nothing is offered until the next edit or start.
    if (!load()) show({});
    m_hub.publish(changes);
}

Result<void> EditHistory::replay(Id<EditStep> step, Direction direction)
{
    const EditStepRepository repository(m_database);
    STEELYARD_TRY(auto transaction, Transaction::begin(m_database));
    STEELYARD_TRY(Steps now, repository.titles());
    if (now != m_steps) {
        show(std::move(now));
        return fail(ErrorCode::Conflict,
                    HistoryText::tr("Another change came in between, so nothing was done. Look at what the Edit menu "
                                    "offers now, and choose again."));
    }
    const auto whole = repository.find(step);
    if (!whole && whole.error().code != ErrorCode::NotFound) return fail(whole.error());
    if (whole) {
        STEELYARD_TRY(const bool fits, applyChangeset(transaction, whole->changeset, direction));
        if (fits) {
            STEELYARD_CHECK(repository.setUndone(transaction, step, direction == Direction::Back));
            STEELYARD_TRY(now, repository.titles());
            STEELYARD_CHECK(transaction.commit());
            show(std::move(now));
            m_hub.publish(whole->changes);
            return {};
        }
    }
    {
        const Transaction dropped = std::move(transaction);  // what was tried is taken back
    }
    return drop(step, whole ? HistoryText::tr("The book has changed since, behind the history, so this can't be "
                                              "undone or redone any more. Nothing was changed by trying; the step "
                                              "was taken off the list.")
                            : whole.error().what);
}

Result<void> EditHistory::drop(Id<EditStep> step, const QString& why)
{
    const EditStepRepository repository(m_database);
    STEELYARD_TRY(auto transaction, Transaction::begin(m_database));
    STEELYARD_CHECK(repository.remove(transaction, step));
    STEELYARD_TRY(Steps steps, repository.titles());
    STEELYARD_CHECK(transaction.commit());
    show(std::move(steps));
    return fail(ErrorCode::Conflict, why);
}

Result<void> EditHistory::undo()
{
    if (!canUndo()) return {};
    return replay(m_steps[m_done - 1].id, Direction::Back);
}

Result<void> EditHistory::redo()
{
    if (!canRedo()) return {};
    return replay(m_steps[m_done].id, Direction::Forth);
}

Result<void> EditHistory::clear(Transaction& transaction)
{
    return EditStepRepository(m_database).clear(transaction);
}

}  // namespace steelyard
