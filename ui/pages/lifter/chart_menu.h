// The button above a view that says what can be done with what is drawn: its numbers as a table, copied, saved. Texts and
// keys come from the table of actions, so the menu says the same as the window's.
//
//   auto* menu = new ChartMenu([this](const QString& action) { return canPerform(action); }, this);
//   connect(menu, &ChartMenu::chosen, this, &LifterPage::perform);
#pragma once

#include <QtWidgets/QPushButton>

#include <functional>

namespace steelyard {

class ChartMenu final : public QPushButton {
    Q_OBJECT

public:
    // Of an action's id: is there something to do it with?
    using Possible = std::function<bool(const QString& action)>;

    explicit ChartMenu(Possible possible, QWidget* parent = nullptr);
    // The entry of the numbers carries a tick while they are shown.
    void showNumbersTicked(bool on);

Q_SIGNALS:
    void chosen(const QString& action);

private:
    void addEntry(const QString& action);

    Possible m_possible;
    QAction* m_numbers = nullptr;
};

}  // namespace steelyard
