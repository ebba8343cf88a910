// The sets of the selected session, correctable in place, with what a set said before.
#pragma once

#include "core/storage/logbook_repository.h"
#include "ui/pages/lifter/set_table_model.h"

#include <QtWidgets/QWidget>

#include <functional>

class QLabel;
class QTableView;

namespace steelyard {

class SessionPanel final : public QWidget {
    Q_OBJECT

public:
    // Values that an edit of this set replaced, oldest first.
    using History = std::function<Result<std::vector<ReplacedSet>>(Id<SetEntry>)>;

    explicit SessionPanel(History history, QWidget* parent = nullptr);
    // No exposure: says how to choose one. Keeps the current cell when the session is the same as before.
    void showSession(const Exposure* exposure, bool editable);
    void say(const QString& text);
    [[nodiscard]] QTableView* table() const { return m_table; }
    [[nodiscard]] QString historyText() const;

Q_SIGNALS:
    void changeWanted(steelyard::Id<steelyard::SetEntry> id, const steelyard::SetEntry& set);

private:
    void showHistory();

    History m_historyOf;
    SetTableModel* m_model;
    QTableView* m_table;
    QLabel* m_heading;
    QLabel* m_message;
    QLabel* m_history;
    QDate m_date;
};

}  // namespace steelyard
