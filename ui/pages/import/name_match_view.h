// The table of names that don't match, by keys: 1 to 9 take a suggestion, N makes a new one, Enter opens the whole list to type
// into; each goes on to the next row.
#pragma once

#include "ui/pages/import/name_match_model.h"

#include <QtWidgets/QWidget>

class QTableView;

namespace steelyard {

class ElidedLabel;

class NameMatchView final : public QWidget {
    Q_OBJECT

public:
    explicit NameMatchView(NameMatchModel* model, QWidget* parent = nullptr);
    void setNames(ImportNames names) { m_names = std::move(names); }
    [[nodiscard]] const ImportNames& names() const { return m_names; }
    void takeFocus();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] bool press(int key);
    void goOn(int row);
    void showSuggestions();

    NameMatchModel* m_model;
    ImportNames m_names;
    QTableView* m_table;
    ElidedLabel* m_suggestions;
};

}  // namespace steelyard
