// One lifter's data by keys alone: consent, handing over, erasing, and whose record may no longer be needed.
#include "ui/pages/care/lifter_data_page.h"

#include "core/care/sealed_file.h"
#include "tests/support/scripted_prompter.h"
#include "tests/support/temp_book.h"
#include "tests/support/temp_dir.h"
#include "ui/pages/care/consent_panel.h"
#include "ui/pages/care/unseal_dialog.h"
#include "ui/shell/add_lifter_dialog.h"
#include "ui/shell/book_view.h"
#include "ui/shell/main_window.h"
#include "ui/shell/roster_pane.h"

#include "core/edits/edits.h"

#include <QtCore/QPointer>
#include <QtCore/QSettings>
#include <QtTest/QTest>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSpinBox>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using test::must;

const QString kDana = QStringLiteral("Dana Quill");

class LifterData : public testing::Test {
protected:
    void SetUp() override
    {
        {
            const auto book = must(Book::create(m_path, m_clock));
            for (const QString& name : {QStringLiteral("Bo Marrow"), kDana}) {
                Athlete athlete;
                athlete.name = name;
                if (name == kDana) athlete.consents = {HealthConsent::given(QDate(2024, 1, 1))};
                must(book->history().perform(addAthlete(athlete)));
            }
            const auto bo = must(book->athletes().findByName(QStringLiteral("Bo Marrow")));
            must(book->history().perform(recordBodyMass(bo.id, {QDate(2027, 1, 1), *Load::parseWithUnit(u"80 kg")})));
        }
        MainServices services;
        services.backupFolder = [this](const QString&) { return m_dir.path(u"shelf"); };
        services.dailyBackups = false;
        services.reviewer = [](const RosterReviewRequest&, const Progress&) -> Result<std::vector<AthleteReview>> {
            return std::vector<AthleteReview>{};
        };
        services.openLifterData = [this](const UiContext& context, const LifterDataStart& start, QWidget* parent) {
            m_page = new LifterDataPage(context, start, parent);
            m_page->setWindowFlag(Qt::Window);
            QObject::connect(m_page, &LifterDataPage::closed, m_page, &QWidget::close);
            m_page->setAttribute(Qt::WA_DeleteOnClose);
            m_page->show();
            m_page->takeFocus();
        };
        m_window = std::make_unique<MainWindow>(services, m_prompter, m_clock, m_settings);
        ASSERT_TRUE(m_window->openBook(m_path));
        m_window->show();
        settle();
    }
    void settle()
    {
        ASSERT_TRUE(QTest::qWaitFor([&] { return m_window->isSettled(); }, 30'000));
    }
    // The book was closed, worked on, and opened again.
    template <class Condition>
    [[nodiscard]] bool reopened(Condition condition)
    {
        return QTest::qWaitFor([&] { return m_window->book() && m_window->isSettled() && condition() && m_page; },
                               30'000);
    }
    [[nodiscard]] bool reopenedAs(const QString& path)
    {
        return QTest::qWaitFor(
            [&] { return m_window->book() && m_window->book()->path() == path && m_window->isSettled(); }, 30'000);
    }
    void openPage(const QString& name)
    {
        m_window->view()->chooseLifter(name);
        QTest::keyClick(m_window.get(), Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_NE(m_page, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowActive(m_page));
    }
    [[nodiscard]] Row<Athlete> dana() const { return must(m_window->book()->athletes().findByName(kDana)); }
    template <class Widget>
    [[nodiscard]] Widget* named(const char* name) const
    {
        for (auto* each : m_page->findChildren<Widget*>())
            if (each->accessibleName() == QLatin1StringView(name)) return each;
        return nullptr;
    }
    [[nodiscard]] QPushButton* button(const char* words) const
    {
        for (auto* each : m_page->findChildren<QPushButton*>())
            if (QString(each->text()).remove(u'&').startsWith(QLatin1StringView(words))) return each;
        return nullptr;
    }
    [[nodiscard]] bool says(const char* words) const
    {
        for (const auto* each : m_page->findChildren<QLabel*>())
            if (each->text().contains(QLatin1StringView(words))) return true;
        return false;
    }

    testing_support::TempDir m_dir;
    QString m_path = m_dir.path(u"club.steelyard");
    FixedClock m_clock{QDate(2027, 3, 1)};
    ScriptedPrompter m_prompter;
    QSettings m_settings{m_dir.path(u"settings.ini"), QSettings::IniFormat};
    std::unique_ptr<MainWindow> m_window;
    QPointer<LifterDataPage> m_page;
};

TEST_F(LifterData, OpensOnTheChosenLifterAndEscapeLeaves)
{
    openPage(kDana);
    EXPECT_EQ(m_page->chosen(), dana().id);
    EXPECT_TRUE(named<QPlainTextEdit>("What erasing would take away")
                    ->toPlainText()
                    .contains(QStringLiteral("Profile: 1 · Records of consent: 1")));
    QTest::keyClick(m_page->focusWidget(), Qt::Key_Escape);
    EXPECT_TRUE(QTest::qWaitFor([&] { return m_page.isNull(); }));
    EXPECT_EQ(dana().value.name, kDana);
}

TEST_F(LifterData, IsErasedOnlyAfterTheWholeNameAndNeverByEnter)
{
    m_settings.beginWriteArray(QStringLiteral("week/filters"), 1);
    m_settings.setArrayIndex(0);
    m_settings.setValue(QStringLiteral("name"), kDana);
    m_settings.endArray();
    openPage(kDana);
    const Row<Athlete> gone = dana();
    auto* name = named<QLineEdit>("Name of the lifter to erase");
    auto* erase = button("Erase for good");
    EXPECT_FALSE(erase->isEnabled());
    name->setFocus();
    QTest::keyClicks(name, QStringLiteral("Dana Quil"));
    EXPECT_FALSE(erase->isEnabled());
    QTest::keyClicks(name, QStringLiteral("l"));
    EXPECT_TRUE(erase->isEnabled());
    QTest::keyClick(name, Qt::Key_Return);
    settle();
    EXPECT_TRUE(m_window->book()->athletes().find(gone.id));

    QTest::keyClick(name, Qt::Key_Tab);
    EXPECT_EQ(m_page->focusWidget(), erase);
    QTest::keyClick(erase, Qt::Key_Space);
    ASSERT_TRUE(reopened([&] { return !m_window->book()->athletes().find(gone.id); }));
    ASSERT_NE(m_page, nullptr);
    EXPECT_TRUE(says("nothing was found"));
    EXPECT_TRUE(says("-erase.steelyard")) << "the backup that still has them";
    EXPECT_FALSE(says("Dana"));
    EXPECT_FALSE(m_window->book()->history().canUndo());
    EXPECT_FALSE(m_dir.read(u"settings.ini").contains("Dana"));
    m_page->close();
    m_window->closeBook();
    EXPECT_EQ(must(filesNaming(m_path, {gone.value.name, gone.uuid})), QStringList());
}

TEST_F(LifterData, AConsentIsRecordedWithHowItWasGivenAndUndone)
{
    openPage(QStringLiteral("Bo Marrow"));
    EXPECT_TRUE(says("No consent is recorded"));
    auto* how = named<QLineEdit>("How they agreed");
    how->setFocus();
    QTest::keyClicks(how, QStringLiteral("on paper"));
    QTest::keyClick(how, Qt::Key_Tab);
    QTest::keyClick(m_page->focusWidget(), Qt::Key_Space);
    const auto bo = [&] { return must(m_window->book()->athletes().findByName(QStringLiteral("Bo Marrow"))).value; };
    ASSERT_EQ(bo().consents.size(), 1U);
    EXPECT_EQ(bo().consents.front().givenOn, m_clock.today());
    EXPECT_EQ(bo().consents.front().note, QStringLiteral("on paper"));
    EXPECT_TRUE(says("They agreed on"));
    m_window->perform(QStringLiteral("edit.undo"));
    EXPECT_TRUE(bo().consents.empty());
}

TEST_F(LifterData, AWithdrawalSaysBeforehandThatBackupsStillHaveTheEntries)
{
    ConsentPanel panel;
    panel.show(dana(), {.ratings = 3, .sentences = 2});
    const auto buttons = panel.findChildren<QPushButton*>();
    const auto withdraw =
        std::ranges::find_if(buttons, [](const QPushButton* one) { return one->text().contains(u"Withdraw"); });
    ASSERT_NE(withdraw, buttons.end());
    (*withdraw)->click();
    const auto labels = panel.findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(labels, [](const QLabel* label) {
        return label->text().contains(u"3 ratings") && label->text().contains(u"A backup is made first: it still has");
    }));
}

TEST_F(LifterData, AWithdrawalSaysWhatGoesAndIsDoneByTheSecondPress)
{
    openPage(kDana);
    auto* withdraw = button("Withdraw");
    withdraw->setFocus();
    QTest::keyClick(withdraw, Qt::Key_Space);
    EXPECT_TRUE(says("Press once more"));
    EXPECT_EQ(standingOf(dana().value.consents), ConsentStanding::Given);
    QTest::keyClick(withdraw, Qt::Key_Space);
    ASSERT_TRUE(reopened([&] { return standingOf(dana().value.consents) == ConsentStanding::Withdrawn; }));
    EXPECT_TRUE(says("Withdrawn on"));
}

TEST_F(LifterData, TheRecordIsWrittenIntoAFolderOfItsOwn)
{
    openPage(kDana);
    m_prompter.path = m_dir.path();
    for (int time = 0; time < 2; ++time) {
        auto* write = button("Write into a folder");
        write->setFocus();
        QTest::keyClick(write, Qt::Key_Space);
        settle();
    }
    for (const char16_t* folder : {u"Record of 2027-03-01/", u"Record of 2027-03-01 2/"})
        for (const char16_t* file : {u"record.html", u"logbook.csv", u"book.json", u"README.txt"})
            EXPECT_TRUE(QFile::exists(m_dir.path(QString::fromUtf16(folder) + QString::fromUtf16(file))));
    EXPECT_EQ(m_prompter.errors, QStringList());
}

TEST_F(LifterData, TheRecordIsSealedByKeysAndOpensAsABook)
{
    openPage(kDana);
    m_prompter.path = m_dir.path(u"dana.steelyard.sealed");
    auto* seal = button("Seal into a file");
    seal->setFocus();
    QTest::keyClick(seal, Qt::Key_Space);
    EXPECT_TRUE(says("A sealed record of Dana Quill"));
    for (const QString& field : {QStringLiteral("passphrase"), QStringLiteral("passphraseAgain")}) {
        auto* line = m_page->findChild<QLineEdit*>(field);
        line->setFocus();
        QTest::keyClicks(line, QStringLiteral("seven plain words will do"));
    }
    QTest::keyClick(m_page->focusWidget(), Qt::Key_Return);
    ASSERT_TRUE(QTest::qWaitFor([&] { return says("Sealed: "); }, 30'000));
    settle();
    QTest::keyClick(m_page->focusWidget(), Qt::Key_Escape);
    EXPECT_NE(m_page, nullptr) << "Escape leaves the sealing first";
    EXPECT_EQ(m_page->focusWidget(), seal);

    // Dropped on the window, or chosen to be opened: what is open stays until the passphrase fits.
    const QString sealed = m_prompter.path;
    EXPECT_FALSE(m_window->openBook(sealed));
    auto* dialog = m_window->findChild<UnsealDialog*>();
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
    m_prompter.path = m_dir.path(u"theirs.steelyard");
    auto* line = dialog->findChild<QLineEdit*>(QStringLiteral("passphrase"));
    QTest::keyClicks(line, QStringLiteral("some other words of hers"));
    QTest::keyClick(line, Qt::Key_Return);
    settle();
    EXPECT_FALSE(QFile::exists(m_prompter.path));
    EXPECT_EQ(m_window->book()->path(), m_path);
    line->selectAll();
    QTest::keyClicks(line, QStringLiteral("seven plain words will do"));
    QTest::keyClick(line, Qt::Key_Return);
    ASSERT_TRUE(reopenedAs(m_prompter.path));
    const auto athletes = must(m_window->book()->athletes().all());
    ASSERT_EQ(athletes.size(), 1U);
    EXPECT_EQ(athletes.front().value.name, kDana);
    EXPECT_EQ(athletes.front().value.consents.size(), 1U);
    EXPECT_EQ(m_prompter.errors, QStringList());
}

TEST_F(LifterData, ASealedFileIsNeverOpenedOverAnotherBook)
{
    const QString sealed = m_dir.path(u"a.sealed");
    must(sealFile(m_path, sealed, must(Passphrase::make(QStringLiteral("seven plain words will do"))),
                  SealCost::least(), {}));
    EXPECT_FALSE(m_window->openBook(sealed));
    auto* dialog = m_window->findChild<UnsealDialog*>();
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
    m_prompter.path = m_path;
    auto* line = dialog->findChild<QLineEdit*>(QStringLiteral("passphrase"));
    QTest::keyClicks(line, QStringLiteral("seven plain words will do"));
    QTest::keyClick(line, Qt::Key_Return);
    settle();
    const auto labels = dialog->findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(
        labels, [](const QLabel* label) { return label->text().contains(QStringLiteral("is there already")); }));
    EXPECT_EQ(must(m_window->book()->athletes().all()).size(), 2U);
}

TEST_F(LifterData, QuietLiftersComeUpByTheMonthsThatAreSet)
{
    openPage(QStringLiteral("Bo Marrow"));
    auto* list = named<QListWidget>("Lifters without a new entry for long");
    auto* months = named<QSpinBox>("Months without a new entry");
    ASSERT_EQ(list->count(), 1);  // Dana's consent of 2024 is the last that is known of her
    list->setFocus();
    list->setCurrentRow(0);
    QTest::keyClick(list, Qt::Key_Return);
    EXPECT_EQ(m_page->chosen(), dana().id);
    months->setFocus();
    months->selectAll();
    QTest::keyClicks(months, QStringLiteral("2"));
    EXPECT_EQ(list->count(), 2);
    EXPECT_EQ(m_settings.value(QStringLiteral("care/retention_months")).toInt(), 2);
}

TEST_F(LifterData, WhoIsAddedHasAConsentOnlyWhenItIsTicked)
{
    for (const bool agreed : {false, true}) {
        const QString name = agreed ? QStringLiteral("Says Yes") : QStringLiteral("Says No");
        auto* dialog = new AddLifterDialog(*m_window->book(), {}, m_window.get());
        dialog->show();
        QTest::keyClicks(dialog->findChild<QLineEdit*>(), name);
        if (agreed) QTest::keyClick(dialog->findChild<QCheckBox*>(), Qt::Key_Space);
        QTest::keyClick(dialog, Qt::Key_Return);
        EXPECT_EQ(must(m_window->book()->athletes().findByName(name)).value.consents.size(), agreed ? 1U : 0U);
    }
}

}  // namespace
}  // namespace steelyard
