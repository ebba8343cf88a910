#include "ui/pages/import/import_page.h"

#include "tests/support/scripted_prompter.h"
#include "tests/support/temp_dir.h"
#include "ui/pages/import/import_preview_model.h"
#include "ui/pages/import/name_match_model.h"
#include "ui/pages/import/name_match_view.h"
#include "ui/widgets/elided_label.h"

#include <QtCore/QSettings>
#include <QtTest/QAbstractItemModelTester>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableView>
#include <QtWidgets/QTableWidget>

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <thread>

namespace steelyard {
namespace {

using testing_support::TempDir;

// Understands nothing of files: it answers what the test prepared and remembers what it was asked.
class PreparedImporter final : public LogbookImporter {
public:
    explicit PreparedImporter(JobRunner& jobs) : m_jobs(jobs)
    {
        guessed.mapping.separator = u';';
        guessed.mapping.decimalMark = u',';
        guessed.mapping.columns = {{QStringLiteral("date"), 1}, {QStringLiteral("reps"), 2}};
        guessed.mapping.fixed = {{QStringLiteral("athlete"), QStringLiteral("Ada Fulcrum")},
                                 {QStringLiteral("exercise"), QStringLiteral("Row")}};
        guessed.header = {QStringLiteral("Tag"), QStringLiteral("Wdh")};
        answer.header = guessed.header;
        answer.rows = {{QStringLiteral("3.4.2026"), QStringLiteral("8")}, {QStringLiteral("x"), QStringLiteral("9")}};
        answer.lines = {2, 3};
        answer.newSets = 1;
        answer.fingerprint = QStringLiteral("f");
    }
    [[nodiscard]] LogbookGuess guess(const QByteArray&) const override { return guessed; }
    [[nodiscard]] ImportNames names() const override
    {
        return {{{QStringLiteral("Arm curl"), {}}, {QStringLiteral("Bench press"), {}}},
                {QStringLiteral("Ada Fulcrum")}};
    }
    [[nodiscard]] ImportPreview firstRows(const QByteArray&, const ImportChoices&) const override
    {
        ImportPreview first;
        first.header = answer.header;
        first.rows = answer.rows;
        first.lines = answer.lines;
        return first;
    }
    [[nodiscard]] Result<ImportPreview> preview(const QString&, const ImportChoices& now,
                                                const Progress&) const override
    {
        previewing = true;
        for (int turns = 0; hold && turns < 10'000; ++turns) std::this_thread::sleep_for(std::chrono::milliseconds(1));
        ImportPreview preview = answer;
        // Told to read dates in the other order, nothing is wrong any more.
        if (now.mapping.dateOrder == DateOrder::DayMonthYear) {
            preview.troubles.clear();
            preview.badRows = 0;
        }
        return preview;
    }
    JobHandle start(QObject* owner, const QString&, const ImportChoices& now,
                    std::function<void(Result<int>)> done) override
    {
        started.push_back(now);
        return m_jobs.run(
            owner, QStringLiteral("import"),
            [wait = waitForStop](const Progress& progress) -> Result<int> {
                while (wait && !progress.cancelled()) std::this_thread::yield();
                if (progress.cancelled()) return fail(ErrorCode::Cancelled, QStringLiteral("stopped"));
                return 1;
            },
            std::move(done));
    }

    LogbookGuess guessed;
    ImportPreview answer;
    bool waitForStop = false;
    mutable std::atomic<bool> previewing = false;
    std::atomic<bool> hold = false;
    std::vector<ImportChoices> started;

private:
    JobRunner& m_jobs;
};

struct ImportPageCase {
    TempDir dir;
    JobRunner jobs;
    std::shared_ptr<PreparedImporter> shared = std::make_shared<PreparedImporter>(jobs);
    PreparedImporter& importer = *shared;
    ScriptedPrompter prompter;
    QSettings settings{dir.path(u"settings.ini"), QSettings::IniFormat};
    std::unique_ptr<ImportPage> page = makePage();

    [[nodiscard]] std::unique_ptr<ImportPage> makePage()
    {
        return std::make_unique<ImportPage>(ImportPage::Services{shared, prompter, jobs, &settings,
                                                                 QStringLiteral("club.steelyard"), QDate(2026, 3, 2)});
    }

