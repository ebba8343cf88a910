#include "ui/pages/care/backups_page.h"

#include "core/book/book.h"
#include "ui/format/format.h"
#include "ui/pages/care/backups_model.h"
#include "ui/pages/care/restore_panel.h"
#include "ui/pages/care/seal_panel.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/privacy_deeds.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/words.h"

#include <QtCore/QFileInfo>
#include <QtCore/QSettings>
#include <QtGui/QKeyEvent>
#include <QtGui/QShortcut>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

using BackupStates = std::vector<std::pair<qint64, BackupState>>;

// The keychain, if something was ever remembered in it: else it isn't asked, because it may ask its owner to unlock it.
SecretStore* rememberedBy(const UiContext& context)
{
    return context.settings && context.settings->value(kKeychainInUse, false).toBool() ? context.secrets : nullptr;
}

}  // namespace

BackupsPage::BackupsPage(const UiContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_model(new BackupsModel(this)),
      m_table(makeTable()),
      m_empty(quietWords(this)),
      m_list(new QStackedWidget(this)),
      m_side(new QStackedWidget(this)),
      m_restore(new RestorePanel(context.book.path(), context.jobs, context.clock, rememberedBy(context), this)),
      m_seal(new SealPanel(context, sealedCopyOfBook(context), this))
{
    constexpr int sideWidth = 400;
    auto* intro = quietWords(this);
    intro->setText(
        tr("Whole copies of this book on this computer, newest first. One is made on every day you work, and "
           "before imports, restoring, erasing and changes of many sets. Kept are the last of seven days, "
           "four weeks and twelve months, and the ten newest that were made for a reason."));
    m_empty->setText(
        tr("There is no backup of this book yet. The first one comes by itself; “Make one now” doesn't wait."));
    m_empty->setAlignment(Qt::AlignCenter);
    m_list->addWidget(m_table);
    m_list->addWidget(m_empty);
    m_side->addWidget(m_restore);
    m_side->addWidget(m_seal);
    m_side->setFixedWidth(sideWidth);
    auto* middle = new QHBoxLayout;
    middle->setSpacing(24);
    middle->addWidget(m_list, 1);
    middle->addWidget(m_side);
    auto* all = new QVBoxLayout(this);
    all->setSpacing(10);
    all->addWidget(intro);
    all->addLayout(middle, 1);
    all->addLayout(makeSecond());
    all->addLayout(makeButtons());
    connect(m_context.backups, &BackupKeeper::shelfChanged, this, &BackupsPage::refill);
    connect(m_context.backups, &BackupKeeper::troubleChanged, this, &BackupsPage::showSecond);
    connect(m_restore, &RestorePanel::restoreRequested, this, &BackupsPage::askToRestore);
    connect(m_seal, &SealPanel::left, this, [this] { showSealing(false); });
    auto* leave = new QShortcut(QKeySequence(Qt::Key_Escape), this);
    connect(leave, &QShortcut::activated, this, &BackupsPage::leave);
    refill();
    showSecond();
}

BackupsPage::~BackupsPage()
{
    m_check.cancel();
}

QTableView* BackupsPage::makeTable()
{
    auto* table = new QTableView(this);
    table->setModel(m_model);
    table->setShowGrid(false);
    table->setFrameShape(QFrame::NoFrame);
    table->setWordWrap(false);
    table->setTabKeyNavigation(false);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 8 / 5);
    table->horizontalHeader()->setHighlightSections(false);
    const int room = fontMetrics().averageCharWidth() * 3;
    table->setColumnWidth(BackupsModel::Made,
                          fontMetrics().horizontalAdvance(format::moment(m_context.clock.nowUtc())) + room);
    table->setColumnWidth(BackupsModel::Size, fontMetrics().horizontalAdvance(QStringLiteral("888.8 MB")) + room);
    table->setColumnWidth(BackupsModel::State, BackupsModel::widestState(fontMetrics()) + room);
    table->horizontalHeader()->setSectionResizeMode(BackupsModel::Why, QHeaderView::Stretch);
    table->setAccessibleName(tr("Backups"));
    table->installEventFilter(this);
    connect(table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &BackupsPage::chosenChanged);
    return table;
}

QLayout* BackupsPage::makeSecond()
{
    auto* label = plainWords(this);
    label->setWordWrap(false);
    label->setText(tr("Second folder:"));
    m_second = new ElidedLabel(this);
    auto* choose = new QPushButton(tr("&Choose a second folder…"), this);
    choose->setToolTip(tr("On a stick, or on another disk: the newest backup is brought there whenever it can be"));
    m_noSecond = new QPushButton(tr("None an&y more"), this);
    connect(choose, &QPushButton::clicked, this, &BackupsPage::chooseSecond);
    connect(m_noSecond, &QPushButton::clicked, this, [this] {
        static_cast<void>(m_context.backups->chooseSecond({}));
        showSecond();
    });
    auto* row = new QHBoxLayout;
    row->addWidget(label);
    row->addWidget(m_second, 1);
    row->addWidget(choose);
    row->addWidget(m_noSecond);
    return row;
}

QLayout* BackupsPage::makeButtons()
{
    m_said = plainWords(this);
    m_now = new QPushButton(tr("Make one &now"), this);
    auto* file = new QPushButton(tr("Look into a &file…"), this);
    file->setToolTip(tr("A backup from a stick, a copy of a book, or a sealed file"));
    auto* seal = new QPushButton(tr("&Sealed copy…"), this);
    auto* close = new QPushButton(tr("Clos&e"), this);
    connect(m_now, &QPushButton::clicked, this, &BackupsPage::keepNow);
    connect(file, &QPushButton::clicked, this, &BackupsPage::chooseFile);
    connect(seal, &QPushButton::clicked, this, [this] { showSealing(true); });
    connect(close, &QPushButton::clicked, this, &BackupsPage::closed);
    auto* row = new QHBoxLayout;
    for (QWidget* part : std::initializer_list<QWidget*>{m_now, file, seal}) row->addWidget(part);
    row->addWidget(m_said, 1);
    row->addWidget(close);
    return row;
}

