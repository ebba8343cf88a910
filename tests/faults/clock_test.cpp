// Clocks that are set back, the night in which an hour comes twice, a session that goes on past midnight, a laptop in another time
// zone: stamps are in UTC, days are those of the sheet, and nothing is ordered by the clock.
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/storage/statement.h"
#include "tests/faults/keying.h"
#include "tests/faults/keying_process.h"
#include "tests/support/temp_book.h"

#include <QtCore/QTimeZone>

namespace steelyard {
namespace {

using test::KeyingProcess;
using test::must;
using test::rawDump;
using test::TempBook;
using test::workSet;

class ClockOnTheWall final : public Clock {
public:
    explicit ClockOnTheWall(const char* utc, const char* zone = "Europe/Berlin") : m_zone(zone) { set(utc); }
    void set(const char* utc) { m_now = QDateTime::fromString(QString::fromLatin1(utc), Qt::ISODate); }
    [[nodiscard]] QDate today() const override { return m_now.toTimeZone(m_zone).date(); }
    [[nodiscard]] QDateTime nowUtc() const override { return m_now; }

private:
    QTimeZone m_zone;
    QDateTime m_now;
};

// The same book with a clock that can be moved.
struct Desk {
    explicit Desk(const char* utc) : clock(utc)
    {
        temp.close();
        book = must(Book::open(temp.path(), clock));
    }
    QStringList replaced() const
    {
        QStringList texts;
        auto st =
            must(book->database().prepare("SELECT replaced_at, json_extract(was, '$.reps') FROM set_replaced "
                                          "ORDER BY id"));
        while (must(st.step())) texts << st.text(0) + QStringLiteral(" reps ") + st.text(1);
        return texts;
    }
    Id<SetEntry> onlySet() const { return Id<SetEntry>(must(book->database().integer("SELECT id FROM set_entry"))); }

    TempBook temp;
    ClockOnTheWall clock;
    std::unique_ptr<Book> book;
};

TEST(ClockSetBack, ChangesNeitherTheOrderOfEditsNorWhatTheyReplaced)
{
    Desk desk("2026-03-02T12:00:00Z");
    std::vector<QByteArray> states;
    const auto perform = [&](std::unique_ptr<Edit> edit) {
        states.push_back(rawDump(desk.book->database()));
        EXPECT_TRUE(must(desk.book->history().perform(std::move(edit))));
    };
    perform(addSet(desk.temp.line(), QDate(2026, 3, 2), workSet("40", 8)));
    perform(changeSet(desk.onlySet(), workSet("40", 9), desk.clock));
    desk.clock.set("2024-03-02T12:00:00Z");
    perform(changeSet(desk.onlySet(), workSet("40", 10), desk.clock));
    perform(addSet(desk.temp.line(), QDate(2026, 3, 3), workSet("40", 7)));
    EXPECT_EQ(desk.replaced(), (QStringList{QStringLiteral("2026-03-02T12:00:00Z reps 8"),
                                            QStringLiteral("2024-03-02T12:00:00Z reps 9")}));
    desk.book.reset();
    desk.book = must(Book::open(desk.temp.path(), desk.clock));
    for (auto state = states.rbegin(); state != states.rend(); ++state) {
        must(desk.book->history().undo());
        EXPECT_EQ(rawDump(desk.book->database()), *state);
    }
}

TEST(NightWithAnHourTwice, HasTwoStampsForTheSameTimeOnTheWall)
{
    Desk desk("2026-10-25T00:30:00Z");  // 02:30 in Berlin, summer time
    must(desk.book->history().perform(addSet(desk.temp.line(), desk.clock.today(), workSet("40", 8))));
    must(desk.book->history().perform(changeSet(desk.onlySet(), workSet("40", 9), desk.clock)));
    desk.clock.set("2026-10-25T01:30:00Z");  // 02:30 in Berlin once more
    must(desk.book->history().perform(changeSet(desk.onlySet(), workSet("40", 10), desk.clock)));
    EXPECT_EQ(desk.replaced(), (QStringList{QStringLiteral("2026-10-25T00:30:00Z reps 8"),
                                            QStringLiteral("2026-10-25T01:30:00Z reps 9")}));
    EXPECT_EQ(must(desk.book->database().integer("SELECT count(*) FROM session")), 1);
}

TEST(SessionPastMidnight, StaysOnTheDayOfItsSheet)
{
    Desk desk("2026-03-02T22:50:00Z");  // ten to midnight in Berlin
    const QDate sheet = desk.clock.today();
    SetEntry set = workSet("40", 8);
    must(desk.book->history().perform(addSet(desk.temp.line(), sheet, set)));
    desk.clock.set("2026-03-02T23:10:00Z");
    ASSERT_EQ(desk.clock.today(), sheet.addDays(1));
    set.number = 2;
    must(desk.book->history().perform(addSet(desk.temp.line(), sheet, set)));
    EXPECT_EQ(must(desk.book->database().integer("SELECT count(*) FROM session WHERE date = '2026-03-02'")), 1);
    EXPECT_EQ(must(desk.book->database().integer("SELECT count(*) FROM session")), 1);
}

TEST(AnotherTimeZone, ReadsAndWritesTheSameDaysAndStamps)
{
    Desk desk("2026-10-25T00:30:00Z");
    must(desk.book->history().perform(addSet(desk.temp.line(), QDate(2026, 10, 25), workSet("40", 8))));
    must(desk.book->history().perform(changeSet(desk.onlySet(), workSet("40", 9), desk.clock)));
    const QByteArray here = must(dumpContent(desk.book->database()));
    desk.book.reset();
    for (const char* zone : {"Europe/Berlin", "Pacific/Kiritimati", "America/Los_Angeles", "Asia/Kathmandu"}) {
        KeyingProcess there;
        there.setTimeZone(QString::fromLatin1(zone));
        there.start({QStringLiteral("dump"), desk.temp.path()});
        there.finish();
        EXPECT_EQ(there.output(), here + '\n') << zone;
    }
}

}  // namespace
}  // namespace steelyard
