// Books whose bytes were changed at random: flipped bits, pages of zeros, pages in another's place, an end cut off. Whatever they have
// become, opening and checking them and saving what can be saved never ends the program, and never hands out a book that isn't sound.
// Sixty of them; two thousand with STEELYARD_FAULTS=long.
#include "core/book/verify.h"
#include "core/care/salvage.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "tests/faults/fault_length.h"
#include "tests/support/temp_book.h"

#include <QtCore/QFile>

#include <iostream>
#include <random>

namespace steelyard::test {
namespace {

constexpr qsizetype kPage = 4096;

class Mutation {
public:
    explicit Mutation(unsigned seed) : m_random(seed) {}

    QByteArray of(QByteArray book)
    {
        const int changes = between(1, 6);
        for (int i = 0; i < changes; ++i) change(book);
        return book;
    }

private:
    int between(int low, int high) { return std::uniform_int_distribution<int>(low, high)(m_random); }
    void change(QByteArray& book)
    {
        const auto pages = static_cast<int>(book.size() / kPage);
        const qsizetype page = pages > 1 ? between(0, pages - 1) * kPage : 0;
        switch (between(0, 6)) {
        case 0:
            flip(book, between(0, static_cast<int>(book.size()) - 1));
            break;
        case 1:
            flip(book, between(0, 99));
            break;
        case 2:
            book.replace(page, kPage, QByteArray(kPage, '\0'));
            break;
        case 3:
            book.replace(page, kPage, book.mid((pages > 1 ? between(0, pages - 1) : 0) * kPage, kPage));
            break;
        case 4:
            // The beginning of a page says where its rows stand.
            for (int i = 0; i < 8; ++i) flip(book, page + between(0, 40));
            break;
        case 5:
            for (int i = 0; i < 200; ++i) flip(book, page + between(0, kPage - 1));
            break;
        default:
            if (between(0, 3) == 0) book.truncate(between(200, static_cast<int>(book.size())));
        }
    }
    void flip(QByteArray& book, qsizetype at)
    {
        if (at < book.size()) book[at] = static_cast<char>(book[at] ^ (1 << between(0, 7)));
    }
    std::mt19937 m_random;
};

struct Outcome {
    int opened = 0;
    int sound = 0;
    int saved = 0;
    int savedWhole = 0;
};

TEST(MutatedBooks, NeverEndTheProgramAndAreSavedAsSoundBooksOrRefused)
{
    TempBook base;
    {
        const auto book = must(newBook(base.file(QStringLiteral("base.steelyard")), base.clock()));
        must(fillSampleClub(*book, {.athletes = 3, .years = 1, .lastDay = base.clock().today()}, {}));
    }
    const QByteArray whole = fileBytes(base.file(QStringLiteral("base.steelyard")));
    Outcome outcome;
    const unsigned books = faultsAreLong() ? 2000 : 200;
    for (unsigned seed = 1; seed <= books; ++seed) {
        const QTemporaryDir folder;
        const QString path = folder.filePath(QStringLiteral("club.steelyard"));
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        const QByteArray bytes = Mutation(seed).of(whole);
        file.write(bytes);
        file.close();
        const QString to = folder.filePath(QStringLiteral("saved.steelyard"));
        if (const auto report = salvageBook(path, to, {})) {
            ++outcome.saved;
            outcome.savedWhole += report->anythingLost() ? 0 : 1;
            const auto saved = Book::open(to, base.clock());
            ASSERT_TRUE(saved) << "seed " << seed << ' ' << qPrintable(saved.error().what + saved.error().detail);
            for (const QString& finding : must(verifyBook((*saved)->database(), {})).findings)
                EXPECT_FALSE(finding.startsWith(u"File") || finding.startsWith(u"Table")
                             || finding.startsWith(u"Schema"))
                    << "seed " << seed << ' ' << qPrintable(finding);
        } else {
            EXPECT_NE(report.error().code, ErrorCode::Cancelled) << "seed " << seed;
        }
        ASSERT_EQ(fileBytes(path), bytes) << "seed " << seed;
        const auto opened = Book::open(path, base.clock());
        if (!opened) continue;
        ++outcome.opened;
        const auto verified = verifyBook((*opened)->database(), {});
        outcome.sound += verified && verified->findings.isEmpty() ? 1 : 0;
    }
    std::cout << books << " mutated books: " << outcome.opened << " opened, " << outcome.sound << " of them sound; "
              << outcome.saved << " could be saved, " << outcome.savedWhole << " with everything\n";
    EXPECT_GT(outcome.saved, static_cast<int>(books / 2));
    EXPECT_LT(outcome.sound, static_cast<int>(books / 2)) << "most mutations do harm";
}

}  // namespace
}  // namespace steelyard::test
