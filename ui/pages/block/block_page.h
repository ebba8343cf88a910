// The Block place: the coming weeks of a lifter, built and changed while they run. One week in sight, the others as a strip above it, what the
// week adds up to beside it, and every limit that is broken marked where it is.
//
// Every change is one edit of the history, named by what was done. Days that have passed are shown with what was done, and stay as they were planned.
// The record is read in the background; blocks are read anew after every commit, and the loads to come are reckoned again
// (loads_ahead.h). What is fixed for the next proposal is kept here, by lifter, as long as the book is open. Actions: all with "block." in the table.
#pragma once

#include "core/domain/logbook.h"
#include "ui/jobs/job.h"
#include "ui/pages/block/block_deeds.h"
#include "ui/shell/context.h"
#include "ui/shell/page.h"

class QComboBox;
class QLabel;
class QShortcut;
class QStackedWidget;
class QToolButton;

namespace steelyard {

class AskedLine;
class BlockDayList;
class BesideWeek;
class BlockForMany;
class BlockGrid;
class BlockLoads;
class BlockProposed;
class BlockSide;
class BlockStart;
class Edit;
class ElidedLabel;
class LiftChooser;
class LoadsAhead;
class WeekStrip;

class BlockPage final : public Page {
    Q_OBJECT

public:
    explicit BlockPage(const UiContext& context, QWidget* parent = nullptr);
    ~BlockPage() override;

    [[nodiscard]] QString key() const override { return QStringLiteral("block"); }
    [[nodiscard]] QString title() const override { return tr("Block"); }
    void showAthlete(std::optional<Id<Athlete>> athlete) override;
    void bookChanged(const Changes& changes) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

    [[nodiscard]] bool isSettled() const { return !m_job.isRunning() && !m_stale; }
    // What the record says of the loads to come.
    [[nodiscard]] const LoadsAhead& ahead() const { return *m_ahead; }
    // Null: no block is shown.
    [[nodiscard]] const BlockShown* shown() const { return m_shown.get(); }
    [[nodiscard]] BlockPlacesView* places() const;
    [[nodiscard]] WeekScope scope() const { return m_scope; }
    // What stands below the week.
    [[nodiscard]] QString line() const;

protected:
    void showEvent(QShowEvent* event) override;

private:
    [[nodiscard]] QWidget* makeEditor();
    [[nodiscard]] QLayout* makeTop();
    [[nodiscard]] QWidget* makeWeek();
    void connectView(BlockPlacesView* view);
    void read();
    void take(Result<PlanRecord> record);
    void readBlocks();
    // Days before have passed, or have their session in the book.
    [[nodiscard]] QDate firstOpen() const;
    void chooseBlock(std::optional<Id<Block>> wanted);
    void showBlock(const Row<Block>& row, std::size_t week);
    void showWeek(std::size_t week);
    void showViews();
    void lookAhead();
    void showHeading();
    void fillChoice();
    void hint(const QString& text);
    void offerStart(bool canLeave);
    void leaveStart();
    void openForMany();
    void openLoads();
    void openProposal();
    void leaveBeside(const QString& done);
    // Something stands in place of the week.
    [[nodiscard]] bool isBeside() const { return beside() != nullptr; }
    [[nodiscard]] BesideWeek* beside() const;
    void openBeside(BesideWeek* panel);
    void start(const Block& block);
    [[nodiscard]] PlanChoice choice() const;
    // Whether the book still has the block that a change was thought out on. Otherwise it is read anew, and that is said: the
    // change would put back the older plan.
    [[nodiscard]] bool isUpToDate(const Row<Block>& thought);
    void apply(Result<Block> after, const QString& label);
    void apply(Deed deed) { apply(std::move(deed.block), deed.label); }
    [[nodiscard]] bool store(std::unique_ptr<Edit> edit);
    void ask(const Asking& asking);
    void askTemplate();
    void chooseLift(bool replaces, bool everywhere);
    void typed(const PlanPlace& place, const Slot& slot);
    void copy(bool cut);
    void paste();
    void removeWhole();
    void togglePin();
    void switchScope();
    void switchView();
    void stepLimit(int by);
    void goTo(QDate date, std::optional<std::size_t> slot);
    void say(const QString& text, bool isProblem = false);
    void sayCursor();
    void sayHowItGoesOn();
    [[nodiscard]] bool isAsking() const;
    void performHere(const QString& action);

    UiContext m_context;
    std::optional<Id<Athlete>> m_athlete;
    std::shared_ptr<const PlanRecord> m_record;
    std::vector<Row<Block>> m_blocks;
    BlockShownPtr m_shown;
    WeekScope m_scope = WeekScope::ThisWeek;
    std::vector<Slot> m_copied;
    std::map<Id<Athlete>, BlockPins> m_pins;
    std::optional<QString> m_wanted;  // an action that waits for the record
    bool m_stale = true;
    bool m_storing = false;
    std::size_t m_blocksBefore = 0;  // when what stands beside the week was opened
    bool m_later = false;            // the book has changed while something was typed
    JobHandle m_job;

    QStackedWidget* m_states = nullptr;
    QLabel* m_hint = nullptr;
    BlockStart* m_start = nullptr;
    BlockLoads* m_loads = nullptr;
    BlockProposed* m_proposed = nullptr;
    BlockForMany* m_many = nullptr;
    QComboBox* m_blockChoice = nullptr;
    ElidedLabel* m_heading = nullptr;
    QToolButton* m_scopeButton = nullptr;
    QToolButton* m_viewButton = nullptr;
    WeekStrip* m_strip = nullptr;
    LoadsAhead* m_ahead = nullptr;
    QStackedWidget* m_views = nullptr;
    BlockGrid* m_grid = nullptr;
    BlockDayList* m_list = nullptr;
    BlockSide* m_side = nullptr;
    LiftChooser* m_chooser = nullptr;
    AskedLine* m_asked = nullptr;
    QLabel* m_line = nullptr;
    QShortcut* m_back = nullptr;
};

}  // namespace steelyard
