// Type to find an action: every action that can be done now, by the words of its name.
#pragma once

#include <QtWidgets/QDialog>

class QAction;
class QLineEdit;
class QListWidget;

namespace steelyard {

class ActionFinder : public QDialog {
    Q_OBJECT

public:
    // The actions must outlive the dialog.
    ActionFinder(const std::vector<QAction*>& actions, QWidget* parent);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void show(const QString& search);
    void run();

    std::vector<QAction*> m_actions;
    QLineEdit* m_search;
    QListWidget* m_list;
};

}  // namespace steelyard
