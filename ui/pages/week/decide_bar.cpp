#include "ui/pages/week/decide_bar.h"

#include "core/base/text.h"
#include "core/flags/actions.h"
#include "ui/format/format.h"
#include "ui/pages/week/plan_preview.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QStackedWidget>

namespace steelyard {

namespace {
constexpr int kUsualWatchDays = 14;
}

DecideBar::DecideBar(QWidget* parent)
    : QWidget(parent),
      m_lead(new QLabel(this)),
      m_fields(new QStackedWidget(this)),
      m_action(new QComboBox(this)),
      m_until(new QDateEdit(this)),
      m_reason(new QLineEdit(this)),
      m_store(new QPushButton(tr("Enter  Store it"), this)),
      m_problem(new QLabel(this)),
      m_preview(new PlanPreview(this))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto* layout = new QHBoxLayout;
    column->addLayout(layout);
    column->addWidget(m_preview);
    m_until->setCalendarPopup(true);
    m_until->setDisplayFormat(format::datePattern());
    m_reason->setPlaceholderText(tr("Why this needs nothing"));
    m_reason->setMaxLength(static_cast<int>(kMaxNameLength));
    m_action->setAccessibleName(tr("Action"));
    m_until->setAccessibleName(tr("Watch until"));
    m_reason->setAccessibleName(tr("Reason"));
    m_problem->setTextFormat(Qt::PlainText);
    for (QWidget* field : std::initializer_list<QWidget*>{m_action, m_until, m_reason}) m_fields->addWidget(field);
    m_fields->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    m_fields->setMinimumWidth(fontMetrics().averageCharWidth() * 42);
    auto* leave = new QPushButton(tr("Esc  Leave it"), this);
    layout->addWidget(m_lead);
    layout->addWidget(m_fields);
    layout->addWidget(m_store);
    layout->addWidget(leave);
    layout->addWidget(m_problem, 1);
    connect(m_store, &QPushButton::clicked, this, &DecideBar::store);
    connect(leave, &QPushButton::clicked, this, &DecideBar::left);
    connect(m_action, &QComboBox::currentIndexChanged, this,
            [this] { m_preview->setAction(m_action->currentData().toString()); });
    orderTabs(leave);
}

void DecideBar::orderTabs(QWidget* last)
{
    QWidget* before = m_action;
    std::vector<QWidget*> order = m_preview->fields();
    order.push_back(m_store);
    order.push_back(last);
    for (QWidget* next : order) {
        setTabOrder(before, next);
        before = next;
    }
}

void DecideBar::open(DecisionKind kind, const QStringList& actions, QDate today)
{
    m_kind = kind;
    m_problem->clear();
    m_today = today;
    m_storeOnceRead = false;
    m_preview->clear();
    fillActions(actions);
    m_until->setMinimumDate(today.addDays(1));
    m_until->setDate(today.addDays(kUsualWatchDays));
    m_reason->clear();
    QWidget* fields[] = {m_action, m_until, m_reason};
    const QString leads[] = {tr("Act:"), tr("Watch until"), tr("Dismiss, because")};
    m_lead->setText(leads[static_cast<int>(kind)]);
    QWidget* field = fields[static_cast<int>(kind)];
    m_fields->setCurrentWidget(field);
    m_preview->setVisible(kind == DecisionKind::Act);
    show();
    field->setFocus(Qt::ShortcutFocusReason);
}

void DecideBar::fillActions(const QStringList& actions)
{
    const QSignalBlocker block(m_action);
    m_action->clear();
    QStringList words = actions;  // what fits this flag comes first, then everything else a coach can do
    for (const QString& word : actionWords())
        if (!words.contains(word)) words.push_back(word);
    for (const QString& word : words) m_action->addItem(actionLabel(word), word);
    if (!actions.isEmpty() && actions.size() < words.size())
        m_action->insertSeparator(static_cast<int>(actions.size()));
    m_preview->setAction(m_action->currentData().toString());
}

void DecideBar::setRecord(std::shared_ptr<const PlanRecord> record, std::optional<Id<LiftLine>> line)
{
    m_preview->setRecord(std::move(record), line, m_today);
    if (m_storeOnceRead) store();
}

void DecideBar::sayProblem(const QString& text)
{
    m_storeOnceRead = false;
    m_problem->setText(text);
}

// While the bar is open, letters choose in its lists; as shortcuts they would walk away from the flag.
bool DecideBar::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        auto* key = static_cast<QKeyEvent*>(event);
        const bool plain = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
        if (plain && !key->text().isEmpty() && key->text().at(0).isPrint()) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void DecideBar::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        store();
    else if (event->key() == Qt::Key_Escape)
        Q_EMIT left();
    else
        QWidget::keyPressEvent(event);
}

void DecideBar::store()
{
    if (m_kind == DecisionKind::Act) return storeAction();
    FlagAnswer answer{.kind = m_kind};
    if (m_kind == DecisionKind::Watch) answer.until = m_until->date();
    if (m_kind == DecisionKind::Dismiss) answer.reason = cleanName(m_reason->text());
    if (m_kind == DecisionKind::Dismiss && answer.reason.isEmpty()) {
        m_problem->setText(tr("Say why, so that it can be understood later."));
        m_reason->setFocus();
        return;
    }
    Q_EMIT decided(answer);
}

// Where an action lands isn't known before the record is read, so a quick Enter is kept until then.
void DecideBar::storeAction()
{
    m_storeOnceRead = !m_preview->isReady();
    if (m_storeOnceRead) return;
    const Replan& plan = m_preview->plan();
    FlagAnswer answer{.kind = m_kind, .action = m_action->currentData().toString(), .reason = m_preview->note()};
    if (plan.id && plan.block) answer.block = BlockChange{*plan.id, *plan.block};
    answer.changedSlots = static_cast<int>(plan.changes.size());
    Q_EMIT decided(answer);
}

}  // namespace steelyard
