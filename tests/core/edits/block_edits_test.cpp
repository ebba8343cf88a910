// Whatever was done to a block in the book, undoing it brings back what was there before, and redoing what came of it.
#include "core/edits/edits.h"

#include "core/planning/block_ops.h"
#include "core/planning/block_templates.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;

const QDate kBlockMonday(2026, 3, 2);

class BlockBook {
public:
    BlockBook()
    {
        auto tx = must(Transaction::begin(book->database()));
        lifts.push_back(book.line());
        for (int i = 0; i < 4; ++i) {
            LiftLine other = book.line();
            other.grip = must(book->library().insert(tx, Grip{QStringLiteral("grip %1").arg(i), {}, {}, {}}));
            lifts.push_back(other);
        }
        must(tx.commit());
        const Block blank = must(blankBlock({.athlete = book.athlete(),
                                             .name = QStringLiteral("Winter"),
                                             .start = kBlockMonday,
                                             .weeks = 3,
                                             .weekdays = {1, 3, 5}}));
        EXPECT_TRUE(must(book->history().perform(addBlock(blank))));
    }
    [[nodiscard]] Row<Block> row() const { return must(book.operator->()->blocks().of(book.athlete())).front(); }
    [[nodiscard]] Slot slot(std::size_t lift, int sets) const
    {
        Slot made{.variant = lifts[lift].variant, .grip = lifts[lift].grip, .standard = lifts[lift].standard};
        made.sets = sets;
        return made;
    }

    mutable TempBook book;
    std::vector<LiftLine> lifts;
};

class RandomEdits {
public:
    explicit RandomEdits(unsigned seed) : m_random(seed) {}
    [[nodiscard]] int upTo(int most) { return std::uniform_int_distribution(0, most)(m_random); }
    [[nodiscard]] Result<Block> change(const BlockBook& from, const Block& block)
    {
        const QDate date = block.start.addDays(upTo(20));
        PlanPlaces places;
        for (std::size_t week = 0; week < block.weeks.size(); ++week)
            for (const PlanPlace& place : placesOfWeek(block, week))
                if (upTo(3) == 0) places.push_back(place);
        switch (upTo(7)) {
        case 0:
            return removeSlots(block, places);
        case 1:
            return moveSlots(block, places, upTo(6) - 3);
        case 2:
            return changeSets(block, places, 1);
        case 3:
            return duplicateWeek(block, static_cast<std::size_t>(upTo(2)));
        case 4:
            return removeWeek(block, static_cast<std::size_t>(upTo(2)));
        case 5:
            return setDaysOff(block, {{date, date.addDays(1), QStringLiteral("away")}}, block.start);
        default:
            return addSlots(block, {from.slot(static_cast<std::size_t>(upTo(4)), 1 + upTo(4))}, date);
        }
    }

private:
    std::mt19937 m_random;
};

TEST(BlockEdits, AreUndoneAndRedoneStepByStep)
{
    BlockBook at;
    EditHistory& history = at.book->history();
    RandomEdits random(5);
    std::vector<Block> states{at.row().value};
    while (states.size() < 61) {
        const auto after = random.change(at, states.back());
        if (!after || *after == states.back()) continue;
        ASSERT_TRUE(must(history.perform(changeBlock(at.row().id, *after)))) << states.size();
        ASSERT_EQ(at.row().value, *after) << states.size();
        states.push_back(*after);
    }
    for (std::size_t step = states.size() - 1; step > 0; --step) {
        const auto undone = history.undo();
        ASSERT_TRUE(undone) << step << ": " << qPrintable(undone.error().what);
        ASSERT_EQ(at.row().value, states[step - 1]) << step;
    }
    for (std::size_t step = 1; step < states.size(); ++step) {
        const auto redone = history.redo();
        ASSERT_TRUE(redone) << step << ": " << qPrintable(redone.error().what);
        ASSERT_EQ(at.row().value, states[step]) << step;
    }
}

TEST(BlockEdits, KeepATemplateAndTakeItAway)
{
    BlockBook at;
    EditHistory& history = at.book->history();
    const BlockTemplate shape = must(templateOf(at.row().value, QStringLiteral("Three days")));
    EXPECT_TRUE(must(history.perform(addTemplate(shape))));
    const auto kept = must(at.book->blocks().templates());
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_EQ(kept[0].value, shape);
    EXPECT_TRUE(must(history.perform(removeTemplate(kept[0]))));
    EXPECT_TRUE(must(at.book->blocks().templates()).empty());
    must(history.undo());
    EXPECT_EQ(must(at.book->blocks().templates()), kept);
    must(history.undo());
    EXPECT_TRUE(must(at.book->blocks().templates()).empty());
}

}  // namespace
}  // namespace steelyard