    void open()
    {
        page->resize(1106, 690);
        page->show();
        prompter.path = dir.write(u"log.csv", "Tag;Wdh\n3.4.2026;8\nx;9\n");
        page->chooseFile();
        ASSERT_TRUE(shows(QStringLiteral("New sets: 1")));
    }
    [[nodiscard]] bool shows(const QString& text) const
    {
        return QTest::qWaitFor(
            [&] {
                const auto labels = page->findChildren<QLabel*>();
                const auto lines = page->findChildren<ElidedLabel*>();
                const auto says = [&](auto* label) { return label->text().contains(text); };
                return std::ranges::any_of(labels, says) || std::ranges::any_of(lines, says);
            },
            10000);
    }
    [[nodiscard]] QPushButton& button(const QString& text) const
    {
        for (QPushButton* button : page->findChildren<QPushButton*>())
            if (button->text() == text) return *button;
        qFatal("No such button");
    }
    [[nodiscard]] QPushButton& import() const { return button(QStringLiteral("&Import")); }
    [[nodiscard]] QCheckBox& aside() const
    {
        for (QCheckBox* box : page->findChildren<QCheckBox*>())
            if (box->text().startsWith(u"Set &bad rows aside")) return *box;
        qFatal("No such box");
    }
    [[nodiscard]] QComboBox& box(const char* firstItem) const
    {
        for (QComboBox* box : page->findChildren<QComboBox*>())
            if (box->itemText(0) == QLatin1StringView(firstItem)) return *box;
        qFatal("No such box");
    }
    void spoil()
    {
        importer.answer.badRows = 1;
        importer.answer.troubles = {{3, 1, 0, QStringLiteral("“x”"), QStringLiteral("Write it as 2026-04-03.")}};
    }
};

TEST(ImportPage, ShowsWhatWasGuessedAndTheFirstRows)
{
    ImportPageCase c;
    EXPECT_FALSE(c.import().isEnabled());
    c.open();
    EXPECT_EQ(c.box("comma").currentText(), QStringLiteral("semicolon"));
    const auto* columns = c.page->findChild<QTableWidget*>();
    EXPECT_EQ(columns->rowCount(), logbookColumns().size() + 1);
    EXPECT_EQ(qobject_cast<QComboBox*>(columns->cellWidget(0, 1))->currentText(), QStringLiteral("Tag"));
    EXPECT_TRUE(c.import().isEnabled());
}

TEST(ImportPage, ReportsBadRowsByLineAndColumnAndImportsOnlyWhenTheyAreSetAside)
{
    ImportPageCase c;
    c.spoil();
    c.open();
    EXPECT_EQ(c.page->findChild<QPlainTextEdit*>()->toPlainText(),
              QStringLiteral("Line 3, “Tag”, “x”: Write it as 2026-04-03."));
    EXPECT_FALSE(c.import().isEnabled());
    c.aside().setChecked(true);
    EXPECT_TRUE(c.import().isEnabled());
    QSignalSpy imported(c.page.get(), &ImportPage::imported);
    c.import().click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !imported.isEmpty(); }, 10000));
    ASSERT_EQ(c.importer.started.size(), 1u);
    EXPECT_TRUE(c.importer.started[0].setBadRowsAside);
    EXPECT_FALSE(c.import().isEnabled());  // not twice
}

TEST(ImportPage, PreviewsAgainWhenAChoiceIsChanged)
{
    ImportPageCase c;
    c.spoil();
    c.open();
    c.box("year-month-day").setCurrentIndex(1);
    EXPECT_TRUE(QTest::qWaitFor([&] { return c.page->findChild<QPlainTextEdit*>()->toPlainText().isEmpty(); }, 10000));
    EXPECT_EQ(c.page->choices().mapping.dateOrder, DateOrder::DayMonthYear);
    EXPECT_TRUE(c.import().isEnabled());
}

TEST(ImportPage, AsksForANeededColumnThatIsNotChosen)
{
    ImportPageCase c;
    c.open();
    auto* table = c.page->findChild<QTableWidget*>();
    qobject_cast<QComboBox*>(table->cellWidget(3, 1))->setCurrentIndex(0);
    EXPECT_TRUE(c.shows(QStringLiteral("Say which column of the file holds: reps.")));
    EXPECT_FALSE(c.import().isEnabled());
}

TEST(ImportPage, StopsAnImportOnDemandAndSaysThatNothingWasWritten)
{
    ImportPageCase c;
    c.importer.waitForStop = true;
    c.open();
    c.import().click();
    EXPECT_FALSE(c.import().isEnabled());
    c.button(QStringLiteral("Stop")).click();
    EXPECT_TRUE(c.shows(QStringLiteral("Stopped. Nothing was written.")));
    EXPECT_TRUE(c.import().isEnabled());
}

TEST(ImportPage, SaysInPlaceThatAFileCannotBeOpened)
{
    ImportPageCase c;
    c.page->openFile(c.dir.path(u"absent.csv"));
    EXPECT_TRUE(c.shows(QStringLiteral("“absent.csv” can’t be opened")));
}

NameInFile unknownName(const char* name, const char* like, bool clear)
{
    return {{QString::fromLatin1(name), {}}, 7, false, {{{QString::fromLatin1(like), {}}, 0.9}}, clear};
}

struct NamesCase : ImportPageCase {
    NamesCase()
    {
        importer.answer.exercises = {unknownName("Bench pres", "Bench press", true),
                                     unknownName("Curl", "Arm curl", false)};
        open();
    }
    [[nodiscard]] NameMatchModel& model() const { return *page->findChild<NameMatchModel*>(); }
    [[nodiscard]] QTableView& table() const { return *page->findChild<NameMatchView*>()->findChild<QTableView*>(); }
    [[nodiscard]] QString becomes(int row) const
    {
        return model().index(row, NameMatchModel::Becomes).data().toString();
    }
};

