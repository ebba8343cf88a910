// How the Lifter place is put together.
#include "ui/pages/lifter/lifter_page.h"

#include "core/book/book.h"
#include "ui/charts/chart_table_model.h"
#include "ui/pages/lifter/chart_hand_out.h"
#include "ui/pages/lifter/chart_menu.h"
#include "ui/pages/lifter/lifter_views.h"
#include "ui/pages/lifter/line_header.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/session_panel.h"
#include "ui/pages/lifter/view_tabs.h"
#include "ui/shell/actions.h"

#include <QtGui/QShortcut>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QListView>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTabBar>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

QWidget* LifterPage::makeLinePart()
{
    m_list = new QListView(this);
    m_list->setModel(m_lines);
    m_list->setItemDelegate(new LineDelegate(m_list));
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setMinimumWidth(190);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setAccessibleName(tr("Lift lines"));
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
        if (const int line = m_lines->lineAt(now); line >= 0) chooseLine(line);
    });
    return m_list;
}

void LifterPage::addView(LifterView* view)
{
    m_stack->addWidget(view);
    const int index = m_tabs->addTab(view->title());
    if (const ActionRow* row = findAction(view->action()))
        m_tabs->setTabToolTip(index, tr("%1 (%2)").arg(plainText(row->text), row->shortcut));
    connect(view, &LifterView::sessionLookedAt, this, &LifterPage::showSession);
    connect(view, &LifterView::setsWanted, this, [this](int exposure) {
        showSession(exposure);
        openView(indexOf(QStringLiteral("lifter.logbook")));
        this->view().lookAtDay(m_session);
    });
    connect(view, &LifterView::canChanged, this, &Page::actionsChanged);
    connect(view, &LifterView::said, this, &Page::said);
    connect(view, &LifterView::lineStepped, this, &LifterPage::stepLine);
    connect(view, &LifterView::lineWanted, this, &LifterPage::showLine);
    connect(view, &LifterView::changed, this, &LifterPage::viewChanged);
    connect(view, &LifterView::keyingWanted, this, [this](QDate day) {
        if (m_athlete) Q_EMIT keyingRequested(*m_athlete, day);
    });
    connect(view, &LifterView::sessionWanted, this, [this](int exposure) {
        showSession(exposure);
        openView(0);
        this->view().takeFocus();
    });
}

QWidget* LifterPage::makeViews()
{
    m_stack = new QStackedWidget(this);
    m_views = makeLifterViews(m_context, this);
    for (LifterView* view : m_views) addView(view);
    m_stack->addWidget(makeDataTable());
    connect(m_tabs, &QTabBar::currentChanged, this, [this](int tab) { openView(static_cast<std::size_t>(tab)); });
    m_back = new QShortcut(Qt::Key_Escape, this);
    m_back->setContext(Qt::WidgetWithChildrenShortcut);
    m_back->setEnabled(false);
    connect(m_back, &QShortcut::activated, this, &LifterPage::backToProgress);
    return m_stack;
}

QWidget* LifterPage::makeDataTable()
{
    auto* table = new QTableView(this);
    table->setModel(m_data);
    table->verticalHeader()->hide();
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->setShowGrid(false);
    table->setFrameShape(QFrame::NoFrame);
    table->setAccessibleName(tr("Data of the chart"));
    return table;
}

QLayout* LifterPage::makeTools()
{
    m_tabs = new ViewTabs(this);
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_tabs->setFocusPolicy(Qt::TabFocus);
    m_tabs->setAccessibleName(tr("Views of the record"));
    m_stretch = new QComboBox(this);
    m_stretch->setAccessibleName(tr("Stretch of time"));
    for (const auto& [text, months] :
         {std::pair(tr("All time"), 0), {tr("6 months"), 6}, {tr("12 months"), 12}, {tr("2 years"), 24}})
        m_stretch->addItem(text, months);
    m_stretch->setCurrentIndex(2);
    m_chartMenu = new ChartMenu([this](const QString& action) { return canPerform(action); }, this);
    auto* tools = new QHBoxLayout;
    tools->addWidget(m_tabs, 1);
    tools->addWidget(m_stretch);
    tools->addWidget(m_chartMenu);
    connect(m_stretch, &QComboBox::currentIndexChanged, this, &LifterPage::refreshView);
    connect(m_chartMenu, &ChartMenu::chosen, this, &LifterPage::perform);
    return tools;
}

QWidget* LifterPage::makeMainPart()
{
    auto* main = new QWidget(this);
    auto* all = new QVBoxLayout(main);
    all->setContentsMargins(14, 10, 12, 8);
    all->setSpacing(8);
    m_header = new LineHeader(this);
    all->addWidget(m_header);
    auto* upper = new QWidget(this);
    auto* upperLayout = new QVBoxLayout(upper);
    upperLayout->setContentsMargins({});
    upperLayout->addLayout(makeTools());
    upperLayout->addWidget(makeViews(), 1);
    m_sessionPanel =
        new SessionPanel([this](Id<SetEntry> id) { return m_context.book.logbook().replacedSets(id); }, this);
    auto* split = new QSplitter(Qt::Vertical, this);
    split->addWidget(upper);
    split->addWidget(m_sessionPanel);
    split->setStretchFactor(0, 1);  // a taller window is for the chart
    split->setStretchFactor(1, 0);
    split->setSizes({420, 170});
    split->setChildrenCollapsible(false);
    m_sessionPanel->setMinimumHeight(120);
    all->addWidget(split, 1);

    connect(m_sessionPanel, &SessionPanel::changeWanted, this, &LifterPage::correct);
    return main;
}

}  // namespace steelyard
