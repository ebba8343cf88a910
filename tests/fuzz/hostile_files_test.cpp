// Files that are made to take all memory there is: reading one takes at most four times its size.
#include "core/exchange/logbook_csv.h"
#include "core/exchange/logbook_guess.h"
#include "core/exchange/logbook_reader.h"
#include "tests/fuzz/peak_memory.h"

#include <gtest/gtest.h>

namespace steelyard::test {
namespace {

const QByteArray kHeader = "date,athlete,exercise,reps\n";
constexpr qsizetype kMany = 8'000'000;  // so that what a reader of any file holds is little beside it

QByteArray rowsWithNumbers(const char* form)
{
    QByteArray file = kHeader;
    for (int i = 0; file.size() < kMany; ++i) file += QByteArray(form).replace("%1", QByteArray::number(i));
    return file;
}

struct Hostile {
    const char* name;
    QByteArray (*make)();
};

class HostileFile : public testing::TestWithParam<Hostile> {};

// Reads row by row, as an import does; gives how many rows there were until the end or a refusal.
qsizetype rowsOf(const QByteArray& file, const LogbookMapping& mapping)
{
    const auto reader = LogbookReader::open(file, mapping, QDate(2026, 3, 2));
    if (!reader) {
        EXPECT_EQ(reader.error().code, ErrorCode::Invalid);
        return 0;
    }
    for (qsizetype rows = 0;; ++rows) {
        const auto more = (*reader)->next();
        if (!more) {
            EXPECT_EQ(more.error().code, ErrorCode::Invalid);
            return rows;
        }
        if (!*more) return rows;
    }
}

TEST_P(HostileFile, TakesAtMostFourTimesItsSize)
{
    const QByteArray file = GetParam().make();
    ASSERT_GE(file.size(), kMany);
    const PeakMemory peak;
    const LogbookMapping guessed = guessMapping(file);
    EXPECT_LE(rowsOf(file, LogbookMapping{}), kMany);
    EXPECT_LE(rowsOf(file, guessed), kMany);
    EXPECT_LT(peak.bytes(), 4 * static_cast<std::size_t>(file.size()));
    RecordProperty("times_its_size",
                   std::to_string(static_cast<double>(peak.bytes()) / static_cast<double>(file.size())));
}

// Read as a whole, a file is held with all its rows, which take many times the room of their text. Nothing else may.
class HostileFileWithoutRows : public HostileFile {};

TEST_P(HostileFileWithoutRows, TakesAtMostFourTimesItsSizeAsAWholeToo)
{
    const QByteArray file = GetParam().make();
    const PeakMemory peak;
    const auto parsed = parseLogbook(file, {}, QDate(2026, 3, 2), Progress());
    EXPECT_LE(parsed ? parsed->rows.size() : 0U, 1U);
    EXPECT_LT(peak.bytes(), 4 * static_cast<std::size_t>(file.size()));
}

const Hostile kWithoutRows[] = {
    {"OneQuotedField", [] { return kHeader + '"' + QByteArray(kMany, 'x') + "\",b,c,8\n"; }},
    {"AQuotationNeverClosed", [] { return kHeader + "2026-03-01,Ada,Row,\"" + QByteArray(kMany, '\n'); }},
    {"OnePlainField", [] { return kHeader + QByteArray(kMany, 'x') + ",b,c,8\n"; }},
    {"ManySeparatorsInALine", [] { return kHeader + QByteArray(kMany, ',') + '\n'; }},
    {"ManySeparatorsInTheHeader", [] { return QByteArray(kMany, ',') + '\n'; }},
    {"ManyTabsInTheHeader", [] { return QByteArray(kMany, '\t') + '\n'; }},
    {"ManyEmptyLines", [] { return kHeader + QByteArray(kMany, '\n'); }},
    {"ManyEmptyLinesBeforeTheHeader", [] { return QByteArray(kMany, '\n') + kHeader; }},
    {"ManyLineEndsOfTheOldKind", [] { return kHeader + QByteArray(kMany, '\r'); }},
};

const Hostile kOfRows[] = {
    {"ManyShortRowsThatAreBad", [] { return kHeader + QByteArray("x,,,\n").repeated(kMany / 5); }},
    {"ALifterInEveryRow", [] { return rowsWithNumbers("2026-03-01,L%1,Row,8\n"); }},
    {"AnExerciseInEveryRow", [] { return rowsWithNumbers("2026-03-01,Ada,E%1,8\n"); }},
};

constexpr auto kNameOf = [](const auto& test) { return std::string(test.param.name); };
INSTANTIATE_TEST_SUITE_P(WithoutRows, HostileFile, testing::ValuesIn(kWithoutRows), kNameOf);
INSTANTIATE_TEST_SUITE_P(OfRows, HostileFile, testing::ValuesIn(kOfRows), kNameOf);
INSTANTIATE_TEST_SUITE_P(All, HostileFileWithoutRows, testing::ValuesIn(kWithoutRows), kNameOf);

TEST(PeakMemory, CountsWhatIsHeldAtOnce)
{
    const PeakMemory peak;
    for (int i = 0; i < 3; ++i) {
        const QByteArray block(1'000'000, 'x');
        ASSERT_EQ(block.back(), 'x');
    }
    EXPECT_GE(peak.bytes(), 1'000'000U);
    EXPECT_LT(peak.bytes(), 1'500'000U);
}

}  // namespace
}  // namespace steelyard::test
