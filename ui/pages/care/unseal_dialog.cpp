#include "ui/pages/care/unseal_dialog.h"

#include "core/care/book_restore.h"
#include "ui/prompt/prompter.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/passphrase_fields.h"
#include "ui/widgets/words.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QStandardPaths>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

// "club 2027-03-01.steelyard.sealed" was sealed out of a ".steelyard".
QString proposedBook(const QString& sealed)
{
    QString name = QFileInfo(sealed).fileName();
    for (const auto* ending : {".sealed", ".steelyard"})
        if (name.endsWith(QLatin1StringView(ending), Qt::CaseInsensitive))
            name.chop(static_cast<qsizetype>(qstrlen(ending)));
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return QDir(folder).filePath(name + QStringLiteral(".steelyard"));
}

Result<void> bookOutOf(const RestoreWish& wish, const Clock& clock, const Progress& progress)
{
    STEELYARD_TRY(const StagedBook staged, stageRestore(wish, clock, progress));
    const BackupShelf shelf(BackupShelf::usualFolder(wish.book), clock);
    STEELYARD_TRY([[maybe_unused]] const auto done, finishRestore(staged, shelf, clock));
    return {};
}

}  // namespace

UnsealDialog::UnsealDialog(Surroundings with, QWidget* parent)
    : QDialog(parent),
      m_with(std::move(with)),
      m_passphrase(new PassphraseFields({.is = PassphraseFields::Known}, this)),
      m_said(plainWords(this)),
      m_open(new QPushButton(tr("Open it as a &book…"), this))
{
    constexpr int width = 520;
    setWindowTitle(tr("A sealed file"));
    setAttribute(Qt::WA_DeleteOnClose);
    setMinimumWidth(width);
    auto* file = new ElidedLabel(this);
    file->setText(QDir::toNativeSeparators(m_with.sealed));
    auto* words = plainWords(this);
    words->setText(tr(
        "This file is sealed: a copy of a book, or one lifter's record. With its passphrase it becomes a book of its "
        "own, in a place that you choose. What is open now stays as it is."));
    auto* leave = new QPushButton(tr("Lea&ve"), this);
    m_open->setDefault(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_said, 1);
    buttons->addWidget(leave, 0, Qt::AlignBottom);
    buttons->addWidget(m_open, 0, Qt::AlignBottom);
    auto* all = new QVBoxLayout(this);
    all->setSpacing(12);
    for (QWidget* part : std::initializer_list<QWidget*>{file, words, m_passphrase}) all->addWidget(part);
    all->addLayout(buttons);
    connect(m_open, &QPushButton::clicked, this, &UnsealDialog::choosePlace);
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    m_passphrase->takeFocus();
}

UnsealDialog::~UnsealDialog()
{
    m_job.cancel();
}

void UnsealDialog::choosePlace()
{
    auto typed = m_passphrase->take();
    if (!typed) return;  // the fields say why
    auto passphrase = std::make_shared<const Passphrase>(std::move(*typed));
    m_with.prompter.chooseFileToSave(this,
                                     {tr("Where should the book be kept?"), proposedBook(m_with.sealed),
                                      tr("Books (*.steelyard)"), QStringLiteral("steelyard")},
                                     [this, passphrase](const QString& to) { unseal(to, passphrase); });
}

void UnsealDialog::unseal(const QString& to, const std::shared_ptr<const Passphrase>& passphrase)
{
    if (QFileInfo::exists(to))
        return m_passphrase->say(tr("“%1” is there already and was not touched. Choose another name.").arg(to));
    wait(true);
    m_job = m_with.jobs.run(
        this, tr("Opening a sealed file"),
        [wish = RestoreWish{to, m_with.sealed, passphrase}, &clock = m_with.clock](const Progress& progress) {
            return bookOutOf(wish, clock, progress);
        },
        [this, to](const Result<void>& made) {
            wait(false);
            if (!made) {
                m_passphrase->takeFocus();
                return m_passphrase->say(made.error().what);
            }
            Q_EMIT bookRequested(to);
            accept();
        });
}

void UnsealDialog::wait(bool busy)
{
    m_open->setEnabled(!busy);
    m_said->setText(busy ? tr("Opening it…") : QString());
}

}  // namespace steelyard
