#include "ui/pages/lifter/chart_menu.h"

#include "ui/shell/actions.h"

#include <QtGui/QAction>
#include <QtGui/QKeySequence>
#include <QtWidgets/QMenu>

namespace steelyard {

ChartMenu::ChartMenu(Possible possible, QWidget* parent)
    : QPushButton(tr("&Chart"), parent), m_possible(std::move(possible))
{
    setToolTip(tr("Show the numbers behind the chart; copy or save it"));
    setMenu(new QMenu(this));
    for (const QString& action : {QStringLiteral("lifter.chart"), QStringLiteral("lifter.copy"),
                                  QStringLiteral("lifter.copyPicture"), QStringLiteral("lifter.savePicture")})
        addEntry(action);
    m_numbers = menu()->actions().front();
    m_numbers->setCheckable(true);
    connect(menu(), &QMenu::aboutToShow, this, [this] {
        for (QAction* entry : menu()->actions()) entry->setEnabled(m_possible(entry->data().toString()));
    });
}

void ChartMenu::addEntry(const QString& action)
{
    const ActionRow* row = findAction(action);
    Q_ASSERT(row);
    // The key is written, not set: it belongs to the window's action.
    const QString key = QKeySequence(row->shortcut).toString(QKeySequence::NativeText);
    QAction* entry = menu()->addAction(row->text + u'\t' + key);
    entry->setData(action);
    connect(entry, &QAction::triggered, this, [this, action] { Q_EMIT chosen(action); });
}

void ChartMenu::showNumbersTicked(bool on)
{
    m_numbers->setChecked(on);
}

}  // namespace steelyard
