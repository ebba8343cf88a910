#include "ui/shell/main_window.h"

#include "core/care/sealed_file.h"
#include "ui/format/people.h"
#include "ui/pages/first_run/first_run_page.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/action_finder.h"
#include "ui/shell/add_lifter_dialog.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/book_copying.h"
#include "ui/shell/book_view.h"
#include "ui/shell/help_dialogs.h"
#include "ui/shell/learning.h"
#include "ui/shell/lock_dialog.h"
#include "ui/shell/privacy_deeds.h"
#include "ui/shell/opened_book.h"
#include "ui/shell/roster_pane.h"
#include "ui/shell/rule_dialog.h"
#include "ui/shell/status_line.h"
#include "ui/widgets/ampersands.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QMimeData>
#include <QtCore/QSettings>
#include <QtCore/QStandardPaths>
#include <QtGui/QAction>
#include <QtGui/QCloseEvent>
#include <QtGui/QDragEnterEvent>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kMostRecentBooks = 6;
const QString kInitialsSetting = QStringLiteral("view/initials");

}  // namespace

MainWindow::MainWindow(MainServices services, Prompter& prompter, const Clock& clock, QSettings& settings)
    : m_services(std::move(services)),
      m_prompter(prompter),
      m_clock(clock),
      m_settings(settings),
      m_jobs(std::make_unique<JobRunner>()),
      m_layers(new QStackedWidget(this)),
      m_first(new FirstRunPage(this)),
      m_recovery(new RecoveryPage({prompter, *m_jobs, m_services.recovery}, this)),
      m_status(new StatusLine(*m_jobs, this))
{
    auto* central = new QWidget(this);
    m_lock = new ScreenLock(*this, central, settings, *m_jobs);
    auto* column = new QVBoxLayout(central);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_layers, 1);
    column->addWidget(m_status);
    m_layers->addWidget(m_first);
    m_layers->addWidget(m_recovery);
    setCentralWidget(m_lock->curtain());
    setAcceptDrops(true);
    makeActions();
    makeMenus();
    connect(m_first, &FirstRunPage::actionRequested, this, &MainWindow::perform);
    connect(m_first, &FirstRunPage::bookRequested, this, &MainWindow::openBook);
    connect(m_recovery, &RecoveryPage::bookRequested, this, &MainWindow::openBook);
    connect(m_recovery, &RecoveryPage::closed, this, [this] { m_layers->setCurrentWidget(m_first); });
    connect(m_jobs.get(), &JobRunner::changed, this, &MainWindow::checkSettled);
    connect(m_lock, &ScreenLock::changed, this, &MainWindow::retitle);
    m_first->setRecentBooks(recentBooks());
    retitle();
    resize(1366, 768);
    restoreGeometry(m_settings.value(QStringLiteral("window/geometry")).toByteArray());
    updateActions();
    m_lock->lock();
}

MainWindow::~MainWindow()
{
    closeBook();
    delete std::exchange(m_lock, nullptr);  // before the jobs that it asks
    m_jobs.reset();
}

void MainWindow::makeActions()
{
    for (const ActionRow& row : actionTable()) {
        auto* action = new QAction(row.text, this);
        action->setObjectName(row.id);
        action->setMenuRole(QAction::NoRole);
        QList<QKeySequence> keys;
        for (const QString& key : row.shortcut.split(QLatin1Char(';'), Qt::SkipEmptyParts))
            keys.push_back(QKeySequence(key));
        action->setShortcuts(keys);
        connect(action, &QAction::triggered, this, [this, id = row.id] { perform(id); });
        m_actions.emplace(row.id, action);
    }
}

void MainWindow::makeMenus()
{
    std::map<ActionMenu, QMenu*> menus;
    for (const ActionRow& row : actionTable()) {
        QMenu*& menu = menus[row.menu];
        if (!menu) menu = menuBar()->addMenu(menuTitle(row.menu));
        if (row.separated) menu->addSeparator();
        menu->addAction(action(row.id));
    }
}

QAction* MainWindow::action(const QString& id) const
{
    return m_actions.at(id);
}

