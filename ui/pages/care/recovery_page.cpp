#include "ui/pages/care/recovery_page.h"

#include "core/care/salvage.h"
#include "ui/format/format.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/theme.h"
#include "ui/widgets/choice_row.h"
#include "ui/widgets/elided_label.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtGui/QKeyEvent>

namespace steelyard {
namespace {

QLabel* makeParagraph(QWidget* parent, const QString& name)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setObjectName(name);
    return label;
}

QString momentOf(const KnownBackup& backup)
{
    const QDateTime local = backup.madeAt.toLocalTime();
    return QStringLiteral("%1, %2").arg(format::date(local.date()),
                                        QLocale().toString(local.time(), QLocale::ShortFormat));
}

}  // namespace

RecoveryPage::RecoveryPage(Surroundings surroundings, QWidget* parent)
    : QWidget(parent), m_with(std::move(surroundings)), m_file(new ElidedLabel(this))
{
    auto* middle = new QWidget(this);
    middle->setMaximumWidth(fontMetrics().averageCharWidth() * 120);
    auto* column = new QVBoxLayout(middle);
    column->setSpacing(14);
    auto* title = makeParagraph(middle, QStringLiteral("recoveryTitle"));
    title->setText(tr("This book can't be opened"));
    QFont font = title->font();
    font.setPointSizeF(font.pointSizeF() * 1.6);
    title->setFont(font);
    m_wrong = makeParagraph(middle, QStringLiteral("recoveryWrong"));
    auto* meaning = makeParagraph(middle, QStringLiteral("recoveryMeaning"));
    meaning->setText(
        tr("Nothing was changed. Whatever you choose here, the file stays as it is, or is set aside whole."));
    m_result = makeParagraph(middle, QStringLiteral("recoveryResult"));
    m_result->hide();
    column->addStretch(1);
    for (QWidget* widget : std::initializer_list<QWidget*>{title, m_file, m_wrong, meaning}) column->addWidget(widget);
    column->addSpacing(10);
    m_backupWords = makeParagraph(middle, QStringLiteral("recoveryBackup"));
    m_restore = addChoice(column, tr("Restore a backu&p"), m_backupWords);
    m_save = addChoice(column, tr("&Save what can be saved…"),
                       tr("Reads every record that is still readable into a new book, and says what is missing."));
    m_copy =
        addChoice(column, tr("Open a &copy…"),
                  tr("Copies the file as it is to another place and opens it there: for a folder or a disk that can "
                     "only be read."));
    m_leave = addChoice(column, tr("Leave &it"), tr("Goes back. Another book can be opened there. (Esc)"));
    column->addWidget(m_result);
    m_open = new QPushButton(tr("&Open the saved book"), middle);
    m_open->hide();
    column->addWidget(m_open, 0, Qt::AlignLeft);
    column->addStretch(2);
    auto* layout = new QHBoxLayout(this);
    layout->addStretch(1);
    layout->addWidget(middle, 4);
    layout->addStretch(1);
    m_restore->setObjectName(QStringLiteral("recoveryRestore"));
    m_save->setObjectName(QStringLiteral("recoverySave"));
    m_copy->setObjectName(QStringLiteral("recoveryCopy"));
    m_leave->setObjectName(QStringLiteral("recoveryLeave"));
    m_open->setObjectName(QStringLiteral("recoveryOpen"));
    connect(m_restore, &QPushButton::clicked, this, &RecoveryPage::restore);
    connect(m_save, &QPushButton::clicked, this, &RecoveryPage::save);
    connect(m_copy, &QPushButton::clicked, this, &RecoveryPage::openCopy);
    connect(m_leave, &QPushButton::clicked, this, &RecoveryPage::closed);
    connect(m_open, &QPushButton::clicked, this, [this] { Q_EMIT bookRequested(m_saved); });
}

bool RecoveryPage::isFor(const QString& path, const Error& error)
{
    return error.code == ErrorCode::Storage && QFileInfo(path).isFile();
}

void RecoveryPage::show(const QString& path, const Error& error)
{
    m_path = path;
    m_backup.reset();
    m_saved.clear();
    m_file->setText(QDir::toNativeSeparators(path));
    m_wrong->setText(error.what);
    m_wrong->setToolTip(format::plainToolTip(error.detail));
    m_result->hide();
    m_open->hide();
    wait(false);
    lookForBackup();
    QWidget::show();
    m_leave->setFocus();
}

