#include "ui/pages/lifter/trial_form.h"

#include "core/care/health_consent.h"
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/trials/arm_differences.h"
#include "tests/support/trial_page_book.h"
#include "ui/charts/panels_chart.h"
#include "ui/charts/trial_calendar.h"
#include "ui/pages/lifter/trial_draft.h"
#include "ui/pages/lifter/trial_preview.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSpinBox>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using testing_support::must;
using testing_support::TrialPageBook;

struct TrialFormCase : TrialPageBook {
    void openForm()
    {
        openTrials();
        perform("lifter.trial.new");
        ASSERT_TRUE(view().isDesigning());
    }
    template <class Field>
    [[nodiscard]] Field& field(const QString& name) const
    {
        for (auto* one : form().findChildren<Field*>())
            if (one->accessibleName() == name && one->isVisibleTo(&form())) return *one;
        qFatal("no field %s", qPrintable(name));
    }
    [[nodiscard]] const Trial& made() const { return form().proposed()->trial; }
    [[nodiscard]] QByteArray content() const { return must(dumpContent(club.book->database())); }
    // By Tab, as somebody without a mouse gets there.
    void tabTo(const QWidget& wanted)
    {
        for (int i = 0; i < 80 && !wanted.hasFocus(); ++i) press(Qt::Key_Tab);
        ASSERT_TRUE(wanted.hasFocus());
    }
};

