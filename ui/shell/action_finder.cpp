#include "ui/shell/action_finder.h"

#include "core/base/text.h"
#include "ui/shell/actions.h"

#include <QtCore/QPointer>
#include <QtCore/QTimer>
#include <QtGui/QAction>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {

ActionFinder::ActionFinder(const std::vector<QAction*>& actions, QWidget* parent)
    : QDialog(parent), m_search(new QLineEdit(this)), m_list(new QListWidget(this))
{
    setWindowTitle(tr("Find an action"));
    setAttribute(Qt::WA_DeleteOnClose);
    std::ranges::copy_if(actions, std::back_inserter(m_actions), [](const QAction* action) {
        return action->isEnabled() && action->objectName() != QStringLiteral("help.find");
    });
    m_search->setPlaceholderText(tr("What do you want to do?"));
    m_search->setAccessibleName(tr("Find an action"));
    m_search->installEventFilter(this);
    m_list->setFocusPolicy(Qt::NoFocus);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(m_search);
    layout->addWidget(m_list, 1);
    resize(fontMetrics().averageCharWidth() * 70, fontMetrics().height() * 22);
    connect(m_search, &QLineEdit::textChanged, this, &ActionFinder::show);
    connect(m_list, &QListWidget::itemClicked, this, &ActionFinder::run);
    show(QString());
}

void ActionFinder::show(const QString& search)
{
    const QStringList words = searchKey(search).split(QLatin1Char(' '), Qt::SkipEmptyParts);
    m_list->clear();
    for (std::size_t i = 0; i < m_actions.size(); ++i) {
        const QString text = plainText(m_actions[i]->text());
        const QString key = searchKey(text);
        if (!std::ranges::all_of(words, [&](const QString& word) { return key.contains(word); })) continue;
        const QString shortcut = m_actions[i]->shortcut().toString(QKeySequence::NativeText);
        auto* item =
            new QListWidgetItem(shortcut.isEmpty() ? text : QStringLiteral("%1      %2").arg(text, shortcut), m_list);
        item->setData(Qt::UserRole, static_cast<int>(i));
    }
    m_list->setCurrentRow(0);
}

void ActionFinder::run()
{
    const QListWidgetItem* item = m_list->currentItem();
    if (!item) return;
    // After this window is gone, so that what the action opens has the focus.
    QPointer<QAction> action = m_actions.at(static_cast<std::size_t>(item->data(Qt::UserRole).toInt()));
    close();
    QTimer::singleShot(0, qApp, [action] {
        if (action) action->trigger();
    });
}

bool ActionFinder::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_search || event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Down:
    case Qt::Key_Up:
    case Qt::Key_PageDown:
    case Qt::Key_PageUp:
        QApplication::sendEvent(m_list, event);
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        run();
        return true;
    default:
        return false;
    }
}

}  // namespace steelyard
