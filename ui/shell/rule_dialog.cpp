#include "ui/shell/rule_dialog.h"

#include "core/edits/edits.h"
#include "ui/format/format.h"
#include "ui/shell/theme.h"

#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QDoubleSpinBox>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

QLabel* ruleLabel(const QString& text, double scale, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * scale);
    label->setFont(font);
    return label;
}

bool isWhole(double value)
{
    return value == std::floor(value);
}

// As many as the rule's own numbers have.
int decimalsOf(const RuleParameter& parameter)
{
    const auto isWholeBy = [&](double times) {
        return isWhole(times * parameter.defaultValue) && isWhole(times * parameter.low)
               && isWhole(times * parameter.high);
    };
    return std::max(parameter.decimals, isWholeBy(1) ? 0 : isWholeBy(10) ? 1 : 2);
}

}  // namespace

RuleDialog::RuleDialog(Book& book, QWidget* parent)
    : QDialog(parent),
      m_book(book),
      m_entries(adjustableRules()),
      m_settings(book.ruleSettings().all().value_or(RuleSettings())),
      m_rules(new QListWidget(this)),
      m_detail(new QScrollArea(this)),
      m_reset(new QPushButton(tr("&Back to the usual values"), this))
{
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("What is flagged, and how loads go on"));
    m_rules->setAccessibleName(tr("Rules"));
    fillList();
    m_rules->setMaximumWidth(m_rules->sizeHintForColumn(0) + 4 * fontMetrics().averageCharWidth() + 24);
    m_detail->setWidgetResizable(true);
    m_detail->setFrameShape(QFrame::NoFrame);
    m_detail->setFocusPolicy(Qt::NoFocus);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(m_reset, QDialogButtonBox::ResetRole);
    m_reset->setAutoDefault(false);
    buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);  // Enter in a field stores it, and no more
    auto* grid = new QGridLayout(this);
    grid->addWidget(m_rules, 0, 0);
    grid->addWidget(m_detail, 0, 1);
    grid->addWidget(buttons, 1, 0, 1, 2);
    grid->setColumnStretch(1, 1);
    const int em = fontMetrics().averageCharWidth();
    resize(em * 110, em * 74);
    connect(m_rules, &QListWidget::currentRowChanged, this, &RuleDialog::showRule);
    connect(m_reset, &QPushButton::clicked, this, &RuleDialog::resetRule);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    sayChanged();
    m_rules->setCurrentRow(1);  // below the name of the first group
}

// The rules in their groups; the name of a group can't be chosen.
void RuleDialog::fillList()
{
    QString group;
    for (std::size_t i = 0; i < m_entries.size(); ++i) {
        if (m_entries[i].group != group) {
            group = m_entries[i].group;
            auto* head = new QListWidgetItem(group, m_rules);
            head->setFlags(Qt::NoItemFlags);
            QFont bold = m_rules->font();
            bold.setBold(true);
            head->setFont(bold);
        }
        auto* item = new QListWidgetItem(m_entries[i].title, m_rules);
        item->setData(Qt::UserRole, static_cast<qulonglong>(i));
    }
}

const RuleEntry& RuleDialog::chosen() const
{
    const QListWidgetItem* item = m_rules->currentItem();
    return m_entries[item ? static_cast<std::size_t>(item->data(Qt::UserRole).toULongLong()) : 0];
}

