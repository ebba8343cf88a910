// Backups as a coach meets them: by themselves once a day, on their own page by keys, back into the book, on a stick that comes and goes.
#include "core/care/checksum.h"
#include "core/care/sealed_file.h"
#include "tests/support/shell_book.h"
#include "tests/support/temp_book.h"
#include "ui/pages/care/backups_model.h"
#include "ui/pages/care/backups_page.h"
#include "ui/pages/care/restore_panel.h"
#include "ui/pages/care/seal_panel.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/status_line.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtGui/QAction>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

using test::must;

const QString kPassphrase = QStringLiteral("seven plain words will do");

class BackupsInTheWindow : public testing::Test {
protected:
    void open(bool daily = true)
    {
        MainServices services{.reviewer = reviewByHand};
        services.backupFolder = [this](const QString&) { return folder(); };
        services.dailyBackups = daily;
        services.openBackups = [this](const UiContext& context, const MainServices::Restore& restore, QWidget*) {
            page = std::make_unique<BackupsPage>(context);
            QObject::connect(page.get(), &BackupsPage::closed, page.get(), &QWidget::hide);
            QObject::connect(page.get(), &BackupsPage::restoreRequested, window.get(),
                             [this, restore](const RestoreWish& wish) {
                                 page.release()->deleteLater();
                                 restore(wish);
                             });
            page->show();
            page->takeFocus();
        };
        window = std::make_unique<MainWindow>(std::move(services), shell.prompter, shell.clock, shell.settings);
        ASSERT_TRUE(window->openBook(shell.path()));
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        settle();
        if (!daily) return;
        ASSERT_TRUE(QTest::qWaitFor([&] { return !kept().empty() || !note().isEmpty(); }, 30'000));
        settle();
    }
    void openPage()
    {
        QTest::keyClick(window.get(), Qt::Key_K, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_NE(page, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowActive(page.get()));
        settle();
    }
    void settle()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return window->isSettled() && (!window->backups() || !window->backups()->isBusy()); }, 30'000));
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        QTest::keyClick(page->focusWidget() ? page->focusWidget() : page.get(), key, modifiers);
    }
    // A button goes down by its letter and up again a little later, which is when it does what it says.
    void mnemonic(Qt::Key key)
    {
        press(key, Qt::AltModifier);
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return !page || std::ranges::none_of(page->findChildren<QPushButton*>(), &QPushButton::isDown); }));
    }
    void addLifter(const char* name)
    {
        Athlete athlete;
        athlete.name = QString::fromLatin1(name);
        must(window->book()->history().perform(steelyard::addAthlete(athlete)));
        settle();
    }
    [[nodiscard]] std::size_t lifters() const { return must(window->book()->athletes().all()).size(); }
    [[nodiscard]] QString folder() const { return shell.folder.filePath(QStringLiteral("shelf")); }
    [[nodiscard]] std::vector<Backup> kept() const { return window->backups()->shelf().list(); }
    [[nodiscard]] QString note() const { return window->findChild<StatusLine*>()->note(); }
    [[nodiscard]] QString pageWords() const
    {
        QStringList words;
        for (const auto* label : page->findChildren<QLabel*>())
            if (label->isVisible()) words << label->text();
        return words.join(u'\n');
    }
    [[nodiscard]] QPushButton* restoreButton() const
    {
        for (auto* button : page->findChildren<QPushButton*>())
            if (button->text() == QStringLiteral("&Restore it…")) return button;
        return nullptr;
    }
    void typePassphrase(const QString& text, bool twice)
    {
        QTest::keyClicks(page->focusWidget(), text);
        press(Qt::Key_Return);
        if (!twice) return;
        QTest::keyClicks(page->focusWidget(), text);
        press(Qt::Key_Return);
    }

    ShellBook shell{{QStringLiteral("Bo Marrow")}};
    std::unique_ptr<MainWindow> window;
    std::unique_ptr<BackupsPage> page;
};

TEST_F(BackupsInTheWindow, TheFirstOfTheDayComesByItselfAndOnce)
{
    open();
    ASSERT_EQ(kept().size(), 1U);
    EXPECT_EQ(kept().front().reason, BackupReason::Daily);
    addLifter("Ada Fenwick");
    window->closeBook();
    ASSERT_TRUE(window->openBook(shell.path()));
    settle();
    EXPECT_EQ(kept().size(), 1U);
    EXPECT_EQ(note(), QString());
}