bool MainWindow::isPossible(const ActionRow& row) const
{
    if ((row.needs & NeedsBook) && !m_book) return false;
    if ((row.needs & NeedsWritable) && (!m_book || m_book->isReadOnly())) return false;
    if ((row.needs & NeedsLifter) && (!m_view || !m_view->hasLifter())) return false;
    if (!row.where.isEmpty())
        return m_view && m_view->currentPage()->key() == row.where && m_view->currentPage()->canPerform(row.id);
    if (row.id == QLatin1StringView("edit.undo")) return m_book->history().canUndo();
    if (row.id == QLatin1StringView("edit.redo")) return m_book->history().canRedo();
    if (row.id == QLatin1StringView("roster.learn")) return !m_learning.isRunning();
    if (row.id == QLatin1StringView("book.import")) return static_cast<bool>(m_services.openImport);
    if (row.id == QLatin1StringView("book.paste")) return static_cast<bool>(m_services.openPaste);
    if (row.id == QLatin1StringView("book.backups")) return m_backups && m_services.openBackups;
    if (row.id == QLatin1StringView("help.diagnosis")) return static_cast<bool>(m_services.diagnose);
    if (row.id == QLatin1StringView("book.forget")) return m_services.secrets != nullptr;
    if (row.id == QLatin1StringView("roster.data")) return static_cast<bool>(m_services.openLifterData);
    if (row.id == QLatin1StringView("book.sample")) return static_cast<bool>(m_services.makeSampleClub);
    if (row.menu == ActionMenu::View && m_view && findAction(row.id)->needs == NeedsBook && !row.separated)
        return m_view->hasPlace(row.id.mid(5));
    return true;
}

void MainWindow::updateActions()
{
    for (const ActionRow& row : actionTable()) action(row.id)->setEnabled(isPossible(row));
    const Caution caution = m_book ? chosenCaution(*m_book) : Caution::Usual;
    for (const CautionAction& row : kCautionActions) {
        QAction* choice = action(QString::fromLatin1(row.id));
        choice->setCheckable(true);
        choice->setChecked(m_book && caution == row.caution);
    }
    action(QStringLiteral("view.initials"))->setCheckable(true);
    action(QStringLiteral("view.initials"))->setChecked(m_book && format::arePeopleInitials());
    const bool undo = m_book && m_book->history().canUndo();
    const bool redo = m_book && m_book->history().canRedo();
    action(QStringLiteral("edit.undo"))
        ->setText(undo ? tr("&Undo: %1").arg(keepingAmpersands(format::people(m_book->history().undoLabel())))
                       : tr("&Undo"));
    action(QStringLiteral("edit.redo"))
        ->setText(redo ? tr("&Redo: %1").arg(keepingAmpersands(format::people(m_book->history().redoLabel())))
                       : tr("&Redo"));
}

void MainWindow::perform(const QString& id)
{
    if (m_lock->isLocked()) return;
    if (const ActionRow* row = findAction(id); row && !isPossible(*row)) return;
    if (m_services.note) m_services.note(id);
    if (m_view && m_view->perform(id)) return;
    performShell(id);
}

void MainWindow::performShell(const QString& id)
{
    const auto is = [&](const char* name) { return id == QLatin1StringView(name); };
    const auto say = [this](const QString& text) { m_status->say(text); };
    if (is("book.new")) makeBook(false, false);
    if (is("book.sample")) makeBook(true, false);
    if (is("book.importNew")) makeBook(false, true);
    if (is("book.open")) openExisting();
    if (is("book.import")) m_services.openImport(*m_context, {}, this);
    if (is("book.paste")) m_services.openPaste(*m_context, m_view->roster()->chosen(), this);
    if (is("book.copy")) saveCopy(*m_context, m_view, [this](const QString& text) { m_status->say(text); });
    if (is("book.backups"))
        m_services.openBackups(
            *m_context, [this](const RestoreWish& wish) { restore(wish); }, this);
    if (is("book.close")) closeBook();
    if (is("book.lock")) lockScreen();
    if (is("book.lockSettings")) openLockSettings(false);
    if (is("book.forget")) forgetPassphrase(*m_context, this, say);
    if (is("book.quit")) close();
    if (is("edit.undo")) undoOrRedo(true);
    if (is("edit.redo")) undoOrRedo(false);
    if (is("roster.add")) addLifter();
    if (is("roster.data")) openLifterData(m_view->roster()->chosen(), {});
    if (is("roster.learn")) learn();
    if (is("roster.rules")) openRules();
    for (const CautionAction& row : kCautionActions)
        if (is(row.id)) choose(row.caution);
    if (is("view.initials")) showInitials(!format::arePeopleInitials());
    if (is("view.refresh")) {
        m_view->roster()->setOrder(m_view->roster()->order());
        m_reviews->refreshAll();
    }
    if (is("view.cancel")) m_status->stopRunning();
    if (is("help.find")) {
        std::vector<QAction*> all;
        for (const ActionRow& row : actionTable()) all.push_back(action(row.id));
        (new ActionFinder(all, this))->open();
    }
    if (is("help.keys")) makeKeyList(this)->show();
    if (is("help.guide")) makeGuide(this, m_view ? m_view->currentPage()->key() : QString())->show();
    if (is("help.diagnosis")) saveDiagnosis(m_prompter, this, m_services.diagnose(m_book.get(), m_settings), say);
    if (is("help.about")) makeAbout(this)->show();
}

