// One session of the logbook: its sets and ratings, typed in place on one line each, another set, and below it what the chosen
// set said before and which sets were removed, each to be brought back with Enter.
//
//   auto* session = new LogbookSession([&](QDate day) { return book.logbook().replacedSets(athlete, day); }, view);
//   session->show({lifter, &day, line, true}, date);
//
// It changes nothing itself: it asks, and is shown the new session. While a line is being typed it keeps what it shows
// (isEditing).
#pragma once

#include "core/storage/logbook_repository.h"
#include "ui/pages/lifter/logbook_set_model.h"

#include <QtWidgets/QWidget>

#include <functional>

class QLabel;
class QListWidget;
class QTableView;

namespace steelyard {

class LogbookSetDelegate;

class LogbookSession final : public QWidget {
    Q_OBJECT

public:
    using Histories = std::function<Result<std::vector<SetHistory>>(QDate)>;

    explicit LogbookSession(Histories histories, QWidget* parent = nullptr);
    // Stays on the row it was on when the day is the same.
    void show(const LogbookSetModel::ShownSession& session, QDate date);
    void say(const QString& text);
    [[nodiscard]] bool isEditing() const;
    [[nodiscard]] QTableView* table() const { return m_table; }
    [[nodiscard]] QListWidget* before() const { return m_before; }

    [[nodiscard]] bool can(const QString& action) const;
    void perform(const QString& action);
    void takeFocus();

Q_SIGNALS:
    void changeWanted(steelyard::Id<steelyard::SetEntry> id, const steelyard::SetEntry& set);
    void addWanted(const steelyard::LiftLine& line, const steelyard::SetEntry& set);
    void rateWanted(const steelyard::LiftLine& line, const steelyard::ExerciseRating& rating);
    void removeWanted(steelyard::Id<steelyard::SetEntry> id);
    void bringBackWanted(const steelyard::SetHistory& history, std::size_t value);
    void chartWanted(steelyard::Id<steelyard::LiftLine> line);
    void editingEnded();
    void moved();  // another row is the current one: other actions may be possible

private:
    void makeTable();
    void restore(Id<LiftLine> line, LogbookSetModel::Kind kind, std::optional<Id<SetEntry>> set, int row);
    void openRow(const QModelIndex& index);
    void addSet();
    void fillBefore();
    void showWords();
    void addBefore(const SetHistory& history, std::size_t index, std::optional<Id<SetEntry>> chosen);
    void bringBackCurrent();
    void fitRows();

    Histories m_historiesOf;
    LogbookSetModel* m_model;
    QTableView* m_table;
    LogbookSetDelegate* m_delegate;
    QLabel* m_heading;
    QLabel* m_words;  // of the current row, whole
    QLabel* m_message;
    QLabel* m_beforeTitle;
    QListWidget* m_before;
    std::vector<SetHistory> m_histories;
    QDate m_date;
    bool m_editable = false;
};

}  // namespace steelyard
