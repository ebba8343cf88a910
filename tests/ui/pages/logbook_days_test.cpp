#include "ui/pages/lifter/logbook_days.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kLastLogged(2026, 6, 1);

// Two exercises, ten sessions each every third day, the last on kLastLogged.
AthleteLog loggedDays()
{
    AthleteLog log = LogBuilder()
                         .line(QStringLiteral("Arm curl"))
                         .exposures(10, kLastLogged, 3, [](int) { return MadeSet{.load = 40, .reps = 8, .off = 0}; })
                         .line(QStringLiteral("Row"))
                         .exposures(10, kLastLogged, 3, [](int) { return MadeSet{.load = 60, .reps = 8}; })
                         .build();
    Exposure& marked = log.lines[0].exposures[3];
    marked.sets[0].set.marks.set(Mark::Swing, 1);
    marked.sets[0].set.note = QStringLiteral("müde, slept badly");
    log.lines[1].exposures[5].rating.discomfort[static_cast<std::size_t>(Joint::Elbow)] = 4;
    log.lines[1].exposures[6].rating.discomfort[static_cast<std::size_t>(Joint::Elbow)] = 0;
    log.lines[0].exposures[8].sets[0].set.kind = SetKind::Deload;
    return log;
}

std::vector<QDate> foundBy(const AthleteLog& log, const char16_t* typed)
{
    std::vector<QDate> dates;
    const LogbookFilter filter{QStringView(typed)};
    for (const LogbookDay& day : logbookDays(log))
        if (filter.accepts(day)) dates.push_back(day.date);
    return dates;
}

TEST(LogbookDays, ListsEveryDayOnceNewestFirstWithWhatToKnowAtAGlance)
{
    const AthleteLog log = loggedDays();
    const auto days = logbookDays(log);
    ASSERT_EQ(days.size(), 10U);
    EXPECT_EQ(days.front().date, kLastLogged);
    EXPECT_EQ(days.back().date, kLastLogged.addDays(-27));
    EXPECT_EQ(days.front().parts.size(), 2U);
    EXPECT_TRUE(days[1].deload);
    EXPECT_FALSE(days[2].deload);
    EXPECT_EQ(days[4].discomfort, 4);
    EXPECT_FALSE(days[3].discomfort);  // asked, and none
}

TEST(LogbookDays, FindsByNamesNotesMarksKindsAndJointsWhateverCaseAndAccent)
{
    const AthleteLog log = loggedDays();
    const auto& exposures = log.lines[0].exposures;
    EXPECT_EQ(foundBy(log, u"CURL row").size(), 10U);
    EXPECT_EQ(foundBy(log, u"swing"), (std::vector{exposures[3].date}));
    EXPECT_EQ(foundBy(log, u"mude"), (std::vector{exposures[3].date}));
    EXPECT_EQ(foundBy(log, u"discomfort elbow"), (std::vector{exposures[5].date}));
    EXPECT_EQ(foundBy(log, u"deload"), (std::vector{exposures[8].date}));
    EXPECT_TRUE(foundBy(log, u"curl swing elbow").empty());
}

TEST(LogbookDays, FindsByDaysMonthsYearsAndStretches)
{
    const AthleteLog log = loggedDays();
    EXPECT_EQ(foundBy(log, u"2026-06"), (std::vector{kLastLogged}));
    EXPECT_EQ(foundBy(log, u"2026-5").size(), 9U);
    EXPECT_EQ(foundBy(log, u"2026").size(), 10U);
    EXPECT_TRUE(foundBy(log, u"2025").empty());
    EXPECT_EQ(foundBy(log, u"2026-05-29..").size(), 2U);
    EXPECT_EQ(foundBy(log, u"2026-05-26..2026-05-29").size(), 2U);
    EXPECT_EQ(foundBy(log, u"2026-06-01 2026-05-29").size(), 2U);  // either day
    EXPECT_TRUE(foundBy(log, u"2026-13").empty());                 // no month: a word that stands nowhere
    EXPECT_EQ(foundBy(log, u"  ").size(), 10U);
}

}  // namespace
}  // namespace steelyard