void MainWindow::choose(Caution caution)
{
    const auto said = chooseCaution(*m_book, caution);
    if (said)
        m_status->say(*said);
    else
        m_prompter.tellError(this, tr("The setting could not be changed"), said.error());
    updateActions();
}

void MainWindow::lockScreen()
{
    if (m_lock->canLock())
        m_lock->lock();
    else
        openLockSettings(true);
}

void MainWindow::openLockSettings(bool thenLock)
{
    auto* dialog = new LockDialog(*m_lock, *m_jobs, this);
    if (thenLock) connect(dialog, &LockDialog::passphraseSet, m_lock, &ScreenLock::lock);
    dialog->show();
}

void MainWindow::retitle()
{
    // A book may well be called by somebody's name.
    const bool named = m_book && !m_lock->isLocked() && !format::arePeopleInitials();
    setWindowTitle(named ? tr("%1 — Steelyard").arg(QFileInfo(m_book->path()).completeBaseName()) : tr("Steelyard"));
}

void MainWindow::showInitials(bool initials)
{
    m_settings.setValue(kInitialsSetting, initials);
    m_view->showInitials(initials);
    m_status->showInitials(initials);
    retitle();
    updateActions();
}

void MainWindow::undoOrRedo(bool undo)
{
    const QString label = format::people(undo ? m_book->history().undoLabel() : m_book->history().redoLabel());
    const auto done = undo ? m_book->history().undo() : m_book->history().redo();
    if (!done)
        m_prompter.tellError(this, undo ? tr("This could not be undone") : tr("This could not be redone"),
                             done.error());
    else
        m_status->say(undo ? tr("Undone: %1").arg(label) : tr("Redone: %1").arg(label));
    updateActions();
}

void MainWindow::makeBook(bool sample, bool thenImport)
{
    const auto& make = sample ? m_services.makeSampleClub : m_services.makeEmptyBook;
    if (!make) {
        m_first->say(tr("This build can't do that."));
        return;
    }
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QString name = sample ? tr("Sample club") : tr("My club");
    const FileQuestion question{tr("Where should the book be kept?"),
                                QDir(folder).filePath(name + QStringLiteral(".steelyard")), tr("Books (*.steelyard)"),
                                QStringLiteral("steelyard")};
    m_prompter.chooseFileToSave(this, question, [this, make, sample, thenImport](const QString& path) {
        m_jobs->run(
            this, sample ? tr("Making the sample club") : tr("Making the book"),
            [make, path](const Progress& progress) { return make(path, progress); },
            [this, path, thenImport](const Result<void>& made) {
                if (!made) {
                    m_first->say(made.error().what);
                    if (m_view) m_prompter.tellError(this, tr("The book could not be made"), made.error());
                } else if (openBook(path) && thenImport) {
                    perform(QStringLiteral("book.import"));
                }
            });
    });
}

void MainWindow::openExisting()
{
    m_prompter.chooseFileToOpen(this, {tr("Open a book"), {}, tr("Books and sealed files (*.steelyard *.sealed)"), {}},
                                [this](const QString& path) { openBook(path); });
}

void MainWindow::addLifter()
{
    QStringList groups;
    if (const auto athletes = m_book->athletes().all())
        for (const auto& athlete : *athletes)
            if (!athlete.value.group.isEmpty() && !groups.contains(athlete.value.group)) groups << athlete.value.group;
    auto* dialog = new AddLifterDialog(*m_book, groups, this);
    connect(dialog, &AddLifterDialog::added, this, [this](const QString& name) { m_view->chooseLifter(name); });
    dialog->open();
}

void MainWindow::openRules()
{
    auto* dialog = new RuleDialog(*m_book, this);
    connect(dialog, &RuleDialog::failed, this,
            [this](const Error& error) { m_prompter.tellError(this, tr("The setting could not be changed"), error); });
    connect(dialog, &QDialog::finished, this, &MainWindow::updateActions);
    dialog->open();
}

void MainWindow::learn()
{
    // The view is the owner: a book that is closed meanwhile hears nothing more of it.
    m_learning = learnFromRoster(*m_context, m_view, [this](const QString& text) {
        m_status->say(text);
        updateActions();
    });
    updateActions();
}

void MainWindow::recover(const QString& path, const Error& error)
{
    m_layers->setCurrentWidget(m_recovery);
    m_recovery->show(path, error);
}

