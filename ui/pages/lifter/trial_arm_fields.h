// The arms of a trial that is designed: the one thing they differ in, how many there are, and each one's choice; grips and variants are
// chosen, rep bands and seconds of lowering typed. What all have alike stands below as pinned; when the arms differ in more than one
// thing, or in nothing, the sentence that refuses it stands there, with a field for the reason.
//
//   fields->offer(record, draft);      connect(fields, &TrialArmFields::changed, …);   Trial now = fields->apply(trial);
#pragma once

#include "core/book/trial_reading.h"

#include <QtWidgets/QWidget>

#include <array>
#include <memory>

class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace steelyard {

class TrialArmFields final : public QWidget {
    Q_OBJECT

public:
    explicit TrialArmFields(QWidget* parent = nullptr);
    // The record is kept by the caller.
    void offer(const LifterTrials& record, const Trial& draft);
    // Factor, arms and reason into a trial; what else it has stays.
    [[nodiscard]] Trial apply(Trial trial) const;
    // What can't be read or be compared; empty: fine.
    [[nodiscard]] QString refusal(const Trial& trial) const;
    // Below the arms, for the trial as it is now.
    void showJudgement(const Trial& trial);
    [[nodiscard]] QWidget* first() const;

Q_SIGNALS:
    void changed();

private:
    struct ArmRow {
        QLabel* letter = nullptr;
        QComboBox* choice = nullptr;
        QLineEdit* typed = nullptr;
    };
    void factorChanged();
    void fill(const std::vector<TrialArm>& arms);
    void showRows();
    [[nodiscard]] TrialFactor factor() const;
    [[nodiscard]] std::size_t count() const;
    // The arm that a row says; absent: it can't be read.
    [[nodiscard]] std::optional<TrialArm> armOf(std::size_t row) const;

    const LifterTrials* m_record = nullptr;
    std::optional<TrialArm> m_base;  // the lift as it is trained; there since the offer
    std::vector<TrialArm> m_choices;
    bool m_filling = false;
    QComboBox* m_factor;
    QSpinBox* m_count;
    std::array<ArmRow, kMostArms> m_rows;
    QLabel* m_pinned;
    QLabel* m_refusal;
    QLineEdit* m_reason;
};

}  // namespace steelyard