void BackupsPage::takeFocus()
{
    if (m_model->rowCount() > 0)
        m_table->setFocus(Qt::OtherFocusReason);
    else
        m_now->setFocus(Qt::OtherFocusReason);
}

bool BackupsPage::isSettled() const
{
    return !m_check.isRunning() && m_restore->isSettled() && !m_context.backups->isBusy();
}

// The one that was chosen stays chosen.
void BackupsPage::refill()
{
    const Backup* before = m_model->at(m_table->currentIndex().row());
    const qint64 number = before ? before->number : 0;
    m_filling = true;
    m_model->setBackups(m_context.backups->shelf().list());
    m_list->setCurrentIndex(m_model->rowCount() > 0 ? 0 : 1);
    const auto at = std::ranges::find(m_model->backups(), number, &Backup::number);
    const auto row = at == m_model->backups().end() ? 0 : at - m_model->backups().begin();
    m_table->setCurrentIndex(m_model->index(static_cast<int>(row), BackupsModel::Made));
    m_filling = false;
    checkAll();
}

void BackupsPage::checkAll()
{
    std::vector<Backup> unknown;
    for (const Backup& backup : m_model->backups())
        if (m_model->stateOf(backup.number) == BackupState::Unknown) unknown.push_back(backup);
    m_check.cancel();
    if (unknown.empty()) return;
    const auto work = [unknown, shelf = m_context.backups->shelf()](const Progress& progress) -> Result<BackupStates> {
        BackupStates states;
        for (const Backup& backup : unknown) {
            const auto checked = shelf.check(backup, progress);
            if (!checked && checked.error().code == ErrorCode::Cancelled) return fail(checked.error());
            states.emplace_back(backup.number, checked ? BackupState::Sound : BackupState::Changed);
        }
        return states;
    };
    m_check = m_context.jobs.run(this, tr("Checking the backups"), work, [this](const Result<BackupStates>& states) {
        if (!states) return;
        for (const auto& [number, state] : *states) m_model->setState(number, state);
    });
}

void BackupsPage::chosenChanged()
{
    const Backup* backup = m_model->at(m_table->currentIndex().row());
    if (!backup) return m_restore->show(std::nullopt);
    m_restore->show(RestorePanel::Source{
        backup->path, tr("%1, %2").arg(format::moment(backup->madeAt), backupReasonWords(backup->reason))});
    if (!m_filling) showSealing(false);
}

void BackupsPage::keepNow()
{
    m_now->setEnabled(false);
    m_said->setText(tr("Making a backup…"));
    m_context.backups->keep(BackupReason::Asked, this, [this](const Result<Backup>& made) {
        m_now->setEnabled(true);
        m_said->setText(made ? tr("Made, and checked.") : made.error().what);
        if (made) m_table->setCurrentIndex(m_model->index(0, BackupsModel::Made));
        takeFocus();
    });
}

void BackupsPage::chooseFile()
{
    m_context.prompter.chooseFileToOpen(this,
                                        {tr("Look into a backup"),
                                         m_context.backups->secondFolder(),
                                         tr("Books and sealed files (*.steelyard *.sealed *.before-*);;All files (*)"),
                                         {}},
                                        [this](const QString& path) {
                                            m_table->clearSelection();
                                            m_table->setCurrentIndex({});
                                            m_restore->show(RestorePanel::Source{path, QFileInfo(path).fileName()});
                                            showSealing(false);
                                        });
}

void BackupsPage::chooseSecond()
{
    m_context.prompter.chooseFolder(this,
                                    {tr("A second folder for backups"), m_context.backups->secondFolder(), {}, {}},
                                    [this](const QString& folder) {
                                        const auto chosen = m_context.backups->chooseSecond(folder);
                                        showSecond();
                                        if (!chosen) m_second->setText(chosen.error().what);
                                    });
}

void BackupsPage::showSecond()
{
    const QString folder = m_context.backups->secondFolder();
    const QString trouble = m_context.backups->troubleDetail();
    m_noSecond->setEnabled(!folder.isEmpty());
    if (folder.isEmpty())
        m_second->setText(tr("none. A stick that comes and goes will do: a disk that breaks takes all that is on it."));
    else
        m_second->setText(trouble.isEmpty() ? folder : trouble);
}

void BackupsPage::showSealing(bool sealing)
{
    m_side->setCurrentWidget(sealing ? static_cast<QWidget*>(m_seal) : m_restore);
    if (sealing)
        m_seal->takeFocus();
    else if (!m_table->hasFocus() && m_side->focusWidget() == nullptr)
        takeFocus();
}

void BackupsPage::leave()
{
    if (m_side->currentWidget() == m_seal)
        showSealing(false);
    else
        Q_EMIT closed();
}

void BackupsPage::askToRestore(const RestoreWish& wish, const Rehearsal& seen)
{
    const bool loses = !seen.loss || !seen.loss->none();
    m_context.prompter.ask(
        this,
        {tr("Restore this backup?"), tr("It takes the place of the open book."),
         loses ? tr(
             "What was entered since then is not in it. The book as it is now stays: as the newest backup, and as a "
             "file beside the book. The window closes the book for a moment.")
               : tr("Nothing that it lacks is in the book. The book as it is now stays as a file beside it."),
         tr("Restore it")},
        [this, wish] { Q_EMIT restoreRequested(wish); });
}

// Enter in the list is for the list.
bool BackupsPage::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            m_restore->look();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace steelyard
