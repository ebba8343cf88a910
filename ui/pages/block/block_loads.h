// The loads of a block as the lifter's record has them today, beside those that are written: what would change and why, each to be
// taken or left.
//
//   loads->open(athlete, row);                         // forecast in the background
//   connect(loads, &BlockLoads::left, …);              // with what was done, for the status line; empty: nothing
//
// Locked slots and days that have passed are not among them. Keys: Space ticks, Enter writes what is ticked as one step of the
// history, Escape leaves.
#pragma once

#include "core/book/block_outlook.h"
#include "ui/jobs/job.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QLabel;
class QPushButton;
class QTreeWidget;

namespace steelyard {

class BlockLoads final : public QWidget {
    Q_OBJECT

public:
    explicit BlockLoads(const UiContext& context, QWidget* parent = nullptr);
    ~BlockLoads() override;
    void open(Id<Athlete> athlete, const Row<Block>& row, const Library& library);
    void takeFocus();
    [[nodiscard]] bool isSettled() const { return !m_job.isRunning(); }
    [[nodiscard]] QTreeWidget* changes() const { return m_list; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void left(const QString& done);

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    void show(BlockOutlook outlook, const Library& library);
    void say(const QString& text, bool isProblem = false);
    void write();

    UiContext m_context;
    std::optional<Row<Block>> m_block;
    std::vector<LoadChangeAhead> m_found;
    JobHandle m_job;
    int m_asked = 0;
    QLabel* m_words;
    QTreeWidget* m_list;
    QPushButton* m_write;
};

}  // namespace steelyard
