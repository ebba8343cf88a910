// What becomes of a line that is typed in a row: it is read as it is typed, asked about where it is unlikely, and stored.
//
//   KeyingTyping typing(desk, board, readOnly, [this](KeyingPlace at, const SetEntry& set) { return store(at, set); });
//   typing.read(place);                                   // beside the row, while it is typed
//   if (typing.accept(place, Watched::No)) goOn();        // stored, or nothing to store; else the row says what is in the way
//
// A question is asked once: the same entry accepted again is kept.
#pragma once

#include "core/book/keying_desk.h"

#include <functional>

namespace steelyard {

class KeyingBoard;

class KeyingTyping {
public:
    // True when the book took it.
    using Store = std::function<bool(KeyingPlace, const SetEntry&)>;

    KeyingTyping(const KeyingDesk& desk, KeyingBoard& board, bool readOnly, Store store);

    // Forgets what was asked, because the line is another now.
    void changed(KeyingPlace at);
    void read(KeyingPlace at) const;
    [[nodiscard]] bool accept(KeyingPlace at, Watched watched);
    // As accept(), but a row in which nothing is typed is left as it is.
    [[nodiscard]] bool leave(KeyingPlace at);
    // Stores what can be read and is likely; true when nothing half typed is left there.
    bool storeSilently(KeyingPlace at);
    // Into the line, to be accepted; false: there is no suggestion.
    bool takeSuggestion(KeyingPlace at);
    // What the keys answer to the question that stands in the row; empty: none does.
    [[nodiscard]] QString answers() const { return m_asked ? m_asked->answers : QString(); }
    // What is half typed; false: nothing is.
    bool drop(KeyingPlace at);

private:
    [[nodiscard]] bool acceptPlan(KeyingPlace at, Watched watched);
    [[nodiscard]] bool asks(KeyingPlace at, const SetEntry& set);
    bool store(KeyingPlace at, const SetEntry& set);

    struct Asked {
        KeyingPlace at;
        SetEntry set;
        std::optional<FittingEntry> fitting;
        QString answers;
    };

    const KeyingDesk& m_desk;
    KeyingBoard& m_board;
    bool m_readOnly;
    Store m_store;
    std::optional<Asked> m_asked;
};

}  // namespace steelyard
