// The loads of a block as the lifter's record has them today, beside those that are written: what would change and why, each to be
// taken or left.
//
//   loads->open(athlete, row);                         // forecast in the background
//
// Locked slots and days that have passed are not among them. Keys: Space ticks; the key that locks a load in the plan (block.lock of
// the actions) keeps the written load of the row, so that it is left alone from then on; Enter writes all that as one step of the
// history, Escape leaves.
#pragma once

#include "core/book/block_outlook.h"
#include "ui/pages/block/beside_week.h"

class QPushButton;
class QTreeWidget;

namespace steelyard {

class BlockLoads final : public BesideWeek {
    Q_OBJECT

public:
    explicit BlockLoads(const UiContext& context, QWidget* parent = nullptr);
    void open(Id<Athlete> athlete, const Row<Block>& row, const Library& library);
    void takeFocus() override;
    [[nodiscard]] QTreeWidget* changes() const { return m_list; }
    [[nodiscard]] bool canKeep() const { return !m_found.empty(); }
    // The written load of the row where the cursor is stays for good, or no longer.
    void keep();

Q_SIGNALS:
    void canKeepChanged();

protected:
    void goOn(bool withControl) override;

private:
    void build();
    // What is ticked, and what is kept.
    [[nodiscard]] std::vector<LoadChangeAhead> taken() const;
    void show(BlockOutlook outlook, const Library& library);

    std::optional<Row<Block>> m_block;
    std::vector<LoadChangeAhead> m_found;
    std::vector<bool> m_kept;  // of the same
    QTreeWidget* m_list;
    QPushButton* m_write;
};

}  // namespace steelyard