TEST(ImportPage, APreviewThatRunsOnWhenTheWindowIsClosedKeepsWhatItReadsWith)
{
    ImportPageCase c;
    c.importer.hold = true;
    c.prompter.path = c.dir.write(u"log.csv", "Tag;Wdh\n3.4.2026;8\n");
    c.page->chooseFile();
    ASSERT_TRUE(QTest::qWaitFor([&] { return c.importer.previewing.load(); }, 10000));
    const std::weak_ptr<PreparedImporter> importer = c.shared;
    c.page.reset();
    c.shared.reset();
    ASSERT_FALSE(importer.expired());
    c.importer.hold = false;
    EXPECT_TRUE(QTest::qWaitFor([&] { return importer.expired(); }, 10000));
}

TEST(ImportPage, MatchesNamesThatAreClearAndLeavesTheOthersNew)
{
    NamesCase c;
    EXPECT_EQ(c.becomes(0), QStringLiteral("Bench press"));
    EXPECT_EQ(c.becomes(1), QStringLiteral("a new exercise"));
    const ExerciseName pressed{QStringLiteral("Bench pres"), {}};
    ASSERT_TRUE(c.page->choices().mapping.exercises.contains(pressed));
    EXPECT_EQ(c.page->choices().mapping.exercises.size(), 1U);
}

TEST(ImportPage, MatchesNamesByKeysAndGoesOnToTheNext)
{
    NamesCase c;
    c.page->showNames();
    QTest::keyClick(&c.table(), Qt::Key_N);
    EXPECT_EQ(c.becomes(0), QStringLiteral("a new exercise"));
    EXPECT_EQ(c.table().currentIndex().row(), 1);
    QTest::keyClick(&c.table(), Qt::Key_1);
    EXPECT_EQ(c.becomes(1), QStringLiteral("Arm curl"));
    const auto& matched = c.page->choices().mapping.exercises;
    EXPECT_EQ(matched.at({QStringLiteral("Curl"), {}}).exercise, QStringLiteral("Arm curl"));
    EXPECT_EQ(matched.at({QStringLiteral("Bench pres"), {}}).exercise, QStringLiteral("Bench pres"));
}

TEST(ImportPage, RemembersAFileAndItsMappingForTheNextTime)
{
    ImportPageCase c;
    c.open();
    c.box("year-month-day").setCurrentIndex(2);
    ASSERT_TRUE(QTest::qWaitFor([&] { return c.import().isEnabled(); }, 10000));
    QSignalSpy imported(c.page.get(), &ImportPage::imported);
    c.import().click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !imported.isEmpty(); }, 10000));
    c.importer.guessed.datesAmbiguous = true;  // what was chosen before needs no second answer
    c.importer.answer.newSets = 0;
    c.page = c.makePage();
    c.page->openFile(c.prompter.path);
    EXPECT_TRUE(c.shows(QStringLiteral("All of its sets are in the book.")));
    EXPECT_EQ(c.page->choices().mapping.dateOrder, DateOrder::MonthDayYear);
    EXPECT_FALSE(c.page->choices().mapping.fixed.contains(QStringLiteral("athlete")));
}

TEST(ImportPage, AsksWhichOrderDatesHaveThatReadEitherWay)
{
    ImportPageCase c;
    c.importer.guessed.datesAmbiguous = true;
    c.importer.guessed.exampleDate = QStringLiteral("2/1/2026");
    c.open();
    EXPECT_FALSE(c.import().isEnabled());
    c.button(QStringLiteral("The mont&h")).click();
    EXPECT_TRUE(QTest::qWaitFor([&] { return c.import().isEnabled(); }, 10000));
    EXPECT_EQ(c.page->choices().mapping.dateOrder, DateOrder::MonthDayYear);
}

TEST(ImportPreviewModel, MarksTheCellThatCannotBeRead)
{
    ImportPreviewModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    ImportPreview preview;
    preview.header = {QStringLiteral("a"), QStringLiteral("b")};
    preview.rows = {{QStringLiteral("1"), QStringLiteral("<b>2</b>")}};
    preview.lines = {2};
    preview.troubles = {{2, 0, 1, QStringLiteral("“<b>2</b>”"), QStringLiteral("Write 2.")}};
    model.setPreview(preview, {.columns = {{QStringLiteral("reps"), 2}}});
    EXPECT_EQ(model.headerData(1, Qt::Horizontal, Qt::DisplayRole).toString(), QStringLiteral("b\nreps"));
    EXPECT_EQ(model.index(0, 0).data().toString(), QStringLiteral("1"));
    EXPECT_EQ(model.index(0, 1).data().toString(), QStringLiteral("⚠ <b>2</b>"));
    EXPECT_TRUE(model.index(0, 1).data(Qt::ToolTipRole).toString().contains(QStringLiteral("&lt;b&gt;")));
    EXPECT_FALSE(model.index(0, 0).data(Qt::ToolTipRole).isValid());
    EXPECT_EQ(model.headerData(0, Qt::Vertical, Qt::DisplayRole).toInt(), 2);
}

}  // namespace
}  // namespace steelyard
