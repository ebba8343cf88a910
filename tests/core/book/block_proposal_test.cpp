// Proposals for lifters of an invented club, with the library that ships.
#include "core/book/block_proposal.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "core/exchange/new_book.h"
#include "core/planning/block_totals.h"
#include "core/planning/session_time.h"
#include "core/samples/sample_club.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

const QDate kToday(2026, 11, 25);
const QDate kFrom(2026, 11, 30);

using test::must;

class BlockProposalOfABook : public testing::Test {
protected:
    void SetUp() override
    {
        m_book = must(newBook(m_dir.path(u"club.steelyard"), m_clock));
        must(fillSampleClub(*m_book, {.athletes = 6, .years = 1, .seed = 3, .lastDay = kToday}, {}));
    }
    [[nodiscard]] ProposalWishes wishes() const
    {
        ProposalWishes made{.today = kToday, .from = kFrom};
        made.search = {.steps = 100'000, .stepsALimit = 5'000, .seed = 1};
        return made;
    }

    testing_support::TempDir m_dir;
    FixedClock m_clock{kToday};
    std::unique_ptr<Book> m_book;
};

TEST_F(BlockProposalOfABook, IsSoundForEveryLifterAndWithinTheirMinutes)
{
    const Library library = must(m_book->library().read());
    for (const Row<Athlete>& row : must(m_book->athletes().all())) {
        const BlockProposal proposal = must(readProposal(m_book->database(), row.id, wishes(), {}));
        EXPECT_TRUE(validate(proposal.block).empty()) << row.value.name.toStdString();
        EXPECT_FALSE(proposal.week.empty());
        // As the editor would mark it: what pins and bands may do is said in `unmet`; nothing else is broken.
        const AthleteLog log = must(readAthleteLog(m_book->database(), library, row.id, kToday));
        for (const BrokenLimit& one : blockTotals({proposal.block, log, library, kToday}).broken)
            EXPECT_TRUE(one.kind == LimitKind::FewSets || one.kind == LimitKind::ManySets
                        || one.kind == LimitKind::JointComplaint)
                << row.value.name.toStdString() << ", week " << one.week << ": " << one.sentence.toStdString();
        EXPECT_EQ(proposal.block.weeks.size(), 5U);
        for (const PlannedWeek& week : proposal.block.weeks)
            for (const PlannedDay& day : week.days) {
                EXPECT_LE(minutesOf(day, library), *row.value.minutesPerDay + 1e-9);
                std::set<std::int64_t> exercises;
                for (const Slot& slot : day.slotList)
                    EXPECT_TRUE(exercises.insert(library.find(slot.variant)->value.exercise.value()).second);
            }
        for (const ProposedSlot& slot : proposal.week) EXPECT_FALSE(slot.why.isEmpty());
    }
}

TEST_F(BlockProposalOfABook, OnceKeptIsTakenBackByUndo)
{
    const auto athlete = must(m_book->athletes().all()).front();
    const auto before = must(m_book->blocks().of(athlete.id));
    const BlockProposal proposal = must(readProposal(m_book->database(), athlete.id, wishes(), {}));
    EXPECT_TRUE(must(m_book->history().perform(addBlock(proposal.block))));
    const auto after = must(m_book->blocks().of(athlete.id));
    ASSERT_EQ(after.size(), before.size() + 1);
    EXPECT_TRUE(std::ranges::any_of(after, [&](const Row<Block>& row) { return row.value == proposal.block; }));
    must(m_book->history().undo());
    EXPECT_EQ(must(m_book->blocks().of(athlete.id)), before);
}

}  // namespace
}  // namespace steelyard
