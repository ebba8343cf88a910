#include "app/desktop/composition.h"

#include "core/care/book_restore.h"
#include "core/care/backup_shelf.h"
#include "app/keychain/system_keychain.h"
#include "core/book/book.h"
#include "core/care/diagnosis.h"
#include "core/care/event_log.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "ui/pages/care/backups_page.h"
#include "ui/pages/care/lifter_data_page.h"
#include "ui/pages/import/book_importer.h"
#include "ui/pages/import/import_page.h"
#include "ui/pages/import/paste_page.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/context.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QScreen>
#include <QtWidgets/QApplication>
#include <QtWidgets/QStyle>
#include <QtWidgets/QVBoxLayout>
#include <QtWidgets/QWidget>

#include <memory>

namespace steelyard {
namespace {

constexpr int kLogLinesSaid = 300;

// A window of its own, not a modal box: the review stays usable while a logbook is looked through.
QWidget* makeWindow(QWidget* parent, const QString& title)
{
    auto* window = new QWidget(parent, Qt::Window);
    window->setAttribute(Qt::WA_DeleteOnClose);
    window->setWindowTitle(title);
    window->resize(1140, 720);
    new QVBoxLayout(window);
    return window;
}

// For a book that can't be opened.
RecoveryServices makeRecovery(const Clock& clock)
{
    RecoveryServices recovery;
    recovery.newestGoodBackup = [&clock](const QString& book,
                                         const Progress& progress) -> Result<std::optional<KnownBackup>> {
        STEELYARD_TRY(const auto good, BackupShelf(BackupShelf::usualFolder(book), clock).newestGood(progress));
        return good ? std::optional(KnownBackup{good->path, good->madeAt}) : std::nullopt;
    };
    recovery.restore = [&clock](const QString& book, const QString& backup, const Progress& progress) -> Result<void> {
        STEELYARD_TRY(const StagedBook staged, stageRestore({.book = book, .from = backup}, clock, progress));
        return finishRestore(staged, BackupShelf(BackupShelf::usualFolder(book), clock), clock)
            .map([](const RestoredBook&) {});
    };
    return recovery;
}

DiagnosisSurroundings surroundings()
{
    DiagnosisSurroundings around{QStringLiteral(STEELYARD_VERSION), {}, QApplication::style()->name()};
    for (const QScreen* screen : QGuiApplication::screens())
        around.screens << QStringLiteral("%1 x %2, scale %3")
                              .arg(screen->geometry().width())
                              .arg(screen->geometry().height())
                              .arg(screen->devicePixelRatio());
    return around;
}

}  // namespace

MainServices makeServices(const Clock& clock, EventLog& log)
{
    MainServices services;
    services.secrets = std::make_shared<SystemKeychain>();
    services.note = [&log](const QString& action) { log.write(u"action", action); };
    services.diagnose = [&log](Book* book, const QSettings& settings) {
        return diagnosisOf(book ? &book->database() : nullptr, surroundings(), settings, log.lastLines(kLogLinesSaid));
    };
    services.reviewer = reviewRoster;
    services.makeEmptyBook = [&clock](const QString& path, const Progress&) -> Result<void> {
        STEELYARD_CHECK(newBook(path, clock));
        return {};
    };
    services.makeSampleClub = [&clock](const QString& path, const Progress& progress) -> Result<void> {
        STEELYARD_TRY(const auto book, newBook(path, clock));
        return fillSampleClub(*book, {.lastDay = clock.today()}, progress);
    };
    services.openImport = [](const UiContext& context, const QString& path, QWidget* parent) {
        QWidget* window = makeWindow(parent, QCoreApplication::translate("Composition", "Import a logbook"));
        auto importer = std::make_shared<BookImporter>(context.book, context.jobs, context.backups);
        auto* page = new ImportPage(
            {importer, context.prompter, context.jobs, context.settings, context.book.path(), context.clock.today()},
            window);
        window->layout()->addWidget(page);
        QObject::connect(page, &ImportPage::closed, window, &QWidget::close);
        window->show();
        if (path.isEmpty())
            page->chooseFile();
        else
            page->openFile(path);
    };
    services.openPaste = [](const UiContext& context, std::optional<Id<Athlete>> athlete, QWidget* parent) {
        QWidget* window = makeWindow(parent, QCoreApplication::translate("Composition", "Bring in sets as text"));
        auto* page = new PastePage(context, athlete, window);
        window->layout()->addWidget(page);
        QObject::connect(page, &PastePage::closed, window, &QWidget::close);
        window->show();
        page->takeFocus();
    };
    services.recovery = makeRecovery(clock);
    services.backupFolder = &BackupShelf::usualFolder;
    services.openBackups = [](const UiContext& context, const MainServices::Restore& restore, QWidget* parent) {
        QWidget* window = makeWindow(parent, QCoreApplication::translate("Composition", "Backups"));
        auto* page = new BackupsPage(context, window);
        window->layout()->addWidget(page);
        QObject::connect(page, &BackupsPage::closed, window, &QWidget::close);
        QObject::connect(page, &BackupsPage::restoreRequested, window, [window, restore](const RestoreWish& wish) {
            window->close();
            restore(wish);
        });
        // With the book, what the page shows is gone.
        QObject::connect(context.backups, &QObject::destroyed, window, [window] { delete window; });
        window->show();
        page->takeFocus();
    };
    services.openLifterData = [](const UiContext& context, const LifterDataStart& start, QWidget* parent) {
        QWidget* window = makeWindow(parent, QCoreApplication::translate("Composition", "One lifter's data"));
        auto* page = new LifterDataPage(context, start, window);
        window->layout()->addWidget(page);
        QObject::connect(page, &LifterDataPage::closed, window, &QWidget::close);
        // With the book, what the page shows is gone.
        QObject::connect(&context.reviews, &QObject::destroyed, window, [window] { delete window; });
        window->show();
        page->takeFocus();
    };
    return services;
}

}  // namespace steelyard