bool MainWindow::openBook(const QString& path)
{
    if (const auto sealed = isSealedFile(path); sealed && *sealed) {
        unseal(path);
        return false;
    }
    auto opened = Book::open(path, m_clock);
    if (!opened) {
        m_first->say(opened.error().what);
        if (m_view) {
            m_prompter.tellError(this, tr("The book could not be opened"), opened.error());
        } else if (RecoveryPage::isFor(path, opened.error())) {
            recover(path, opened.error());
        }
        return false;
    }
    closeBook();
    m_book = std::move(*opened);
    m_reviews = std::make_unique<ReviewStore>(*m_book, m_clock, *m_jobs, m_services.reviewer);
    beginBackups();
    m_context = std::make_unique<UiContext>(UiContext{*m_book, *m_reviews, m_prompter, m_clock, *m_jobs, &m_settings,
                                                      m_backups.get(), m_services.secrets.get()});
    format::callPeople(m_settings.value(kInitialsSetting, false).toBool(), {});
    m_status->showInitials(format::arePeopleInitials());
    m_view = new BookView(*m_context, this);
    m_view->restoreLayout(m_settings.value(QStringLiteral("window/roster")).toByteArray());
    m_layers->addWidget(m_view);
    m_layers->setCurrentWidget(m_view);
    connect(m_view, &BookView::actionsChanged, this, &MainWindow::updateActions);
    connect(m_view, &BookView::actionRequested, this, &MainWindow::perform);
    connect(m_view, &BookView::said, m_status, &StatusLine::say);
    connect(m_reviews.get(), &ReviewStore::reviewsChanged, this, &MainWindow::updateActions);
    connect(m_reviews.get(), &ReviewStore::reviewsChanged, this, &MainWindow::checkSettled);
    connect(m_reviews.get(), &ReviewStore::reviewFailed, this,
            [this](const Error& error) { m_status->say(tr("The records could not be read: %1").arg(error.what)); });
    m_status->say(standingOf(*m_book));
    retitle();
    remember(path);
    m_view->currentPage()->takeFocus();
    m_reviews->refreshAll();
    lookOver(*m_jobs, this, path, [this, path](const Error& error) {
        if (!m_book || m_book->path() != path) return;
        closeBook();
        recover(path, error);
    });
    updateActions();
    return true;
}

void MainWindow::closeBook()
{
    if (!m_book) return;
    saveLayout();
    for (const JobHandle& job : m_jobs->running()) job.cancel();
    delete std::exchange(m_view, nullptr);
    m_context.reset();
    m_backups.reset();
    m_status->setNote({}, {});
    m_reviews.reset();
    m_book.reset();
    m_first->say({});
    m_first->setRecentBooks(recentBooks());
    m_layers->setCurrentWidget(m_first);
    format::callPeople(false, {});
    m_status->showInitials(false);
    retitle();
    m_status->say({});
    updateActions();
}

QStringList MainWindow::recentBooks() const
{
    QStringList paths = m_settings.value(QStringLiteral("books/recent")).toStringList();
    paths.removeIf([](const QString& path) { return !QFileInfo::exists(path); });
    return paths;
}

void MainWindow::remember(const QString& path)
{
    QStringList paths = recentBooks();
    const QString whole = QFileInfo(path).absoluteFilePath();
    paths.removeAll(whole);
    paths.prepend(whole);
    m_settings.setValue(QStringLiteral("books/recent"), paths.mid(0, kMostRecentBooks));
}

void MainWindow::saveLayout()
{
    m_settings.setValue(QStringLiteral("window/geometry"), saveGeometry());
    if (m_view) m_settings.setValue(QStringLiteral("window/roster"), m_view->layoutState());
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    saveLayout();
    QMainWindow::closeEvent(event);
}

void MainWindow::importFile(const QString& path)
{
    if (!m_lock->isLocked() && isPossible(*findAction(QStringLiteral("book.import"))))
        m_services.openImport(*m_context, path, this);
}

// A book is opened, anything else is a logbook for the book that is open.
void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    const QList<QUrl> urls = event->mimeData()->urls();
    if (!m_lock->isLocked() && !urls.isEmpty() && urls.front().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    const QString path = event->mimeData()->urls().value(0).toLocalFile();
    if (path.endsWith(QStringLiteral(".steelyard")) || path.endsWith(QStringLiteral(".sealed")))
        openBook(path);
    else if (!path.isEmpty() && m_book)
        importFile(path);
    else
        m_first->say(tr("Open a book first, or make one; then drop the logbook here again."));
}

bool MainWindow::isSettled() const
{
    return m_jobs->running().empty() && (!m_reviews || m_reviews->isReady());
}

void MainWindow::checkSettled()
{
    if (isSettled()) Q_EMIT settled();
}

}  // namespace steelyard