void RuleDialog::showRule()
{
    const RuleEntry& entry = chosen();
    const AdjustableRule& rule = *entry.rule;
    auto* page = new QWidget;
    auto* grid = new QGridLayout(page);
    grid->setContentsMargins(14, 4, 14, 4);
    grid->setHorizontalSpacing(14);
    int line = 0;
    grid->addWidget(ruleLabel(entry.title, 1.3, page), line++, 0, 1, 2);
    grid->addWidget(ruleLabel(entry.explanation, 1.0, page), line++, 0, 1, 2);
    grid->setRowMinimumHeight(line++, fontMetrics().height() / 2);
    const auto parameters = rule.parameters();
    std::vector<QWidget*> inOrder{m_rules};
    for (const RuleParameter& parameter : parameters) {
        QDoubleSpinBox* field = makeField(rule, parameter, page);
        inOrder.push_back(field);
        QLabel* label = ruleLabel(parameter.label, 1.0, page);
        label->setBuddy(field);
        grid->addWidget(label, line, 0);
        grid->addWidget(field, line++, 1, Qt::AlignLeft);
        auto* source = ruleLabel(
            tr("Usually %1. %2")
                .arg(format::number(parameter.defaultValue, decimalsOf(parameter)), parameter.sourceOfDefault),
            0.92, page);
        QPalette quiet = source->palette();
        quiet.setColor(QPalette::WindowText, themeColours(palette()).quiet);
        source->setPalette(quiet);
        grid->addWidget(source, line++, 0, 1, 2);
        grid->setRowMinimumHeight(line++, fontMetrics().height() / 3);
    }
    if (parameters.empty()) grid->addWidget(ruleLabel(tr("There is nothing to set here."), 1.0, page), line++, 0, 1, 2);
    grid->setRowStretch(line, 1);
    grid->setColumnStretch(1, 1);
    m_detail->setWidget(page);
    inOrder.push_back(m_reset);
    for (std::size_t i = 1; i < inOrder.size(); ++i) setTabOrder(inOrder[i - 1], inOrder[i]);
    m_reset->setEnabled(isChanged(rule));
}

QDoubleSpinBox* RuleDialog::makeField(const AdjustableRule& rule, const RuleParameter& parameter, QWidget* parent)
{
    auto* field = new QDoubleSpinBox(parent);
    field->setObjectName(rule.id() + u'.' + parameter.name);
    field->setDecimals(decimalsOf(parameter));
    field->setSingleStep(decimalsOf(parameter) == 0 ? 1 : decimalsOf(parameter) == 1 ? 0.1 : 0.25);
    field->setRange(parameter.low, parameter.high);
    field->setSuffix(u' ' + parameter.unit);
    field->setKeyboardTracking(false);  // one edit for a number typed, not one for each digit
    field->setAccessibleName(parameter.label);
    field->setAccessibleDescription(parameter.sourceOfDefault);
    field->setValue(RuleParameters(rule, m_settings).value(parameter.name));
    connect(field, &QDoubleSpinBox::valueChanged, this,
            [this, &rule, parameter](double value) { store(rule, parameter, value); });
    return field;
}

void RuleDialog::store(const AdjustableRule& rule, const RuleParameter& parameter, double value)
{
    const auto stored = m_book.history().perform(setRuleThreshold(rule.id(), parameter.name, value));
    if (!stored) {
        Q_EMIT failed(stored.error());
        return;
    }
    m_settings[{rule.id(), parameter.name}] = value;
    m_reset->setEnabled(isChanged(rule));
    sayChanged();
}

void RuleDialog::resetRule()
{
    const AdjustableRule& rule = *chosen().rule;
    for (const RuleParameter& parameter : rule.parameters())
        if (RuleParameters(rule, m_settings).value(parameter.name) != parameter.defaultValue)
            store(rule, parameter, parameter.defaultValue);
    showRule();
    m_rules->setFocus();
}

bool RuleDialog::isChanged(const AdjustableRule& rule) const
{
    const RuleParameters inForce(rule, m_settings);
    return std::ranges::any_of(rule.parameters(), [&](const RuleParameter& parameter) {
        return inForce.value(parameter.name) != parameter.defaultValue;
    });
}

// A dot marks the rules that no longer have their usual values.
void RuleDialog::sayChanged()
{
    for (int row = 0; row < m_rules->count(); ++row) {
        QListWidgetItem* item = m_rules->item(row);
        if (item->flags() == Qt::NoItemFlags) continue;
        const RuleEntry& entry = m_entries[static_cast<std::size_t>(item->data(Qt::UserRole).toULongLong())];
        const bool changed = isChanged(*entry.rule);
        item->setText(changed ? tr("%1  •", "a rule whose values were changed").arg(entry.title) : entry.title);
        item->setToolTip(changed ? tr("Not the usual values") : QString());
    }
}

}  // namespace steelyard
