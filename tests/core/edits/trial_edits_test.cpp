// Each edit of a trial is one step that is undone and redone with equal content, and none touches the design.
#include "core/edits/trial_edits.h"

#include "core/planning/block_ops.h"
#include "tests/support/trial_book.h"

#include <gtest/gtest.h>

#include <functional>

namespace steelyard {
namespace {

using test::must;
using test::rawDump;
using test::TrialBook;

class TrialEdits : public ::testing::Test {
protected:
    TrialEdits()
    {
        const Block blank = must(blankBlock({.athlete = at.book.athlete(),
                                             .name = QStringLiteral("Spring"),
                                             .start = QDate(2026, 3, 2),
                                             .weeks = 3,
                                             .weekdays = {1, 4}}));
        must(history().perform(addBlock(blank)));
        must(history().perform(designTrial(at.trial(), {})));
    }
    [[nodiscard]] EditHistory& history() { return at.book->history(); }
    [[nodiscard]] Row<Trial> row() { return must(at.book->trials().of(at.book.athlete())).front(); }
    [[nodiscard]] Row<Block> block() { return must(at.book->blocks().of(at.book.athlete())).front(); }
    [[nodiscard]] BlockChange renamedBlock()
    {
        Block after = block().value;
        after.name = QStringLiteral("Spring, with the trial");
        return {block().id, after};
    }
    void expectOneExactStep(std::unique_ptr<Edit> edit)
    {
        const QByteArray before = rawDump(at.book->database());
        const QString label = edit->label();
        ASSERT_TRUE(must(history().perform(std::move(edit)))) << qPrintable(label);
        const QByteArray after = rawDump(at.book->database());
        EXPECT_NE(before, after) << qPrintable(label);
        EXPECT_EQ(history().undoLabel(), label);
        must(history().undo());
        EXPECT_EQ(rawDump(at.book->database()), before) << qPrintable(label);
        must(history().redo());
        EXPECT_EQ(rawDump(at.book->database()), after) << qPrintable(label);
    }

    TrialBook at;
};

TEST_F(TrialEdits, AreUndoneAndRedoneWithEqualContent)
{
    Trial another = at.trial();
    another.question = QStringLiteral("Wide or narrow?");
    expectOneExactStep(designTrial(another, {renamedBlock()}));

    Trial changed = row().value;
    changed.days[0].armDone = 1;
    changed.days[1].missed = true;
    changed.days[3].date = changed.days[3].date.addDays(3);
    expectOneExactStep(changeTrialDays(row(), changed, {}));
    expectOneExactStep(lookAtTrial(row(), {QDate(2026, 3, 6), 2}));
    Block plan = block().value;
    plan.aim = QStringLiteral("with the neutral grip");
    expectOneExactStep(endTrial(row(), {QDate(2026, 3, 12), TrialEnd::Concluded, {}, 1}, {{block().id, plan}}));
    expectOneExactStep(reopenTrial(row()));
    plan.aim = QStringLiteral("as it was");
    expectOneExactStep(carryTrialChoice(row(), {{block().id, plan}}));
    expectOneExactStep(removeTrial(row(), {}));
}

TEST_F(TrialEdits, LeaveTheDesignAlone)
{
    const std::vector<std::function<void(Trial&)>> changes{[](Trial& t) { std::swap(t.days[0].arm, t.days[1].arm); },
                                                           [](Trial& t) { t.days.pop_back(); },
                                                           [](Trial& t) { t.outcomes[0].weight += 1; },
                                                           [](Trial& t) {
                                                               t.arms[0].band = {3, 5};
                                                           },
                                                           [](Trial& t) { t.limit.rating = 9; },
                                                           [](Trial& t) { t.seed = 7; }};
    const Row<Trial> before = row();
    for (const auto& change : changes) {
        Trial after = before.value;
        change(after);
        const auto refused = history().perform(changeTrialDays(before, after, {}));
        ASSERT_FALSE(refused);
        EXPECT_EQ(refused.error().code, ErrorCode::Invalid);
    }
    EXPECT_EQ(row(), before);
}

TEST_F(TrialEdits, KeepLooksByDateAndTakeNoneAfterTheEnd)
{
    must(history().perform(lookAtTrial(row(), {QDate(2026, 3, 10), 3})));
    must(history().perform(lookAtTrial(row(), {QDate(2026, 3, 6), 2})));
    ASSERT_EQ(row().value.looks.size(), 2U);
    EXPECT_EQ(row().value.looks[0].sessionsDone, 2);
    must(history().perform(endTrial(row(), {QDate(2026, 3, 12), TrialEnd::Concluded, {}, 0}, {})));
    EXPECT_FALSE(history().perform(lookAtTrial(row(), {QDate(2026, 3, 13), 4})));
    EXPECT_EQ(row().value.looks.size(), 2U);
}

TEST_F(TrialEdits, StopOnlyWithAReasonAndAreAllOrNothing)
{
    const QByteArray before = rawDump(at.book->database());
    EXPECT_FALSE(history().perform(endTrial(row(), {QDate(2026, 3, 12), TrialEnd::Stopped, {}, {}}, {renamedBlock()})));
    Block unsound = block().value;
    unsound.name.clear();
    EXPECT_FALSE(
        history().perform(endTrial(row(), {QDate(2026, 3, 12), TrialEnd::Concluded, {}, 0}, {{block().id, unsound}})));
    EXPECT_EQ(rawDump(at.book->database()), before);
}

}  // namespace
}  // namespace steelyard
