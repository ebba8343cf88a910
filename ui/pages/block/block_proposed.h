// The block that the program proposes for a lifter. The question stands beside the answer: first day, weeks, days a week, minutes a
// day, each with what is usual for this lifter. The answer: which lifts on which days and why, what could not be met and what stands in
// the way, joints that were spared; with loads from the record.
//
//   proposed->open({athlete, monday, tr("Block 3"), record, pins.slotsOf(block, week), blockThatHasNotBegun});
//
// It looks at once, by what is usual. Enter takes the answer over as one step of the history; where the question was changed
// since, Enter looks again first. Escape leaves. What is fixed stays where it is. A block that has not begun can give its place to the
// answer, and does so by itself where something of it is fixed.
#pragma once

#include "core/book/block_proposal.h"
#include "core/book/plan_record.h"
#include "ui/pages/block/beside_week.h"

#include <memory>

class QCheckBox;
class QDateEdit;
class QLabel;
class QLayout;
class QPushButton;
class QSpinBox;
class QTreeWidget;

namespace steelyard {

struct ProposalQuestion {
    Id<Athlete> athlete;
    QDate start;
    QString name;
    std::shared_ptr<const PlanRecord> record;
    std::vector<PinnedSlot> pinned = {};
    std::optional<Row<Block>> instead = {};  // may give its place away
};

class BlockProposed final : public BesideWeek {
    Q_OBJECT

public:
    explicit BlockProposed(const UiContext& context, QWidget* parent = nullptr);
    void open(ProposalQuestion question);
    void takeFocus() override;
    [[nodiscard]] QTreeWidget* answer() const { return m_answer; }
    // Whether there is an answer to what is asked now.
    [[nodiscard]] bool isAnswered() const { return m_block.has_value(); }

protected:
    void goOn(bool withControl) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    [[nodiscard]] QLayout* makeQuestion();
    void fillUsual();
    void sayUsual();
    // The question is another one.
    void forget();
    void look();
    void take();
    void show(BlockProposal proposal);
    void fitSentences();
    [[nodiscard]] bool replaces() const;
    [[nodiscard]] int usualMinutes() const;
    [[nodiscard]] ProposalWishes wishes() const;

    std::optional<ProposalQuestion> m_question;
    std::optional<Block> m_block;
    bool m_looking = false;
    QDateEdit* m_from;
    QSpinBox* m_weeks;
    QSpinBox* m_days;
    QSpinBox* m_minutes;
    QCheckBox* m_instead;
    QLabel* m_usual;
    QLabel* m_pins;
    QTreeWidget* m_answer;
    QPushButton* m_look;
    QPushButton* m_take;
};

}  // namespace steelyard
