// The window: menus and keys from the one table of actions, and in it either the first page (no book is open) or an opened
// book.
//
//   MainWindow window(services, prompter, clock, settings);
//   window.openBook(path);
//   window.show();
//
// It owns the book, its review and the jobs. What it needs from outside comes in as MainServices, so that a test can hand
// in its own.
#pragma once

#include "core/care/book_restore.h"
#include "core/care/secret_store.h"
#include "ui/shell/caution_choice.h"
#include "ui/jobs/job.h"
#include "ui/pages/care/recovery_page.h"
#include "ui/shell/actions.h"
#include "ui/shell/lifter_erasing.h"
#include "ui/shell/review_store.h"

#include <QtWidgets/QMainWindow>

#include <map>

class QAction;
class QSettings;
class QStackedWidget;

namespace steelyard {

class BackupKeeper;
class BookView;
class FirstRunPage;
class Prompter;
class ScreenLock;
class StatusLine;
struct UiContext;

struct MainServices {
    ReviewStore::Reviewer reviewer;
    // Makes a book at the path and closes it again; from a worker thread.
    std::function<Result<void>(const QString& path, const Progress&)> makeEmptyBook;
    std::function<Result<void>(const QString& path, const Progress&)> makeSampleClub;
    // Opens the import for a book, with a file or to choose one. Absent: this build has none, and the action is off.
    std::function<void(const UiContext&, const QString& path, QWidget* parent)> openImport;
    // The same for sets as text; the lifter whose page is in front.
    std::function<void(const UiContext&, std::optional<Id<Athlete>>, QWidget* parent)> openPaste;
    // For a book that can't be opened.
    RecoveryServices recovery = {};
    // Where the backups of a book stand. Absent: none are made.
    std::function<QString(const QString& book)> backupFolder;
    bool dailyBackups = true;
    using Restore = std::function<void(const RestoreWish&)>;
    std::function<void(const UiContext&, const Restore&, QWidget* parent)> openBackups;
    std::shared_ptr<SecretStore> secrets;
    // Hears of every action that is performed, by id.
    std::function<void(const QString& action)> note;
    // The text of a diagnosis file (core/care/diagnosis.h); no book: none is open.
    std::function<QString(Book* book, const QSettings&)> diagnose;
    // What is kept of one lifter: consent, handing over, erasing. Absent: the action is off.
    std::function<void(const UiContext&, const LifterDataStart&, QWidget* parent)> openLifterData;
};

class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    MainWindow(MainServices services, Prompter& prompter, const Clock& clock, QSettings& settings);
    ~MainWindow() override;

    // A sealed file asks for its passphrase first, and nothing is open yet.
    // When the book can't be opened, the first page says why; when its file is there and can't be used, the page of recovery.
    bool openBook(const QString& path);
    void closeBook();
    [[nodiscard]] Book* book() const { return m_book.get(); }
    [[nodiscard]] BookView* view() const { return m_view; }
    [[nodiscard]] const ReviewStore* reviews() const { return m_reviews.get(); }
    [[nodiscard]] ScreenLock& screenLock() const { return *m_lock; }
    [[nodiscard]] QAction* action(const QString& id) const;
    // Nothing is being read or computed: what is to be seen is there.
    [[nodiscard]] bool isSettled() const;
    void perform(const QString& id);
    // Brings in a logbook file, as dropping it on the window does.
    void importFile(const QString& path);
    // Puts a backup in the place of a book, opened or not, and opens it.
    void restore(const RestoreWish& wish);
    // Null when none are made.
    [[nodiscard]] BackupKeeper* backups() const { return m_backups.get(); }

Q_SIGNALS:
    void settled();

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void makeActions();
    void makeMenus();
    void updateActions();
    [[nodiscard]] bool isPossible(const ActionRow& row) const;
    void performShell(const QString& id);
    void undoOrRedo(bool undo);
    void beginBackups();
    void makeBook(bool sample, bool thenImport);
    void openExisting();
    void recover(const QString& path, const Error& error);
    void unseal(const QString& path);
    void addLifter();
    void openLifterData(std::optional<Id<Athlete>> athlete, const QString& receipt);
    void erase(const EraseWish& wish);
    void learn();
    void openRules();
    void choose(Caution caution);
    void lockScreen();
    void openLockSettings(bool thenLock);
    void retitle();
    void showInitials(bool initials);
    void remember(const QString& path);
    [[nodiscard]] QStringList recentBooks() const;
    void saveLayout();
    void checkSettled();

    MainServices m_services;
    Prompter& m_prompter;
    const Clock& m_clock;
    QSettings& m_settings;
    std::map<QString, QAction*> m_actions;
    std::unique_ptr<Book> m_book;
    std::unique_ptr<JobRunner> m_jobs;
    std::unique_ptr<ReviewStore> m_reviews;
    std::unique_ptr<BackupKeeper> m_backups;
    std::unique_ptr<UiContext> m_context;
    QStackedWidget* m_layers;
    FirstRunPage* m_first;
    RecoveryPage* m_recovery;
    StatusLine* m_status;
    ScreenLock* m_lock;
    BookView* m_view = nullptr;
    JobHandle m_learning;
};

}  // namespace steelyard