TEST_F(BackupsInTheWindow, WhatHindersThemIsSaidUntilItWorksAgain)
{
    QFile inTheWay(folder());
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    inTheWay.close();
    open();
    EXPECT_EQ(note(), QStringLiteral("No backup could be made"));
    EXPECT_EQ(shell.prompter.errors, QStringList()) << "and never in a box";
    addLifter("Ada Fenwick");
    EXPECT_EQ(lifters(), 2U) << "work goes on";
    EXPECT_FALSE(note().isEmpty());
    ASSERT_TRUE(inTheWay.remove());
    window->backups()->tryAgain();
    settle();
    EXPECT_EQ(note(), QString());
    EXPECT_EQ(kept().size(), 1U);
}

TEST_F(BackupsInTheWindow, AStickThatComesAndGoesIsMissedQuietlyAndGetsTheNewestWhenItIsBack)
{
    open();
    const QString stick = shell.folder.filePath(QStringLiteral("stick"));
    const QString away = shell.folder.filePath(QStringLiteral("away"));
    ASSERT_TRUE(QDir().mkpath(stick));
    shell.prompter.path = stick;
    openPage();
    mnemonic(Qt::Key_C);
    settle();
    const BackupShelf second(BackupShelf::folderIn(stick, shell.path()), shell.clock);
    EXPECT_EQ(second.list().size(), 1U);
    EXPECT_EQ(note(), QString());

    ASSERT_TRUE(QFile::rename(stick, away));
    mnemonic(Qt::Key_N);
    settle();
    EXPECT_EQ(note(), QStringLiteral("Second backup folder isn't there"));
    window->backups()->tryAgain();
    settle();
    EXPECT_FALSE(note().isEmpty());
    EXPECT_FALSE(QFile::exists(stick)) << "nothing is put where the stick should be";

    ASSERT_TRUE(QFile::rename(away, stick));
    window->backups()->tryAgain();
    settle();
    EXPECT_EQ(note(), QString());
    ASSERT_FALSE(second.list().empty());
    EXPECT_EQ(keptChecksum(second.list().front().path), keptChecksum(kept().front().path));
    mnemonic(Qt::Key_Y);
    EXPECT_EQ(window->backups()->secondFolder(), QString());
}

TEST_F(BackupsInTheWindow, ABackupIsLookedIntoAndRestoredByKeys)
{
    open();
    addLifter("Ada Fenwick");
    openPage();
    press(Qt::Key_Return);
    settle();
    EXPECT_TRUE(pageWords().contains(QStringLiteral("1 lifter(s), 0 session(s), 0 set(s).")))
        << qPrintable(pageWords());
    EXPECT_TRUE(pageWords().contains(QStringLiteral("The book has what this lacks: 1 lifter(s).")))
        << qPrintable(pageWords());
    shell.prompter.agree = false;
    mnemonic(Qt::Key_R);
    ASSERT_EQ(shell.prompter.asked.size(), 1);
    EXPECT_EQ(lifters(), 2U);
    shell.prompter.agree = true;
    mnemonic(Qt::Key_R);
    ASSERT_TRUE(QTest::qWaitFor([&] { return window->book() && lifters() == 1; }, 30'000));
    settle();
    EXPECT_EQ(shell.prompter.errors, QStringList());
    EXPECT_EQ(page, nullptr);
    EXPECT_TRUE(std::ranges::any_of(window->findChild<StatusLine*>()->findChildren<QLabel*>(), [](const QLabel* label) {
        return label->text().startsWith(
            QStringLiteral("Restored. The book as it was is “club.steelyard.before-restore-"));
    }));
    EXPECT_EQ(kept().front().reason, BackupReason::Restore);
    addLifter("Cy Tolland");
    EXPECT_EQ(lifters(), 2U) << "it can be written";
}

TEST_F(BackupsInTheWindow, OneThatWasChangedIsSaidAndNotRestored)
{
    open();
    QFile file(kept().front().path);
    ASSERT_TRUE(file.open(QIODevice::ReadWrite));
    ASSERT_TRUE(file.seek(file.size() - 10));
    ASSERT_EQ(file.write("x"), 1);
    file.close();
    openPage();
    const auto* model = page->findChild<BackupsModel*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return model->stateOf(kept().front().number) != BackupState::Unknown; }));
    EXPECT_EQ(model->index(0, BackupsModel::State).data().toString(), QStringLiteral("changed: not used"));
    press(Qt::Key_Return);
    settle();
    EXPECT_TRUE(pageWords().contains(QStringLiteral("its checksum differs"))) << qPrintable(pageWords());
    EXPECT_FALSE(restoreButton()->isEnabled());
}

