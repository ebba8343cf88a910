#include "ui/print/trial_layout.h"

#include "tests/support/temp_dir.h"
#include "ui/print/fonts.h"
#include "ui/print/pdf_writer.h"
#include "ui/print/text_measure.h"

#include <QtCore/QFile>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kMonday(2027, 3, 1);

struct MadeResult {
    Trial trial{.athlete = Id<Athlete>(1)};
    TrialAnalysis analysis;

    explicit MadeResult(std::size_t arms = 2, int blocks = 6, int runIn = 1)
    {
        trial.question = QStringLiteral("Arm curl: supinated or neutral?");
        for (std::size_t arm = 0; arm < arms; ++arm) {
            trial.arms.push_back({.variant = Id<Variant>(1), .grip = Id<Grip>(1), .standard = Id<RepStandard>(1)});
            analysis.armNames.push_back(QStringLiteral("grip %1").arg(arm));
        }
        OutcomeEffects answer;
        int at = 0;
        for (int block = 1 - runIn; block <= blocks; ++block)
            for (std::size_t arm = 0; arm < arms; ++arm, ++at) {
                const QDate date = kMonday.addDays(at);
                trial.days.push_back({.date = date, .block = std::max(0, block), .arm = arm});
                if (at % 5 != 4)
                    analysis.record.observations.push_back({.day = static_cast<std::size_t>(at),
                                                            .date = date,
                                                            .block = std::max(0, block),
                                                            .drawn = arm,
                                                            .done = arm});
            }
        for (std::size_t arm = 0; arm < arms; ++arm)
            answer.arms.push_back({.sessions = 6, .mean = 6, .level = 6, .low90 = 5, .high90 = 7});
        analysis.verdict.done.answer = answer;
        analysis.verdict.word = TrialWord::Prefer;
        analysis.verdict.forLifter = QStringLiteral("The neutral grip suits you better.");
        trial.ending = TrialEnding{.date = kMonday.addDays(at), .kind = TrialEnd::Concluded, .choice = 1};
    }
    void hurt()
    {
        analysis.standing.out.push_back(
            {.arm = 1, .since = kMonday, .sessionsRunning = true, .rating = 5, .joint = Joint::Elbow});
    }
    void speakForEver()
    {
        const QString endless = QStringLiteral("Wolkenkratzerunterhaltung ").repeated(40);
        trial.question = endless;
        for (QString& name : analysis.armNames) name = endless;
        trial.ending->choice.reset();
        trial.ending->reason = endless;
        for (int i = 0; i < 9; ++i)
            analysis.verdict.deviations.push_back(QStringLiteral("%1 sessions were missed.").arg(i));
        analysis.verdict.looks = QStringLiteral("Somebody looked at the results after 4, 6, 8 and 10 sessions.");
    }
};

class TrialPapers : public testing::TestWithParam<PaperSize> {
protected:
    void SetUp() override { ASSERT_TRUE(loadBundledFonts()); }
    [[nodiscard]] SheetLayout lay(const MadeResult& made, const QString& name = QStringLiteral("Dana Quill")) const
    {
        return layOutTrial({name, made.trial, made.analysis, kMonday.addDays(60)}, GetParam());
    }
    [[nodiscard]] static QString wordsOf(const SheetLayout& layout)
    {
        QStringList words;
        for (const TextItem& item : layout.pages.at(0).texts) words << item.text;
        return words.join(u' ');
    }
    static void expectWhole(const SheetLayout& layout)
    {
        ASSERT_EQ(layout.pages.size(), 1U);
        const QRectF room(kSideMargin - 0.01, kClipMargin - 0.01, layout.paper.width() - 2 * kSideMargin + 0.02,
                          layout.paper.height() - kClipMargin - kBottomMargin + 0.02);
        const SheetPage& page = layout.pages[0];
        for (const TextItem& item : page.texts) {
            EXPECT_TRUE(room.contains(item.cell))
                << qPrintable(item.text) << item.cell.top() << " " << item.cell.bottom();
            EXPECT_LE(textWidthMm(item.text, item.points, item.bold), item.cell.width() + 0.05)
                << qPrintable(item.text);
            EXPECT_GE(item.points, kSmallestPoints);
        }
        for (const BoxItem& box : page.boxes) {
            EXPECT_TRUE(room.contains(box.rect));
            EXPECT_LE(box.grey, kDarkestGrey);
        }
    }
};

TEST_P(TrialPapers, PutTheResultOnOnePageInPlainWords)
{
    const MadeResult made;
    const SheetLayout layout = lay(made);
    expectWhole(layout);
    const QString words = wordsOf(layout);
    EXPECT_TRUE(words.contains(QStringLiteral("Dana Quill")));
    EXPECT_TRUE(words.contains(QStringLiteral("The neutral grip suits you better.")));
    EXPECT_TRUE(words.contains(QStringLiteral("goes on with B (grip 1)")));
    EXPECT_FALSE(words.contains(QStringLiteral("licensed"))) << "nothing hurt";
    EXPECT_EQ(std::ranges::count_if(
                  layout.pages[0].texts,
                  [](const TextItem& item) { return item.text.size() == 1 && item.side == TextSide::Centre; }),
              14 + 2)
        << "a letter a session; the other two marks of the scale are one digit wide";
}

TEST_P(TrialPapers, PutTheCautionFirstWhereAnArmHurt)
{
    MadeResult made;
    made.hurt();
    const SheetLayout layout = lay(made);
    expectWhole(layout);
    double caution = 0;
    double answer = 0;
    for (const TextItem& item : layout.pages[0].texts) {
        if (item.text.contains(QStringLiteral("out for discomfort"))) caution = item.cell.top();
        if (item.text.contains(QStringLiteral("suits you better"))) answer = item.cell.top();
    }
    EXPECT_GT(caution, 0);
    EXPECT_LT(caution, answer);
    EXPECT_TRUE(wordsOf(layout).contains(QStringLiteral("licensed")));
}

TEST_P(TrialPapers, HoldTheLongestTrialAndWordsWithoutEndOnOnePage)
{
    MadeResult made(4, 24, 2);
    made.speakForEver();
    made.hurt();
    expectWhole(lay(made, QString(200, u'W')));
}

TEST_P(TrialPapers, SayThatARunningTrialStillRuns)
{
    MadeResult made;
    made.trial.ending.reset();
    EXPECT_TRUE(wordsOf(lay(made)).contains(QStringLiteral("The trial still runs")));
}

TEST_P(TrialPapers, BecomeAPdfWithItsType)
{
    const testing_support::TempDir dir;
    const MadeResult made;
    const QString path = dir.path(u"result.pdf");
    ASSERT_TRUE(writePagesPdf(lay(made).pages, GetParam(), QStringLiteral("Result"), path));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().contains("/FontFile"));
}

INSTANTIATE_TEST_SUITE_P(Papers, TrialPapers, testing::Values(PaperSize::A4, PaperSize::Letter));

}  // namespace
}  // namespace steelyard
