#include "ui/pages/import/import_page.h"

#include "tests/support/scripted_prompter.h"
#include "tests/support/temp_dir.h"
#include "ui/pages/import/import_preview_model.h"

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
#include <thread>

namespace steelyard {
namespace {

using testing_support::TempDir;

// Understands nothing of files: it answers what the test prepared and remembers what it was asked.
class PreparedImporter final : public LogbookImporter {
public:
    explicit PreparedImporter(JobRunner& jobs) : m_jobs(jobs)
    {
        choices.separator = u';';
        choices.decimalComma = true;
        choices.columns = {
            {QStringLiteral("date"), 0, true}, {QStringLiteral("reps"), 1, true}, {QStringLiteral("note"), -1}};
        answer.header = {QStringLiteral("Tag"), QStringLiteral("Wdh")};
        answer.rows = {{QStringLiteral("3.4.2026"), QStringLiteral("8")}, {QStringLiteral("x"), QStringLiteral("9")}};
        answer.newSets = 1;
    }
    [[nodiscard]] QStringList encodings() const override
    {
        return {QStringLiteral("UTF-8"), QStringLiteral("windows-1252")};
    }
    [[nodiscard]] ImportChoices guess(const QByteArray&) const override { return choices; }
    [[nodiscard]] Result<ImportPreview> preview(const QString&, const ImportChoices& now,
                                                const Progress&) const override
    {
        ImportPreview preview = answer;
        // Told to read dates in the other order, nothing is wrong any more.
        if (now.dates == DateOrder::DayMonthYear) {
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

    ImportChoices choices;
    ImportPreview answer;
    bool waitForStop = false;
    std::vector<ImportChoices> started;

private:
    JobRunner& m_jobs;
};

struct ImportPageCase {
    TempDir dir;
    JobRunner jobs;
    PreparedImporter importer{jobs};
    ScriptedPrompter prompter;
    std::unique_ptr<ImportPage> page = std::make_unique<ImportPage>(importer, prompter, jobs);

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
                return std::ranges::any_of(labels, [&](QLabel* label) { return label->text().contains(text); });
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
    [[nodiscard]] QComboBox& box(const char* firstItem) const
    {
        for (QComboBox* box : page->findChildren<QComboBox*>())
            if (box->itemText(0) == QLatin1StringView(firstItem)) return *box;
        qFatal("No such box");
    }
    void spoil()
    {
        importer.answer.badRows = 1;
        importer.answer.troubles = {{1, 0, QStringLiteral("“x”"), QStringLiteral("Write it as 2026-04-03.")}};
    }
};

TEST(ImportPage, ShowsWhatWasGuessedAndTheFirstRows)
{
    ImportPageCase c;
    EXPECT_FALSE(c.import().isEnabled());
    c.open();
    EXPECT_EQ(c.box("comma").currentText(), QStringLiteral("semicolon"));
    EXPECT_EQ(c.page->findChild<QTableView*>(QString(), Qt::FindDirectChildrenOnly)->isVisible(), true);
    EXPECT_EQ(c.page->findChild<QTableWidget*>()->rowCount(), 3);
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
    c.page->findChild<QCheckBox*>()->setChecked(true);
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
    EXPECT_EQ(c.page->choices().dates, DateOrder::DayMonthYear);
    EXPECT_TRUE(c.import().isEnabled());
}

TEST(ImportPage, AsksForANeededColumnThatIsNotChosen)
{
    ImportPageCase c;
    c.open();
    auto* table = c.page->findChild<QTableWidget*>();
    qobject_cast<QComboBox*>(table->cellWidget(1, 1))->setCurrentIndex(0);
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
    c.button(QStringLiteral("Sto&p")).click();
    EXPECT_TRUE(c.shows(QStringLiteral("Stopped. Nothing was written.")));
    EXPECT_TRUE(c.import().isEnabled());
}

TEST(ImportPage, SaysInPlaceThatAFileCannotBeOpened)
{
    ImportPageCase c;
    c.page->openFile(c.dir.path(u"absent.csv"));
    EXPECT_TRUE(c.shows(QStringLiteral("“absent.csv” can’t be opened")));
}

TEST(ImportPreviewModel, MarksTheCellThatCannotBeRead)
{
    ImportPreviewModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    ImportPreview preview;
    preview.header = {QStringLiteral("a"), QStringLiteral("b")};
    preview.rows = {{QStringLiteral("1"), QStringLiteral("<b>2</b>")}};
    preview.troubles = {{0, 1, QStringLiteral("“<b>2</b>”"), QStringLiteral("Write 2.")}};
    model.setPreview(preview);
    EXPECT_EQ(model.index(0, 0).data().toString(), QStringLiteral("1"));
    EXPECT_EQ(model.index(0, 1).data().toString(), QStringLiteral("⚠ <b>2</b>"));
    EXPECT_TRUE(model.index(0, 1).data(Qt::ToolTipRole).toString().contains(QStringLiteral("&lt;b&gt;")));
    EXPECT_FALSE(model.index(0, 0).data(Qt::ToolTipRole).isValid());
    EXPECT_EQ(model.headerData(0, Qt::Vertical, Qt::DisplayRole).toInt(), 2);
}

}  // namespace
}  // namespace steelyard