TEST_F(BackupsInTheWindow, ASealedCopyIsMadeAndComesBackWithItsPassphraseAlone)
{
    open();
    shell.prompter.path = shell.folder.filePath(QStringLiteral("out.steelyard.sealed"));
    openPage();
    mnemonic(Qt::Key_S);
    typePassphrase(kPassphrase, true);
    ASSERT_TRUE(QTest::qWaitFor([&] { return QFile::exists(shell.prompter.path); }, 30'000));
    settle();
    EXPECT_TRUE(page->findChild<SealPanel*>()->isVisible()) << "the backup that it made doesn't push it away";
    EXPECT_TRUE(page->findChild<SealPanel*>()->said().startsWith(QStringLiteral("Sealed: ")));
    EXPECT_TRUE(must(isSealedFile(shell.prompter.path)));
    for (const auto* field : page->findChildren<QLineEdit*>()) EXPECT_EQ(field->text(), QString()) << "wiped";
    addLifter("Ada Fenwick");
    mnemonic(Qt::Key_F);
    typePassphrase(QStringLiteral("another passphrase"), false);
    settle();
    EXPECT_TRUE(pageWords().contains(QStringLiteral("The passphrase is another one"))) << qPrintable(pageWords());
    EXPECT_FALSE(restoreButton()->isEnabled());
    page->findChild<RestorePanel*>()->findChild<QLineEdit*>()->setFocus();
    typePassphrase(kPassphrase, false);
    settle();
    ASSERT_TRUE(restoreButton()->isEnabled()) << qPrintable(pageWords());
    mnemonic(Qt::Key_R);
    ASSERT_TRUE(QTest::qWaitFor([&] { return window->book() && lifters() == 1; }, 30'000));
    settle();
}

TEST_F(BackupsInTheWindow, WithoutAnyThePageSaysHowTheFirstComes)
{
    open(false);
    openPage();
    EXPECT_TRUE(pageWords().contains(QStringLiteral("There is no backup of this book yet")));
    EXPECT_FALSE(restoreButton()->isEnabled());
    mnemonic(Qt::Key_N);
    settle();
    EXPECT_FALSE(pageWords().contains(QStringLiteral("There is no backup of this book yet")));
    EXPECT_EQ(page->findChild<QTableView*>()->model()->rowCount(), 1);
    press(Qt::Key_Escape);
    EXPECT_FALSE(page->isVisible());
}

TEST_F(BackupsInTheWindow, OneIsKeptBeforeManySetsAreChangedAndWorkWaitsForIt)
{
    open(false);
    bool done = false;
    keepFirst(window->backups(), BackupReason::Bulk, window.get(), [&] {
        done = true;
        EXPECT_EQ(kept().size(), 1U);
    });
    EXPECT_FALSE(done);
    ASSERT_TRUE(QTest::qWaitFor([&] { return done; }));
    EXPECT_EQ(kept().front().reason, BackupReason::Bulk);
    done = false;
    keepFirst(nullptr, BackupReason::Bulk, window.get(), [&] { done = true; });
    EXPECT_TRUE(done) << "where none are kept, nothing waits";
}

TEST_F(BackupsInTheWindow, OfABookThatLostItsPlaceNoneIsMadeOfTheFileThatCameThere)
{
    open(false);
    ASSERT_TRUE(QFile::rename(shell.path(), shell.folder.filePath(QStringLiteral("elsewhere"))));
    std::optional<Result<Backup>> made;
    window->backups()->keep(BackupReason::Asked, window.get(), [&](const Result<Backup>& outcome) { made = outcome; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return made.has_value(); }));
    EXPECT_FALSE(*made);
    EXPECT_TRUE(kept().empty());
}

}  // namespace
}  // namespace steelyard
