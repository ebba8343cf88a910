// The block that the program proposes for a lifter: which lifts on which days and why, what could not be met and what stands in the
// way, joints that were spared; with loads from the record. Enter takes it over as one step of the history, Escape leaves it.
//
//   proposed->open(athlete, monday, tr("Block 3"), library);
#pragma once

#include "core/book/block_proposal.h"
#include "ui/pages/block/beside_week.h"

class QPushButton;
class QTreeWidget;

namespace steelyard {

class BlockProposed final : public BesideWeek {
    Q_OBJECT

public:
    explicit BlockProposed(const UiContext& context, QWidget* parent = nullptr);
    void open(Id<Athlete> athlete, QDate start, const QString& name, const Library& library);
    void takeFocus() override;
    [[nodiscard]] QTreeWidget* answer() const { return m_answer; }

protected:
    void goOn(bool withControl) override;

private:
    void show(BlockProposal proposal, const Library& library);

    std::optional<Block> m_block;
    QString m_name;
    QTreeWidget* m_answer;
    QPushButton* m_take;
};

}  // namespace steelyard
