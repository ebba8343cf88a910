#include "ui/pages/lifter/trial_outcome_fields.h"

#include "core/trials/trial_outcomes.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/words.h"

#include <QtCore/QEvent>
#include <QtCore/QSignalBlocker>
#include <QtWidgets/QGridLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QSpinBox>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kStepsOfWeight = 10;  // of a field for a weight of 1
constexpr int kMostWeight = 10;
constexpr int kMostRunning = 6;
constexpr int kMostLimit = 10;
constexpr int kOutcomeColumns = 2;

}  // namespace

TrialOutcomeFields::TrialOutcomeFields(QWidget* parent)
    : QWidget(parent),
      m_limit(addSpin(tr("Discomfort limit, of 10"), 1, kMostLimit)),
      m_running(addSpin(tr("Sessions running"), 1, kMostRunning)),
      m_limitRow(new QWidget(this)),
      m_noLimit(quietWords(this)),
      m_why(quietWords(this))
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins({});
    grid->setVerticalSpacing(3);
    int at = 0;
    for (const OutcomeKind& kind : outcomeKinds()) {
        auto* weight = addSpin(tr("Weight of %1").arg(kind.title()), 0, kMostWeight);
        auto* label = new ElidedLabel(this);
        label->setText(kind.title());
        // Repetitions have no place on a scale of ten, so they are looked at and never weigh.
        if (kind.scale == OutcomeScale::Repetitions) weight->setEnabled(false);
        weight->setToolTip(kind.why());
        const int row = at / kOutcomeColumns;
        const int column = at % kOutcomeColumns * 2;
        grid->addWidget(weight, row, column);
        grid->addWidget(label, row, column + 1);
        m_weights.push_back({kind.key, weight, kind.why()});
        ++at;
    }
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(3, 1);
    const int below = (at + kOutcomeColumns - 1) / kOutcomeColumns;
    auto* limit = new QHBoxLayout(m_limitRow);
    limit->setContentsMargins({});
    limit->addWidget(new QLabel(tr("Out at discomfort"), this));
    limit->addWidget(m_limit);
    limit->addWidget(new QLabel(tr("in"), this));
    limit->addWidget(m_running);
    limit->addWidget(new QLabel(tr("sessions running"), this));
    limit->addStretch(1);
    m_noLimit->setText(
        tr("Discomfort isn’t asked: this lifter hasn’t agreed to it. Ask before every session all the same, and let "
           "nobody lift through pain."));
    grid->addWidget(m_limitRow, below, 0, 1, 4);
    grid->addWidget(m_noLimit, below, 0, 1, 4);
    grid->addWidget(m_why, below + 1, 0, 1, 4);
    m_why->setMinimumHeight(2 * fontMetrics().lineSpacing());
    m_why->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_why->setText(explanation());
    // In the order in which they are asked.
    for (std::size_t i = 1; i < m_weights.size(); ++i) setTabOrder(m_weights[i - 1].weight, m_weights[i].weight);
    setTabOrder(m_weights.back().weight, m_limit);
    setTabOrder(m_limit, m_running);
}

QSpinBox* TrialOutcomeFields::addSpin(const QString& name, int low, int high)
{
    auto* spin = new QSpinBox(this);
    spin->setRange(low, high);
    spin->setAccessibleName(name);
    spin->installEventFilter(this);
    connect(spin, &QSpinBox::valueChanged, this, &TrialOutcomeFields::changed);
    return spin;
}

void TrialOutcomeFields::offer(const Trial& draft, bool keepsDiscomfort)
{
    m_limitRow->setVisible(keepsDiscomfort);
    m_noLimit->setVisible(!keepsDiscomfort);
    m_unknown.clear();
    for (WeightField& field : m_weights) {
        const QSignalBlocker quiet(field.weight);
        const auto known = std::ranges::find(draft.outcomes, field.key, &TrialOutcome::key);
        const double weight = known == draft.outcomes.end() ? 0 : known->weight;
        field.weight->setValue(static_cast<int>(std::lround(weight * kStepsOfWeight)));
    }
    for (const TrialOutcome& outcome : draft.outcomes)
        if (!findOutcome(outcome.key)) m_unknown.push_back(outcome);
    const QSignalBlocker quietLimit(m_limit);
    const QSignalBlocker quietRunning(m_running);
    m_limit->setValue(draft.limit.rating);
    m_running->setValue(draft.limit.sessionsRunning);
}

Trial TrialOutcomeFields::apply(Trial trial) const
{
    trial.outcomes.clear();
    for (const WeightField& field : m_weights)
        trial.outcomes.push_back({field.key, field.weight->value() / kStepsOfWeight});
    trial.outcomes.insert(trial.outcomes.end(), m_unknown.begin(), m_unknown.end());
    trial.limit = {m_limit->value(), m_running->value()};
    return trial;
}

QString TrialOutcomeFields::explanation() const
{
    for (const WeightField& field : m_weights)
        if (field.weight->hasFocus()) return field.why;
    if (m_limit->hasFocus() || m_running->hasFocus())
        return tr(
            "Discomfort is a veto: nothing good about an arm makes up for it, and it is shown while results are "
            "hidden.");
    return tr(
        "The weights are yours: nobody has shown how much each of these feelings is worth. 0 is asked and shown "
        "and doesn’t weigh.");
}

bool TrialOutcomeFields::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut) {
        const bool done = QWidget::eventFilter(watched, event);
        // The widget that gets the keyboard knows it only after this event.
        QMetaObject::invokeMethod(
            this, [this] { m_why->setText(explanation()); }, Qt::QueuedConnection);
        return done;
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace steelyard
