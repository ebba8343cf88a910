// What a trial looks at and how much each weighs, the limit of discomfort, and below them what the field that has the keyboard is about.
// Weights are whole numbers of which only the ratios matter; 0 is looked at and doesn't weigh.
//
//   fields->offer(trial);      connect(fields, &TrialOutcomeFields::changed, …);   trial = fields->apply(trial);
#pragma once

#include "core/domain/trial.h"

#include <QtWidgets/QWidget>

#include <vector>

class QLabel;
class QSpinBox;

namespace steelyard {

class TrialOutcomeFields final : public QWidget {
    Q_OBJECT

public:
    explicit TrialOutcomeFields(QWidget* parent = nullptr);
    // Without consent discomfort is neither asked nor kept, so it has no limit here.
    void offer(const Trial& draft, bool keepsDiscomfort);
    [[nodiscard]] Trial apply(Trial trial) const;
    // Of the field that has the keyboard.
    [[nodiscard]] QString explanation() const;

Q_SIGNALS:
    void changed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct WeightField {
        QString key;
        QSpinBox* weight = nullptr;
        QString why;
    };
    [[nodiscard]] QSpinBox* addSpin(const QString& name, int low, int high);

    std::vector<WeightField> m_weights;
    std::vector<TrialOutcome> m_unknown;  // of a newer program
    QSpinBox* m_limit;
    QSpinBox* m_running;
    QWidget* m_limitRow;
    QLabel* m_noLimit;
    QLabel* m_why;
};

}  // namespace steelyard
