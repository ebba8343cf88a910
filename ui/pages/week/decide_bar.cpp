#include "ui/pages/week/decide_bar.h"

#include "core/base/text.h"
#include "core/flags/actions.h"
#include "ui/format/format.h"

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
      m_store(new QPushButton(tr("Store it"), this)),
      m_problem(new QLabel(this))
{
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
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
    auto* leave = new QPushButton(tr("Leave it"), this);
    m_store->setToolTip(tr("Enter"));
    leave->setToolTip(tr("Escape"));
    layout->addWidget(m_lead);
    layout->addWidget(m_fields);
    layout->addWidget(m_store);
    layout->addWidget(leave);
    layout->addWidget(m_problem, 1);
    connect(m_store, &QPushButton::clicked, this, &DecideBar::store);
    connect(leave, &QPushButton::clicked, this, &DecideBar::left);
}

void DecideBar::open(DecisionKind kind, const QStringList& actions, QDate today)
{
    m_kind = kind;
    m_problem->clear();
    m_action->clear();
    QStringList words = actions;  // what fits this flag comes first, then everything else a coach can do
    for (const QString& word : actionWords())
        if (!words.contains(word)) words.push_back(word);
    for (const QString& word : words) m_action->addItem(actionLabel(word), word);
    if (!actions.isEmpty() && actions.size() < words.size())
        m_action->insertSeparator(static_cast<int>(actions.size()));
    m_until->setMinimumDate(today.addDays(1));
    m_until->setDate(today.addDays(kUsualWatchDays));
    m_reason->clear();
    QWidget* fields[] = {m_action, m_until, m_reason};
    const QString leads[] = {tr("Act:"), tr("Watch until"), tr("Dismiss, because")};
    m_lead->setText(leads[static_cast<int>(kind)]);
    QWidget* field = fields[static_cast<int>(kind)];
    m_fields->setCurrentWidget(field);
    show();
    field->setFocus(Qt::ShortcutFocusReason);
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
    FlagAnswer answer{.kind = m_kind};
    if (m_kind == DecisionKind::Act) answer.action = m_action->currentData().toString();
    if (m_kind == DecisionKind::Watch) answer.until = m_until->date();
    if (m_kind == DecisionKind::Dismiss) answer.reason = cleanName(m_reason->text());
    if (m_kind == DecisionKind::Dismiss && answer.reason.isEmpty()) {
        m_problem->setText(tr("Say why, so that it can be understood later."));
        m_reason->setFocus();
        return;
    }
    Q_EMIT decided(answer);
}

}  // namespace steelyard
