#include "ui/pages/floor/keying_typing.h"

#include "ui/format/set_words.h"
#include "ui/pages/floor/keying_board.h"
#include "ui/pages/floor/keying_edit.h"
#include "ui/pages/floor/keying_row.h"
#include "ui/pages/floor/keying_words.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct KeyingTypingText {
    Q_DECLARE_TR_FUNCTIONS(KeyingTypingText)
};

using Tone = KeyingRowWidget::Tone;

}  // namespace

KeyingTyping::KeyingTyping(const KeyingDesk& desk, KeyingBoard& board, bool readOnly, Store store)
    : m_desk(desk), m_board(board), m_readOnly(readOnly), m_store(std::move(store))
{}

void KeyingTyping::changed(KeyingPlace at)
{
    m_asked.reset();
    read(at);
}

void KeyingTyping::read(KeyingPlace at) const
{
    KeyingRowWidget* row = m_board.row(at);
    const KeyingRow& here = m_desk.row(at);
    row->edit()->setProblem({});
    if (!row->hasDraft()) {
        if (here.stored) return row->say(setWords(here.stored->set, SetWords::Whole), Tone::Quiet);
        if (m_readOnly) return row->say({}, Tone::Quiet);
        return row->say(
            here.planned ? KeyingTypingText::tr("Enter: as planned, not watched. Ctrl+Enter: watched, to the standard.")
                         : KeyingTypingText::tr("Type load x repetitions: the sheet has no plan for this set."),
            Tone::Quiet);
    }
    const QString line = row->edit()->text();
    const auto set = m_desk.read(at, line);
    if (set) return row->say(setWords(*set, SetWords::Whole), Tone::Plain);
    // What is only missing yet is no mistake while somebody types.
    const bool unfinished = set.error().length == 0 && set.error().at >= line.trimmed().size();
    if (!unfinished) row->edit()->setProblem(set.error());
    row->say(set.error().text, unfinished ? Tone::Quiet : Tone::Wrong);
}

bool KeyingTyping::acceptPlan(KeyingPlace at, Watched watched)
{
    const KeyingRow& here = m_desk.row(at);
    if (here.stored) return watched == Watched::No || store(at, withWatching(here.stored->set, watched));
    const auto set = keyedAsPlanned(here, watched);
    if (set) return store(at, *set);
    m_board.row(at)->say(
        KeyingTypingText::tr("Nothing is planned for this set: type load x repetitions, or go on with Down."),
        Tone::Wrong);
    return false;
}

bool KeyingTyping::accept(KeyingPlace at, Watched watched)
{
    if (m_readOnly) return true;
    KeyingRowWidget* row = m_board.row(at);
    if (!row->hasDraft()) return acceptPlan(at, watched);
    const auto set = m_desk.read(at, row->edit()->text());
    if (!set) {
        row->edit()->setProblem(set.error());
        row->edit()->setCursorPosition(static_cast<int>(set.error().at));
        row->say(set.error().text, Tone::Wrong);
        return false;
    }
    const SetEntry typed = withWatching(*set, watched);
    return !asks(at, typed) && store(at, typed);
}

bool KeyingTyping::asks(KeyingPlace at, const SetEntry& set)
{
    const bool asked = m_asked && m_asked->at == at && m_asked->set.load == set.load && m_asked->set.reps == set.reps;
    const auto question = asked ? std::nullopt : m_desk.questionAbout(at, set);
    if (!question) return false;
    m_asked = Asked{at, set, question->fitting, answerWords(*question, set)};
    m_board.row(at)->say(questionWords(*question, m_desk.sheet().unit), Tone::Ask);
    return true;
}

bool KeyingTyping::store(KeyingPlace at, const SetEntry& set)
{
    m_asked.reset();
    // Off the row first, so that it shows what the book has afterwards; back again where the book refuses it.
    const QString typed = m_board.row(at)->edit()->text();
    m_board.row(at)->dropDraft();
    if (m_store(at, set)) return true;
    m_board.row(at)->edit()->setText(typed);
    return false;
}

bool KeyingTyping::leave(KeyingPlace at)
{
    return !m_board.row(at)->hasDraft() || accept(at, Watched::No);
}

bool KeyingTyping::storeSilently(KeyingPlace at)
{
    const KeyingRowWidget* row = m_board.row(at);
    if (m_readOnly || !row->hasDraft()) return true;
    const auto set = m_desk.read(at, row->edit()->text());
    return set && !m_desk.questionAbout(at, *set) && store(at, *set);
}

bool KeyingTyping::takeSuggestion(KeyingPlace at)
{
    if (!m_asked || !m_asked->fitting || m_asked->at != at) return false;
    SetEntry set = m_asked->set;
    set.load = m_asked->fitting->load;
    set.reps = m_asked->fitting->reps;
    m_board.row(at)->edit()->setText(writeSet(set, m_desk.sheet().unit, m_desk.sheet().kind));
    changed(at);
    return true;
}

bool KeyingTyping::drop(KeyingPlace at)
{
    if (!m_board.row(at)->hasDraft()) return false;
    m_board.row(at)->dropDraft();
    changed(at);
    return true;
}

}  // namespace steelyard
