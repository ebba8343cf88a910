#include "ui/shell/rule_dialog.h"

#include "core/edits/edits.h"
#include "core/flags/registry.h"
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
    return isWhole(parameter.defaultValue) && isWhole(parameter.low) && isWhole(parameter.high) ? 0 : 1;
}

}  // namespace

RuleDialog::RuleDialog(Book& book, QWidget* parent)
    : QDialog(parent),
      m_book(book),
      m_settings(book.ruleSettings().all().value_or(RuleSettings())),
      m_rules(new QListWidget(this)),
      m_detail(new QScrollArea(this)),
      m_reset(new QPushButton(tr("&Back to the usual values"), this))
{
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("What is flagged, and from when"));
    m_rules->setAccessibleName(tr("Reasons to look at a lifter"));
    for (const FlagRule* rule : flagRules()) m_rules->addItem(rule->title());
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
    resize(em * 110, em * 62);
    connect(m_rules, &QListWidget::currentRowChanged, this, &RuleDialog::showRule);
    connect(m_reset, &QPushButton::clicked, this, &RuleDialog::resetRule);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    sayChanged();
    m_rules->setCurrentRow(0);
}

void RuleDialog::showRule(int row)
{
    const FlagRule& rule = *flagRules()[static_cast<std::size_t>(std::max(0, row))];
    auto* page = new QWidget;
    auto* grid = new QGridLayout(page);
    grid->setContentsMargins(14, 4, 14, 4);
    grid->setHorizontalSpacing(14);
    int line = 0;
    grid->addWidget(ruleLabel(rule.title(), 1.3, page), line++, 0, 1, 2);
    grid->addWidget(ruleLabel(rule.explanation(), 1.0, page), line++, 0, 1, 2);
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

QDoubleSpinBox* RuleDialog::makeField(const FlagRule& rule, const RuleParameter& parameter, QWidget* parent)
{
    auto* field = new QDoubleSpinBox(parent);
    field->setObjectName(rule.id() + u'.' + parameter.name);
    field->setDecimals(decimalsOf(parameter));
    field->setSingleStep(decimalsOf(parameter) == 0 ? 1 : 0.1);
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

void RuleDialog::store(const FlagRule& rule, const RuleParameter& parameter, double value)
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
    const FlagRule& rule = *flagRules()[static_cast<std::size_t>(m_rules->currentRow())];
    for (const RuleParameter& parameter : rule.parameters())
        if (RuleParameters(rule, m_settings).value(parameter.name) != parameter.defaultValue)
            store(rule, parameter, parameter.defaultValue);
    showRule(m_rules->currentRow());
    m_rules->setFocus();
}

bool RuleDialog::isChanged(const FlagRule& rule) const
{
    const RuleParameters inForce(rule, m_settings);
    return std::ranges::any_of(rule.parameters(), [&](const RuleParameter& parameter) {
        return inForce.value(parameter.name) != parameter.defaultValue;
    });
}

// A dot marks the rules that no longer have their usual values.
void RuleDialog::sayChanged()
{
    const auto rules = flagRules();
    for (std::size_t i = 0; i < rules.size(); ++i) {
        const bool changed = isChanged(*rules[i]);
        QListWidgetItem* item = m_rules->item(static_cast<int>(i));
        item->setText(changed ? tr("%1  •", "a rule whose values were changed").arg(rules[i]->title())
                              : rules[i]->title());
        item->setToolTip(changed ? tr("Not the usual values") : QString());
    }
}

}  // namespace steelyard
