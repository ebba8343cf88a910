// Files as people keep them, of our own making (tests/data/ugly): guessed, then read; each comes in right, or is refused with
// its row, its column and what to do.
#include "core/exchange/logbook_csv.h"
#include "core/exchange/logbook_guess.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::fileBytes;
using test::must;

const QDate kUglyDay(2026, 3, 2);

// Everything of a set that these files say: day, who, what, load and repetitions, effort, off, note.
std::string inWords(const LogbookRow& row)
{
    const SetEntry& set = row.set;
    QString text = QStringLiteral("%1 %2 / %3 / ").arg(row.date.toString(Qt::ISODate), row.athlete, row.exercise);
    text += set.load.amount().toString() + (row.unitGiven ? toText(set.load.unit()) : QString());
    text += QStringLiteral(" x %1").arg(set.reps);
    if (set.off) text += QStringLiteral(" off %1").arg(*set.off);
    if (set.failed) text += QStringLiteral(" failed");
    if (set.effort)
        text += (set.effort->scale == Effort::Scale::Rir ? QStringLiteral(" rir ") : QStringLiteral(" rpe "))
                + set.effort->value.toString();
    if (!set.note.isEmpty()) text += QStringLiteral(" // ") + set.note;
    return text.toStdString();
}

struct UglyFile {
    const char* name;
    std::vector<std::string> sets;      // that come in
    std::vector<std::string> problems;  // each with row, column and remedy
    std::string refusal = {};           // of the file as a whole
};

std::ostream& operator<<(std::ostream& out, const UglyFile& file)
{
    return out << file.name;
}