TEST(TrialForm, IsFilledInSoThatOneKeyStartsAFairTrial)
{
    TrialFormCase c;
    c.openForm();
    ASSERT_TRUE(c.form().proposed()) << qPrintable(c.form().proposed().error().what);
    EXPECT_EQ(c.made().factor, TrialFactor::Grip);
    ASSERT_EQ(c.made().arms.size(), 2U);
    EXPECT_EQ(c.made().arms[0].grip, c.plain.grip);
    EXPECT_NE(c.made().arms[1].grip, c.plain.grip);
    EXPECT_EQ(c.made().arms[1].variant, c.plain.variant);
    EXPECT_FALSE(c.made().question.isEmpty());
    EXPECT_EQ(c.made().outcomes, defaultOutcomes());
    EXPECT_TRUE(c.says(QStringLiteral("Pinned, the same in every arm")));
    const QByteArray before = c.content();
    c.press(Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    EXPECT_FALSE(c.view().isDesigning());
    ASSERT_EQ(must(c.club.book->trials().of(*c.club.athlete)).size(), 1U);
    EXPECT_EQ(c.stored().value.days.size(), 14U) << "six blocks of two, and one of each to get used to it";
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_EQ(c.content(), before) << "one step";
}

TEST(TrialForm, HasNoLimitOfDiscomfortForWhoDidNotAgreeToBeAsked)
{
    for (const bool agreed : {true, false}) {
        TrialFormCase c;
        if (!agreed) (void)must(withdrawHealthConsent(*c.club.book, *c.club.athlete));
        c.openForm();
        const auto fields = c.form().findChildren<QSpinBox*>();
        EXPECT_EQ(std::ranges::any_of(fields,
                                      [&](const QSpinBox* one) {
                                          return one->accessibleName() == QStringLiteral("Discomfort limit, of 10")
                                                 && one->isVisibleTo(&c.form());
                                      }),
                  agreed);
        EXPECT_EQ(c.says(QStringLiteral("Discomfort isn’t asked")), !agreed);
    }
}

TEST(TrialForm, EscapeLeavesTheBookAlone)
{
    TrialFormCase c;
    c.openForm();
    const QByteArray before = c.content();
    c.press(Qt::Key_Tab);
    c.press(Qt::Key_Escape);
    EXPECT_FALSE(c.view().isDesigning());
    EXPECT_TRUE(c.view().isVisible()) << "back to the trials, not to the chart";
    EXPECT_EQ(c.content(), before);
}

TEST(TrialForm, IsFilledInByKeysAlone)
{
    TrialFormCase c;
    c.openForm();
    QTest::keyClicks(c.page->focusWidget(), QStringLiteral("Which band does more?"));
    auto& factor = c.field<QComboBox>(QStringLiteral("What the arms differ in"));
    c.tabTo(factor);
    for (int i = 0; i < static_cast<int>(TrialFactor::RepBand); ++i) c.press(Qt::Key_Down);
    auto& second = c.field<QLineEdit>(QStringLiteral("Arm B"));
    c.tabTo(second);
    QTest::keyClick(&second, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(&second, QStringLiteral("15-20"));
    auto& blocks = c.field<QSpinBox>(QStringLiteral("Blocks, each with every arm once"));
    c.tabTo(blocks);
    c.press(Qt::Key_Up);
    c.press(Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    const Trial trial = c.stored().value;
    EXPECT_EQ(trial.question, QStringLiteral("Which band does more?"));
    EXPECT_EQ(trial.factor, TrialFactor::RepBand);
    EXPECT_EQ(trial.arms[1].band, (RepBand{15, 20}));
    EXPECT_EQ(trial.arms[0].grip, trial.arms[1].grip);
    EXPECT_EQ(trial.blocks, 7);
}

TEST(TrialForm, RefusesArmsThatDoNotDifferAndSaysSoInPlace)
{
    TrialFormCase c;
    c.openForm();
    auto& second = c.field<QComboBox>(QStringLiteral("Arm B"));
    second.setCurrentIndex(c.field<QComboBox>(QStringLiteral("Arm A")).currentIndex());
    EXPECT_FALSE(c.form().proposed());
    EXPECT_TRUE(c.says(c.form().proposed().error().what));
    const QByteArray before = c.content();
    c.press(Qt::Key_Return);
    EXPECT_TRUE(c.view().isDesigning());
    EXPECT_EQ(c.content(), before);
}

TEST(TrialForm, WantsAReasonWhereArmsDifferInTwoThings)
{
    TrialFormCase c;
    auto tx = must(Transaction::begin(c.club.book->database()));
    const LibraryRepository library(c.club.book->database());
    Variant other = must(library.read()).find(c.plain.variant)->value;
    other.name = QStringLiteral("cable, seated");
    other.implement = Implement::Cable;
    other.position = QStringLiteral("seated");
    other.isDefault = false;
    const auto id = must(library.insert(tx, other));
    (void)must(library.insert(tx, RepStandard{id, {}, QStringLiteral("strict")}));
    ASSERT_TRUE(tx.commit());
    c.openForm();
    c.field<QComboBox>(QStringLiteral("What the arms differ in"))
        .setCurrentIndex(static_cast<int>(TrialFactor::Implement));
    EXPECT_FALSE(c.form().proposed());
    auto& reason = c.field<QLineEdit>(QStringLiteral("Reason"));
    reason.setText(QStringLiteral("the cable stands where there is no bench"));
    EXPECT_TRUE(c.form().proposed()) << qPrintable(c.form().proposed() ? QString() : c.form().proposed().error().what);
}

TEST(TrialForm, DrawsAgainFromAnotherNumberAndTheSameNumberDrawsTheSame)
{
    TrialFormCase c;
    c.openForm();
    const Trial first = c.made();
    for (auto* button : c.form().findChildren<QPushButton*>())
        if (QString(button->text()).remove(u'&') == QStringLiteral("Draw again")) button->click();
    EXPECT_NE(c.made().seed, first.seed);
    EXPECT_TRUE(c.says(QString::number(c.made().seed)));
    Trial again = c.made();
    again.days =
        must(drawDays(again, {.from = c.club.clock.today().addDays(1), .weekdays = c.form().proposed()->weekdays}));
    EXPECT_EQ(again.days, c.made().days);
}

TEST(TrialForm, ShowsThePowerOfThePlannedBlocksAndTheSessionsOnTheCalendar)
{
    TrialFormCase c;
    c.openForm();
    auto* preview = c.form().findChild<TrialPreview*>();
    EXPECT_EQ(preview->calendar()->cells().size(), c.made().days.size());
    const QString before = preview->power()->spec().summary;
    c.field<QSpinBox>(QStringLiteral("Blocks, each with every arm once")).setValue(16);
    EXPECT_NE(preview->power()->spec().summary, before);
    EXPECT_TRUE(c.says(QStringLiteral("of 10 such trials")));
    EXPECT_EQ(preview->calendar()->cells().size(), 34U);
}

TEST(TrialForm, PutsTheSessionsIntoTheBlockInTheSameStep)
{
    TrialFormCase c;
    Block block{*c.club.athlete, QStringLiteral("Winter"), {}, QDate(2026, 11, 16), {}};
    block.weeks.resize(8);
    for (std::size_t week = 0; week < 8; ++week)
        for (const int weekday : {0, 3}) {
            Slot slot{c.plain.variant, c.plain.grip, c.plain.standard};
            slot.sets = 4;
            block.weeks[week].days.push_back(
                {block.start.addDays(static_cast<qint64>(week) * 7 + weekday), {}, {slot}});
        }
    (void)must(c.club.book->history().perform(addBlock(block)));
    c.openForm();
    EXPECT_EQ(c.made().sets, 4) << "as planned";
    EXPECT_TRUE(c.says(QStringLiteral("place in the block")));
    c.press(Qt::Key_Return);
    ASSERT_TRUE(c.settled());
    const Block after = must(c.club.book->blocks().of(*c.club.athlete)).front().value;
    int neutral = 0;
    for (const PlannedWeek& week : after.weeks)
        for (const PlannedDay& day : week.days)
            for (const Slot& slot : day.slotList) neutral += slot.grip == c.stored().value.arms[1].grip ? 1 : 0;
    EXPECT_EQ(neutral, 7);
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_EQ(must(c.club.book->blocks().of(*c.club.athlete)).front().value, block);
}

TEST(TrialDraft, AsksForTheFactorThatTheFlagIsAbout)
{
    EXPECT_EQ(factorOfRule(u"rep_band_misfit"), TrialFactor::RepBand);
    EXPECT_EQ(factorOfRule(u"wrong_limiter"), TrialFactor::Grip);
    EXPECT_EQ(factorOfRule({}), TrialFactor::Grip);
}

TEST(TrialDraft, HoldsTheWayTheLifterKnowsAgainstTheUsualOne)
{
    TrialPageBook c;
    auto tx = must(Transaction::begin(c.club.book->database()));
    const LibraryRepository library(c.club.book->database());
    (void)must(library.insert(tx, Grip{QStringLiteral("a first by name"), HandOrientation::Pronated, {}, {}}));
    ASSERT_TRUE(tx.commit());
    c.club.addSession(c.neutral, QDate(2026, 11, 2), 3);
    const auto record = must(readTrials(c.club.book->database(), *c.club.athlete, c.club.clock.today()));
    const Trial trial = draftTrial(record, c.plain, TrialFactor::Grip, c.club.clock.today(), 5);
    EXPECT_EQ(trial.arms[1].grip, c.neutral.grip);
    EXPECT_TRUE(refusalOf(trial, record.library).isEmpty());
}

TEST(TrialDraft, OffersNoRepBandsOrSecondsBecauseTheyAreTyped)
{
    TrialPageBook c;
    const auto record = must(readTrials(c.club.book->database(), *c.club.athlete, c.club.clock.today()));
    for (const TrialFactor factor : {TrialFactor::RepBand, TrialFactor::Lowering}) {
        EXPECT_TRUE(armsToChoose(record, c.arm(c.plain), factor).empty());
        const Trial trial = draftTrial(record, c.plain, factor, c.club.clock.today(), 5);
        EXPECT_TRUE(refusalOf(trial, record.library).isEmpty()) << qPrintable(refusalOf(trial, record.library));
    }
}

}  // namespace
}  // namespace steelyard
