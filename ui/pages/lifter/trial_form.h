// A trial is designed on one page: the question, the lift, what the arms differ in, what is looked at, how many sessions; beside it what
// such a trial can find and where its sessions fall. Enter starts it, Escape leaves; nothing is stored before.
//
//   form->offer({record, lift, TrialFactor::Grip, seed, today});
//   connect(form, &TrialForm::accepted, …, [](const ProposedTrial& made) { … });
//
// What can't be is said in the form. The order is drawn from the seed that is shown; it may be drawn again until the trial starts.
#pragma once

#include "core/planning/propose_trial.h"
#include "ui/pages/lifter/trials_reading.h"

#include <QtWidgets/QWidget>

#include <array>
#include <functional>
#include <memory>

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace steelyard {

class TrialArmFields;
class TrialOutcomeFields;
class TrialPreview;

class TrialForm final : public QWidget {
    Q_OBJECT

public:
    struct Offer {
        std::shared_ptr<const TrialsReading> reading;
        LiftLine lift;
        TrialFactor factor = TrialFactor::Grip;
        std::uint64_t seed = 1;
        QDate today;
    };

    explicit TrialForm(std::function<std::uint64_t()> newSeed, QWidget* parent = nullptr);
    void offer(Offer offer);
    void takeFocus();
    void say(const QString& problem);
    // The design as it is typed, with its days where they could be drawn.
    [[nodiscard]] const Result<ProposedTrial>& proposed() const { return m_proposed; }

Q_SIGNALS:
    void accepted(const steelyard::ProposedTrial& made);
    void left();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    [[nodiscard]] QLayout* makeSizes();
    [[nodiscard]] QLayout* makeDays();
    [[nodiscard]] QLayout* makeFoot();
    [[nodiscard]] QSpinBox* addNumber(const QString& name, int low, int high);
    void fillLifts();
    void begin(const LiftLine& lift, TrialFactor factor);
    void refresh();
    void drawAgain();
    void accept();
    void offerWeekdays();
    [[nodiscard]] const LifterTrials& record() const { return m_offer->reading->record; }
    [[nodiscard]] Trial design() const;
    [[nodiscard]] std::vector<int> weekdays() const;

    std::function<std::uint64_t()> m_newSeed;
    std::optional<Offer> m_offer;
    std::vector<LiftLine> m_lifts;  // as in the list
    std::optional<Trial> m_draft;   // there since the offer
    std::uint64_t m_drawnFrom = 1;
    bool m_filling = false;
    bool m_ownQuestion = false;  // the coach typed one
    Result<ProposedTrial> m_proposed;
    QLineEdit* m_question;
    QComboBox* m_lift;
    TrialArmFields* m_arms;
    TrialOutcomeFields* m_outcomes;
    QSpinBox* m_sets;
    QLineEdit* m_reserve;
    QSpinBox* m_runIn;
    QSpinBox* m_between;
    QSpinBox* m_blocks;
    QDateEdit* m_from;
    std::array<QCheckBox*, kDaysOfPlanWeek> m_weekdays{};
    TrialPreview* m_preview;
    QLabel* m_seed;
    QPushButton* m_draw;
    QLabel* m_problem;
    QPushButton* m_start;
    QPushButton* m_leave;
};

}  // namespace steelyard