void RecoveryPage::lookForBackup()
{
    m_restore->setEnabled(false);
    if (!m_with.services.newestGoodBackup || !m_with.services.restore)
        return m_backupWords->setText(tr("No backup of this book is known here."));
    m_backupWords->setText(tr("Looking for the newest good backup…"));
    m_with.jobs.run(
        this, tr("Looking for a backup"),
        [find = m_with.services.newestGoodBackup, path = m_path](const Progress& progress) {
            return find(path, progress);
        },
        [this, path = m_path](const Result<std::optional<KnownBackup>>& found) {
            if (path == m_path) offerBackup(found);
        });
}

void RecoveryPage::offerBackup(const Result<std::optional<KnownBackup>>& found)
{
    if (!found) return m_backupWords->setText(tr("The backups could not be looked at: %1").arg(found.error().what));
    m_backup = *found;
    m_restore->setEnabled(m_backup && !m_running.isRunning());
    m_backupWords->setText(
        m_backup ? tr("The newest good backup is of %1. What was typed after that is not in it; the damaged "
                      "file is set aside, so that it can still be searched.")
                       .arg(momentOf(*m_backup))
                 : tr("There is no good backup of this book."));
}

void RecoveryPage::restore()
{
    if (!m_backup) return;
    wait(true);
    m_running = m_with.jobs.run(
        this, tr("Restoring the backup"),
        [restore = m_with.services.restore, path = m_path, backup = m_backup->path](const Progress& progress) {
            return restore(path, backup, progress);
        },
        [this](const Result<void>& done) {
            wait(false);
            if (done)
                Q_EMIT bookRequested(m_path);
            else
                say(done.error().what, true);
        });
}

QString RecoveryPage::besideTheBook(const QString& name) const
{
    const QFileInfo book(m_path);
    return book.dir().filePath(name.arg(book.completeBaseName()) + QStringLiteral(".steelyard"));
}

void RecoveryPage::save()
{
    m_with.prompter.chooseFileToSave(this,
                                     {tr("Where should the new book be kept?"), besideTheBook(tr("%1 (saved)")),
                                      tr("Books (*.steelyard)"), QStringLiteral("steelyard")},
                                     [this](const QString& path) { saveTo(path); });
}

void RecoveryPage::saveTo(const QString& path)
{
    wait(true);
    m_running = m_with.jobs.run(
        this, tr("Saving what can be saved"),
        [from = m_path, path](const Progress& progress) { return salvageBook(from, path, progress); },
        [this, path](const Result<SalvageReport>& report) {
            wait(false);
            if (!report) return say(report.error().what, true);
            const QString head = report->anythingLost() ? tr("A new book holds what could be read:")
                                                        : tr("A new book holds everything; nothing is missing:");
            say(head + u'\n' + salvageLines(*report).join(u'\n'), false);
            m_saved = path;
            m_open->show();
            m_open->setFocus();
        });
}

void RecoveryPage::openCopy()
{
    m_with.prompter.chooseFileToSave(this,
                                     {tr("Where should the copy be put?"), besideTheBook(tr("%1 (copy)")),
                                      tr("Books (*.steelyard)"), QStringLiteral("steelyard")},
                                     [this](const QString& path) { copyTo(path); });
}

void RecoveryPage::copyTo(const QString& path)
{
    wait(true);
    m_running = m_with.jobs.run(
        this, tr("Copying the file"), [from = m_path, path](const Progress&) { return copyAsItIs(from, path); },
        [this, path](const Result<void>& done) {
            wait(false);
            if (done)
                Q_EMIT bookRequested(path);
            else
                say(done.error().what, true);
        });
}

void RecoveryPage::say(const QString& text, bool bad)
{
    QPalette colours = palette();
    if (bad) colours.setColor(QPalette::WindowText, themeColours(colours).alarm);
    m_result->setPalette(colours);
    m_result->setText(text);
    m_result->show();
}

void RecoveryPage::wait(bool busy)
{
    for (QPushButton* button : {m_save, m_copy, m_leave}) button->setEnabled(!busy);
    m_restore->setEnabled(!busy && m_backup.has_value());
}

void RecoveryPage::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
    if (m_running.isRunning())
        m_running.cancel();
    else
        Q_EMIT closed();
}

}  // namespace steelyard
