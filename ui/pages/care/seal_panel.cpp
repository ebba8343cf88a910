#include "ui/pages/care/seal_panel.h"

#include "core/book/book.h"
#include "core/care/sealed_file.h"
#include "core/care/secret_store.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/backup_keeper.h"
#include "ui/shell/privacy_deeds.h"
#include "ui/shell/theme.h"
#include "ui/widgets/passphrase_fields.h"
#include "ui/widgets/words.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QSettings>
#include <QtCore/QStandardPaths>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

SealPanel::Work sealedCopyOfBook(const UiContext& context)
{
    SealPanel::Work work{.title = SealPanel::tr("A sealed copy, to leave this computer"),
                         .fileName = QFileInfo(context.book.path()).completeBaseName() + u' '
                                     + context.clock.today().toString(Qt::ISODate)
                                     + QStringLiteral(".steelyard.sealed"),
                         .canRemember = context.secrets != nullptr};
    work.prepare = [backups = context.backups](QObject* receiver, std::function<void(const Result<QString>&)> then) {
        backups->keep(BackupReason::Asked, receiver, [then = std::move(then)](const Result<Backup>& made) {
            if (made)
                then(made->path);
            else
                then(fail(made.error()));
        });
    };
    work.seal = [](const QString& from, const QString& to, const Passphrase& passphrase, const Progress& progress) {
        return sealFile(from, to, passphrase, SealCost::usual(), progress);
    };
    return work;
}

SealPanel::SealPanel(const UiContext& context, Work work, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_work(std::move(work)),
      m_passphrase(new PassphraseFields(
          {.is = PassphraseFields::New,
           .warning = tr("There is no way back without it: nobody can open the file, and nobody can tell you the "
                         "passphrase. Write it down, and keep the paper where only you find it."),
           .canRemember = m_work.canRemember},
          this)),
      m_said(plainWords(this)),
      m_seal(new QPushButton(tr("Seal &it into a file…"), this))
{
    constexpr int widestInCharacters = 80;
    m_passphrase->setMaximumWidth(fontMetrics().averageCharWidth() * widestInCharacters);
    auto* title = plainWords(this);
    QFont strong = font();
    strong.setBold(true);
    title->setFont(strong);
    title->setText(m_work.title);
    auto* leave = new QPushButton(tr("Lea&ve"), this);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_seal);
    buttons->addWidget(leave);
    buttons->addStretch(1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(title);
    all->addWidget(m_passphrase);
    all->addLayout(buttons);
    all->addWidget(m_said);
    all->addStretch(1);
    connect(m_seal, &QPushButton::clicked, this, &SealPanel::chooseFile);
    connect(m_passphrase, &PassphraseFields::entered, this, &SealPanel::chooseFile);
    connect(leave, &QPushButton::clicked, this, [this] {
        m_passphrase->clear();
        Q_EMIT left();
    });
}

SealPanel::~SealPanel()
{
    m_job.cancel();
}

void SealPanel::takeFocus()
{
    m_said->clear();
    m_passphrase->takeFocus();
}

QString SealPanel::said() const
{
    return m_said->text();
}

void SealPanel::chooseFile()
{
    if (m_busy) return;
    auto typed = m_passphrase->take();
    if (!typed) return;  // the fields say why
    m_remember = m_passphrase->wantsRemembering();
    auto passphrase = std::make_shared<const Passphrase>(std::move(*typed));
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    m_context.prompter.chooseFileToSave(this,
                                        {tr("Where should the sealed file go?"), QDir(folder).filePath(m_work.fileName),
                                         tr("Sealed files (*.sealed)"), QStringLiteral("sealed")},
                                        [this, passphrase](const QString& to) { begin(to, passphrase); });
}

void SealPanel::begin(const QString& to, std::shared_ptr<const Passphrase> passphrase)
{
    m_busy = true;
    m_seal->setEnabled(false);
    end(tr("Sealing…"), false);
    if (!m_work.prepare) return seal(QString(), to, passphrase);
    m_work.prepare(this, [this, to, passphrase = std::move(passphrase)](const Result<QString>& prepared) {
        seal(prepared, to, passphrase);
    });
}

void SealPanel::seal(const Result<QString>& prepared, const QString& to,
                     const std::shared_ptr<const Passphrase>& passphrase)
{
    const auto done = [this, to, passphrase](const Result<void>& sealed) {
        m_busy = false;
        m_seal->setEnabled(true);
        const QString words = tr("Sealed: “%1”.").arg(to);
        end(sealed ? words : sealed.error().what, !sealed);
        if (sealed && m_remember) remember(*passphrase, words);
    };
    if (!prepared) return done(fail(prepared.error()));
    m_job = m_context.jobs.run(
        this, tr("Sealing"),
        [work = m_work.seal, from = *prepared, to, passphrase](const Progress& progress) {
            return work(from, to, *passphrase, progress);
        },
        done);
}

// Only once it opens a file that exists.
void SealPanel::remember(const Passphrase& passphrase, const QString& sealed)
{
    QString words = QString::fromUtf8(reinterpret_cast<const char*>(passphrase.bytes().data()),
                                      static_cast<qsizetype>(passphrase.bytes().size()));
    m_context.secrets->keep(
        secretKeyOfBook(m_context.book.path()), words, this, [this, sealed](const Result<void>& kept) {
            if (kept && m_context.settings) m_context.settings->setValue(kKeychainInUse, true);
            end(sealed + u' '
                    + (kept ? tr("This computer's keychain remembers the passphrase.")
                            : tr("The keychain may not have remembered the passphrase. %1").arg(kept.error().what)),
                !kept);
        });
    wipe(words);
}

void SealPanel::end(const QString& text, bool alarming)
{
    QPalette colours = palette();
    if (alarming) colours.setColor(QPalette::WindowText, themeColours(colours).alarm);
    m_said->setPalette(colours);
    m_said->setText(text);
}

}  // namespace steelyard
