#include "ui/pages/lifter/trial_arm_fields.h"

#include "core/keying/slot_notation.h"
#include "core/trials/arm_differences.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/trial_draft.h"
#include "ui/shell/theme.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QSpinBox>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kArmLetters = 12;
constexpr double kMostLoweringSeconds = 30;

std::optional<Decimal> readSeconds(const QString& text)
{
    const auto seconds = Decimal::parse(QStringView(QString(text).replace(u',', u'.').trimmed()));
    if (!seconds || seconds->toDouble() <= 0 || seconds->toDouble() > kMostLoweringSeconds) return std::nullopt;
    return seconds;
}

}  // namespace

TrialArmFields::TrialArmFields(QWidget* parent)
    : QWidget(parent),
      m_factor(new QComboBox(this)),
      m_count(new QSpinBox(this)),
      m_pinned(quietWords(this)),
      m_refusal(plainWords(this)),
      m_reason(new QLineEdit(this))
{
    for (const auto& row : EnumText<TrialFactor>::table) m_factor->addItem(factorName(row.value));
    m_factor->setAccessibleName(tr("What the arms differ in"));
    m_count->setRange(static_cast<int>(kFewestArms), static_cast<int>(kMostArms));
    m_count->setAccessibleName(tr("Number of arms"));
    m_reason->setPlaceholderText(tr("Why they differ in more than one thing"));
    m_reason->setAccessibleName(tr("Reason"));
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins({});
    grid->setVerticalSpacing(4);
    auto* factorLabel = new QLabel(tr("&Differ in"), this);
    factorLabel->setBuddy(m_factor);
    auto* countLabel = new QLabel(tr("&arms"), this);
    countLabel->setBuddy(m_count);
    grid->addWidget(factorLabel, 0, 0);
    grid->addWidget(m_factor, 0, 1);
    grid->addWidget(m_count, 0, 2);
    grid->addWidget(countLabel, 0, 3);
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        ArmRow& row = m_rows[i];
        row.letter = new QLabel(armLetter(i), this);
        row.choice = new QComboBox(this);
        row.choice->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        row.choice->setMinimumContentsLength(kArmLetters);
        row.choice->setAccessibleName(tr("Arm %1").arg(armLetter(i)));
        row.typed = new QLineEdit(this);
        row.typed->setAccessibleName(tr("Arm %1").arg(armLetter(i)));
        const int at = static_cast<int>(i) + 1;
        grid->addWidget(row.letter, at, 0, Qt::AlignRight);
        grid->addWidget(row.choice, at, 1, 1, 3);
        grid->addWidget(row.typed, at, 1, 1, 3);
        connect(row.choice, &QComboBox::currentIndexChanged, this, [this] {
            if (!m_filling) Q_EMIT changed();
        });
        connect(row.typed, &QLineEdit::textChanged, this, [this] {
            if (!m_filling) Q_EMIT changed();
        });
    }
    const int below = static_cast<int>(kMostArms) + 1;
    grid->addWidget(m_pinned, below, 0, 1, 4);
    grid->addWidget(m_refusal, below + 1, 0, 1, 4);
    grid->addWidget(m_reason, below + 2, 0, 1, 4);
    grid->setColumnStretch(1, 1);
    connect(m_factor, &QComboBox::currentIndexChanged, this, &TrialArmFields::factorChanged);
    connect(m_count, &QSpinBox::valueChanged, this, [this] {
        showRows();
        if (!m_filling) Q_EMIT changed();
    });
    connect(m_reason, &QLineEdit::textChanged, this, [this] {
        if (!m_filling) Q_EMIT changed();
    });
}

QWidget* TrialArmFields::first() const
{
    return m_factor;
}

void TrialArmFields::offer(const LifterTrials& record, const Trial& draft)
{
    m_record = &record;
    m_filling = true;
    m_base = draft.arms.front();
    m_factor->setCurrentIndex(static_cast<int>(draft.factor));
    m_count->setValue(static_cast<int>(draft.arms.size()));
    m_reason->setText(draft.whyMoreThanOne);
    fill(draft.arms);
    m_filling = false;
}

TrialFactor TrialArmFields::factor() const
{
    return EnumText<TrialFactor>::table.at(static_cast<std::size_t>(std::max(0, m_factor->currentIndex()))).value;
}

std::size_t TrialArmFields::count() const
{
    return static_cast<std::size_t>(m_count->value());
}