QByteArray uglyBytes(const char* name)
{
    return fileBytes(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/ugly/") + QString::fromLatin1(name));
}

class UglyFiles : public testing::TestWithParam<UglyFile> {};

TEST_P(UglyFiles, ComeInAsTheyWereMeantOrSayWhatToDo)
{
    const QByteArray bytes = uglyBytes(GetParam().name);
    const LogbookGuess guess = guessLogbook(bytes, {}, kUglyDay);
    const auto log = parseLogbook(bytes, guess.mapping, kUglyDay, Progress());
    if (!log) {
        EXPECT_EQ(log.error().what.toStdString(), GetParam().refusal);
        return;
    }
    EXPECT_EQ(GetParam().refusal, std::string());
    std::vector<std::string> sets;
    for (const LogbookRow& row : log->rows) sets.push_back(inWords(row));
    EXPECT_EQ(sets, GetParam().sets);
    std::vector<std::string> problems;
    for (const RowProblem& problem : log->problems) problems.push_back(toText(problem).toStdString());
    EXPECT_EQ(problems, GetParam().problems);
}

INSTANTIATE_TEST_SUITE_P(
    RealLife, UglyFiles,
    testing::Values(
        UglyFile{"semicolon_decimal_comma_cp1252.csv",
                 {"2026-02-03 Jürgen Kerbe / Bizepscurl / 42.5kg x 10 rir 2 // Ellbogen „müde“",
                  "2026-02-03 Jürgen Kerbe / Bizepscurl / 42.5kg x 9 rir 1.5",
                  "2026-02-25 Jürgen Kerbe / Bankdrücken / 80kg x 8 rir 2 // 5 € für Magnesia"},
                 {}},
        UglyFile{"unicode_text_with_tabs.txt",
                 {"2026-02-03 Žaneta Páka / Row / 50 x 12 rpe 8", "2026-02-03 Žaneta Páka / Row / 52.5 x 10 rpe 8.5"},
                 {}},
        UglyFile{"line_breaks_in_quotations.csv",
                 {"2026-02-03 Ada Fulcrum / Row, one arm / 30 x 12 // left first\nthen right, \"slow\"",
                  "2026-02-03 Ada Fulcrum / Row, one arm / 30 x 11", "2026-02-05 Ada Fulcrum / Dip / 0 x 9 // a\nb"},
                 {}},
        UglyFile{
            "american_dates_and_pounds.csv",
            {"2026-02-03 Basil Notch / Back squat / 225lb x 5", "2026-02-13 Basil Notch / Back squat / 227.5lb x 5",
             "2026-02-20 Basil Notch / Back squat / 230lb x 4"},
            {}},
        UglyFile{"kilograms_and_pounds_mixed.csv",
                 {"2026-02-03 Ada Fulcrum / Arm curl / 95lb x 8", "2026-02-03 Ada Fulcrum / Arm curl / 42.5kg x 8",
                  "2026-02-03 Ada Fulcrum / Pull-up / 0 x 6", "2026-02-03 Ada Fulcrum / Arm curl / 90lb x 10"},
                 {}},
        UglyFile{
            "sets_side_by_side.csv",
            {"2026-02-03 Ada Fulcrum / Arm curl / 42.5kg x 12 // slept badly",
             "2026-02-03 Ada Fulcrum / Arm curl / 42.5kg x 11", "2026-02-03 Ada Fulcrum / Arm curl / 45kg x 8 rpe 9",
             "2026-02-03 Ada Fulcrum / Row / 60kg x 10", "2026-02-03 Ada Fulcrum / Row / 60kg x 9"},
            {}},
        UglyFile{
            "notation_under_a_title_with_totals.csv",
            {"2026-02-03 Ada Fulcrum / Arm curl / 42.5 x 12 off 0",
             "2026-02-03 Ada Fulcrum / Arm curl / 42.5 x 12 off 2", "2026-02-05 Ada Fulcrum / Arm curl / 45 x 10 rpe 8",
             "2026-02-05 Ada Fulcrum / Arm curl / 45 x 9 failed"},
            {}},
        UglyFile{"empty_columns_and_rows.csv",
                 {"2026-02-03 Ada Fulcrum / Dip / 10kg x 8", "2026-02-03 Ada Fulcrum / Dip / 12.5kg x 7"},
                 {}},
        UglyFile{"no_header_with_bars.txt",
                 {"2026-02-03 Ada Fulcrum / Arm curl / 42.5 x 12", "2026-02-03 Ada Fulcrum / Arm curl / 42.5 x 11",
                  "2026-02-17 Basil Notch / Dip / 20 x 8", "2026-02-17 Basil Notch / Arm curl / 40 x 9"},
                 {}},
        UglyFile{
            "headings_that_stand_twice.csv",
            {"2026-02-03 Ada Fulcrum / Arm curl / 40kg x 12 // easy", "2026-02-03 Ada Fulcrum / Arm curl / 42.5kg x 10",
             "2026-02-05 Ada Fulcrum / Arm curl / 42.5kg x 11", "2026-02-05 Ada Fulcrum / Arm curl / 42.5kg x 10"},
            {}},
        UglyFile{"byte_order_mark_tabs_and_times.tsv",
                 {"2026-02-03 Ada Fulcrum / Row / 50.5 x 12", "2026-02-03 Ada Fulcrum / Row / 50.5 x 11 // ágil",
                  "2026-02-05 Ada Fulcrum / Row / 0 x 10"},
                 {}},
        UglyFile{"spelled_numbers_and_dashes.csv",
                 {"2026-02-03 Ada Fulcrum / Arm curl / 40 x 9"},
                 {"line 2, column reps (Reps), “ten”: this is no whole number; write it like 8",
                  "line 4, column date (Date), “Feb 3rd”: this is no date in the order year, month, day; write it like "
                  "2027-03-01",
                  "line 4, column load (Load), “forty”: this is no plain number; write it like 42.5",
                  "line 5, column athlete (Athlete): this can't be blank; write a name"}},
        UglyFile{
            "so_many_sets_of_so_many.csv",
            {"2026-02-03 Ada Fulcrum / Arm curl / 40kg x 10 // even", "2026-02-03 Ada Fulcrum / Arm curl / 40kg x 10",
             "2026-02-03 Ada Fulcrum / Arm curl / 40kg x 10 rpe 8", "2026-02-03 Ada Fulcrum / Dip / 0kg x 8"},
            {}},
        UglyFile{"big_endian_without_a_mark.csv", {"2026-02-03 Ada Fulcrum / Rudern / 50kg x 12"}, {}},
        UglyFile{"quotation_never_closed.csv",
                 {},
                 {},
                 "Line 3: a quotation that begins here is never closed. Add the closing mark."}));

TEST(UglyFile, WithDatesThatReadEitherWayIsSaidToBeSo)
{
    const LogbookGuess either = guessLogbook(uglyBytes("dates_that_read_either_way.csv"), {}, kUglyDay);
    EXPECT_TRUE(either.datesAmbiguous);
    EXPECT_EQ(either.exampleDate, QStringLiteral("02/01/2026"));
    for (const char* sure :
         {"american_dates_and_pounds.csv", "no_header_with_bars.txt", "semicolon_decimal_comma_cp1252.csv"})
        EXPECT_FALSE(guessLogbook(uglyBytes(sure), {}, kUglyDay).datesAmbiguous) << sure;
}

TEST(UglyFile, HasItsRowOfTotalsSetAsideWithAWord)
{
    const QByteArray bytes = uglyBytes("notation_under_a_title_with_totals.csv");
    const auto log = must(parseLogbook(bytes, guessLogbook(bytes, {}, kUglyDay).mapping, kUglyDay, Progress()));
    ASSERT_EQ(log.passedOver.size(), 1U);
    EXPECT_EQ(toText(log.passedOver[0]), QStringLiteral("line 6: a row of totals, passed over"));
    EXPECT_TRUE(log.unknownColumns.isEmpty());
}

TEST(UglyFile, WithoutHeadingsIsReadByWhatStandsInItsColumns)
{
    const LogbookGuess guess = guessLogbook(uglyBytes("no_header_with_bars.txt"), {}, kUglyDay);
    EXPECT_FALSE(guess.mapping.hasHeader);
    EXPECT_EQ(guess.mapping.separator, QChar(u'|'));
    EXPECT_EQ(guess.hints.at(QStringLiteral("reps")), ColumnHint::Content);
    EXPECT_EQ(guess.header, QStringList({QStringLiteral("1"), QStringLiteral("2"), QStringLiteral("3"),
                                         QStringLiteral("4"), QStringLiteral("5")}));
}

}  // namespace
}  // namespace steelyard
