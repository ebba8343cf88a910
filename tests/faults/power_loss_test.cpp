// The power goes: of what was written since the last sync any part may have arrived, in any order. A killed program doesn't show this,
// for what it wrote is in the system's hands.
#include "tests/faults/fault_length.h"
#include "tests/faults/fault_vfs.h"
#include "tests/faults/keying.h"
#include "tests/support/temp_book.h"

#include <iostream>

namespace steelyard::test {
namespace {

struct Loss {
    int acknowledged;  // when the power went
    std::unique_ptr<QTemporaryDir> folder;
};

struct Tally {
    int images = 0;
    int inTheMiddle = 0;  // in which not all of the work has arrived
    int withoutAcknowledged = 0;
    std::vector<std::string> broken;
};

class PowerLoss {
public:
    explicit PowerLoss(unsigned seed) : m_random(seed) {}

    // Types sets into a new book, whose journal is put into the book all the time, and loses power at moments between.
    void run(const QByteArray& synchronous, Tally& tally)
    {
        TempBook book;
        book.close();
        m_losses.clear();
        m_acknowledged = 0;
        FaultVfs& disk = FaultVfs::installed();
        disk.record([&] { maybeLosePower(); });
        for (int opening = 0; opening < 2; ++opening) {
            const auto opened = must(Book::open(book.path(), book.clock()));
            must(opened->database().execute(
                ("PRAGMA wal_autocheckpoint = 12; PRAGMA synchronous = " + synchronous).constData()));
            const LiftLine line = must(onlyLine(*opened));
            for (int n = 0; n < 12; ++n) {
                must(typeSet(*opened, line, m_acknowledged + 1));
                ++m_acknowledged;
            }
        }
        disk.record({});
        for (const Loss& loss : m_losses) judge(loss, book.clock(), tally);
    }

private:
    void maybeLosePower()
    {
        if (std::uniform_int_distribution<int>(0, 9)(m_random) != 0) return;
        m_losses.push_back({m_acknowledged, std::make_unique<QTemporaryDir>()});
        FaultVfs::installed().afterPowerLoss(m_random, m_losses.back().folder->path());
    }
    void judge(const Loss& loss, const Clock& clock, Tally& tally)
    {
        ++tally.images;
        const QString path = loss.folder->filePath(QStringLiteral("club.steelyard"));
        const auto book = Book::open(path, clock);
        if (!book) {
            tally.broken.push_back("does not open: " + (book.error().what + book.error().detail).toStdString());
            return;
        }
        const int there = countSets(**book).value_or(-1);
        tally.inTheMiddle += there < m_acknowledged ? 1 : 0;
        tally.withoutAcknowledged += there < loss.acknowledged ? 1 : 0;
        if (there > loss.acknowledged + 1) tally.broken.push_back("more than was typed");
        if (std::string difference = differenceFromTyped(**book, there); !difference.empty())
            tally.broken.push_back(std::move(difference));
    }

    std::mt19937 m_random;
    std::vector<Loss> m_losses;
    int m_acknowledged = 0;
};

Tally losePower(int images, const QByteArray& synchronous)
{
    Tally tally;
    for (unsigned seed = 1; tally.images < images; ++seed) PowerLoss(seed).run(synchronous, tally);
    std::cout << tally.images << " losses of power, " << tally.inTheMiddle << " in the middle of the work, "
              << tally.withoutAcknowledged << " lost something acknowledged, " << tally.broken.size()
              << " broke the book\n";
    return tally;
}

TEST(LossOfPower, LeavesEveryAcknowledgedSetAndNoHalfOne)
{
    const int images = faultsAreLong() ? 5000 : 300;
    const Tally tally = losePower(images, "FULL");
    EXPECT_GE(tally.images, images);
    EXPECT_GT(tally.inTheMiddle, images / 2);
    EXPECT_EQ(tally.withoutAcknowledged, 0);
    EXPECT_EQ(tally.broken, std::vector<std::string>());
}

// That the test above can fail: a book that doesn't wait for its disk.
TEST(LossOfPower, TakesSetsFromABookThatDoesNotWaitForTheDisk)
{
    const Tally tally = losePower(100, "OFF");
    EXPECT_GT(tally.withoutAcknowledged, 10);
    EXPECT_FALSE(tally.broken.empty());
}

}  // namespace
}  // namespace steelyard::test