// Another factor begins again from the lift as it is trained.
void TrialArmFields::factorChanged()
{
    if (m_filling || !m_record) return;
    m_filling = true;
    const LiftLine lift{m_record->log.athlete.id, m_base->variant, m_base->grip, m_base->standard};
    const Trial draft = draftTrial(*m_record, lift, factor(), m_record->asOf, 1);
    m_base = draft.arms.front();
    fill(draft.arms);
    m_filling = false;
    Q_EMIT changed();
}

void TrialArmFields::fill(const std::vector<TrialArm>& arms)
{
    m_choices = armsToChoose(*m_record, *m_base, factor());
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        ArmRow& row = m_rows[i];
        const TrialArm& arm = i < arms.size() ? arms[i] : *m_base;
        row.choice->clear();
        int wanted = static_cast<int>(std::min(i, m_choices.empty() ? 0 : m_choices.size() - 1));
        for (std::size_t k = 0; k < m_choices.size(); ++k) {
            const QString name = armChoiceName(m_choices[k], factor(), m_record->library);
            row.choice->addItem(name);
            row.choice->setItemData(static_cast<int>(k), format::plainToolTip(name), Qt::ToolTipRole);
            if (i < arms.size() && m_choices[k] == arm) wanted = static_cast<int>(k);
        }
        row.choice->setCurrentIndex(m_choices.empty() ? -1 : wanted);
        if (factor() == TrialFactor::RepBand)
            row.typed->setText(i < arms.size() ? writeBand(arm.band) : QString());
        else
            row.typed->setText(i < arms.size() && arm.loweringSeconds ? arm.loweringSeconds->toString() : QString());
        row.typed->setPlaceholderText(factor() == TrialFactor::RepBand ? tr("repetitions, such as 8-12")
                                                                       : tr("seconds of lowering, such as 3"));
    }
    showRows();
}

void TrialArmFields::showRows()
{
    const bool typed = isTyped(factor());
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        const bool shown = i < count();
        m_rows[i].letter->setVisible(shown);
        m_rows[i].choice->setVisible(shown && !typed);
        m_rows[i].typed->setVisible(shown && typed);
    }
}

std::optional<TrialArm> TrialArmFields::armOf(std::size_t row) const
{
    const ArmRow& fields = m_rows[row];
    if (!isTyped(factor())) {
        const int at = fields.choice->currentIndex();
        return at < 0 ? std::nullopt : std::optional(m_choices[static_cast<std::size_t>(at)]);
    }
    TrialArm arm = *m_base;
    if (factor() == TrialFactor::RepBand) {
        const auto band = readBand(fields.typed->text().trimmed());
        if (!band) return std::nullopt;
        arm.band = *band;
        return arm;
    }
    arm.loweringSeconds = readSeconds(fields.typed->text());
    return arm.loweringSeconds ? std::optional(arm) : std::nullopt;
}

Trial TrialArmFields::apply(Trial trial) const
{
    const int runIn = trial.arms.empty() ? 0 : trial.arms.front().runIn;
    trial.factor = factor();
    trial.whyMoreThanOne = m_reason->isHidden() ? QString() : m_reason->text().trimmed();
    trial.arms.clear();
    for (std::size_t i = 0; i < count(); ++i) {
        trial.arms.push_back(armOf(i).value_or(*m_base));
        trial.arms.back().runIn = runIn;
    }
    return trial;
}

QString TrialArmFields::refusal(const Trial& trial) const
{
    for (std::size_t i = 0; i < count(); ++i)
        if (!armOf(i))
            return factor() == TrialFactor::RepBand
                       ? tr("Arm %1: repetitions are typed as 8-12, or 10 alone.").arg(armLetter(i))
                   : factor() == TrialFactor::Lowering
                       ? tr("Arm %1: seconds are a number above 0 and up to 30, such as 3.").arg(armLetter(i))
                       : tr("Arm %1: the library has nothing else to choose. Add it there first.").arg(armLetter(i));
    return refusalOf(trial, m_record->library);
}

void TrialArmFields::showJudgement(const Trial& trial)
{
    const QString problem = refusal(trial);
    const auto differences = armDifferences(trial, m_record->library);
    const bool differsInMore =
        differences.size() > 1 || (differences.size() == 1 && differences.front() != differenceOf(trial.factor));
    m_pinned->setText(tr("Pinned, the same in every arm: %1").arg(pinnedWords(trial, m_record->library)));
    m_refusal->setText(problem);
    m_refusal->setVisible(!problem.isEmpty());
    QPalette warm = palette();
    warm.setColor(QPalette::WindowText, themeColours(palette()).warm);
    m_refusal->setPalette(warm);
    m_reason->setVisible(differsInMore);
}

}  // namespace steelyard
