#include "ui/pages/care/restore_panel.h"

#include "core/care/sealed_file.h"
#include "core/care/secret_store.h"
#include "ui/format/format.h"
#include "ui/shell/theme.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/passphrase_fields.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

QString lossWords(const BookLoss& loss)
{
    if (loss.none()) return RestorePanel::tr("Every lifter, session and set of the book is in it as it is now.");
    QStringList parts;
    const auto add = [&](const QString& words, qint64 count) {
        if (count > 0) parts << words;
    };
    add(RestorePanel::tr("%n lifter(s)", nullptr, static_cast<int>(loss.athletes)), loss.athletes);
    add(RestorePanel::tr("%n session(s)", nullptr, static_cast<int>(loss.sessions)), loss.sessions);
    add(RestorePanel::tr("%n set(s)", nullptr, static_cast<int>(loss.sets)), loss.sets);
    QString words = parts.isEmpty()
                        ? QString()
                        : RestorePanel::tr("The book has what this lacks: %1.").arg(parts.join(QStringLiteral(", ")));
    if (loss.setsChanged > 0)
        words += (words.isEmpty() ? QString() : QStringLiteral(" "))
                 + RestorePanel::tr("%n set(s) say something else today.", nullptr, static_cast<int>(loss.setsChanged));
    return words;
}

}  // namespace

RestorePanel::RestorePanel(QString book, JobRunner& jobs, const Clock& clock, SecretStore* secrets, QWidget* parent)
    : QWidget(parent),
      m_book(std::move(book)),
      m_jobs(jobs),
      m_clock(clock),
      m_secrets(secrets),
      m_title(new ElidedLabel(this)),
      m_content(plainWords(this)),
      m_loss(plainWords(this)),
      m_verdict(plainWords(this)),
      m_passphrase(new PassphraseFields({.is = PassphraseFields::Known}, this)),
      m_look(new QPushButton(tr("&Look into it"), this)),
      m_restore(new QPushButton(tr("&Restore it…"), this))
{
    QFont strong = font();
    strong.setBold(true);
    m_title->setFont(strong);
    m_look->setToolTip(tr("Opens a copy of the backup, checks everything in it, and throws the copy away"));
    m_restore->setToolTip(tr("Puts the backup in the book's place; the book as it is now is kept"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_look);
    buttons->addWidget(m_restore);
    buttons->addStretch(1);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    for (QWidget* part : std::initializer_list<QWidget*>{m_title, m_content, m_loss, m_verdict, m_passphrase})
        all->addWidget(part);
    all->addLayout(buttons);
    all->addStretch(1);
    connect(m_look, &QPushButton::clicked, this, &RestorePanel::look);
    connect(m_passphrase, &PassphraseFields::entered, this, &RestorePanel::look);
    connect(m_restore, &QPushButton::clicked, this, [this] {
        if (canRestore()) Q_EMIT restoreRequested(m_wish, *m_seen);
    });
    show(std::nullopt);
}

RestorePanel::~RestorePanel()
{
    m_job.cancel();
}

void RestorePanel::show(const std::optional<Source>& source)
{
    if (source && source == m_source) return;
    m_job.cancel();
    ++m_asked;
    m_source = source;
    m_seen.reset();
    m_wish = {};
    m_title->setText(source ? source->title : tr("What is in a backup"));
    m_content->setText(source ? tr("Not looked into yet.")
                              : tr("Choose one on the left, or a file. Looking into it says who and what is in it, and "
                                   "what of the book it lacks; nothing is changed."));
    m_loss->clear();
    say({}, false);
    const auto sealed = source ? isSealedFile(source->path) : Result<bool>(false);
    m_passphrase->clear();
    m_passphrase->setVisible(sealed && *sealed);
    updateButtons();
    if (!m_passphrase->isVisibleTo(this)) return;
    m_passphrase->takeFocus();
    if (m_secrets) recall();
}

// What the keychain remembers is filled in, if nothing was typed meanwhile. When it doesn't answer, the passphrase is asked for.
void RestorePanel::recall()
{
    m_secrets->read(secretKeyOfBook(m_book), this, [this, asked = m_asked](Result<std::optional<QString>> kept) {
        if (!kept || !*kept) return;
        if (asked == m_asked && m_passphrase->isVisibleTo(this) && m_passphrase->isEmpty()) {
            m_passphrase->fill(**kept);
            m_passphrase->say(tr("Filled in from this computer's keychain."));
        }
        wipe(**kept);
    });
}

void RestorePanel::look()
{
    if (!m_source || m_job.isRunning()) return;
    m_wish = {.book = m_book, .from = m_source->path};
    if (m_passphrase->isVisibleTo(this)) {
        auto typed = m_passphrase->take();
        if (!typed) return;  // the fields say why
        m_wish.passphrase = std::make_shared<const Passphrase>(std::move(*typed));
    }
    m_seen.reset();
    m_content->setText(tr("Looking into it…"));
    m_loss->clear();
    say({}, false);
    const int asked = ++m_asked;
    m_job = m_jobs.run(
        this, tr("Looking into a backup"),
        [wish = m_wish, &clock = m_clock](const Progress& progress) { return rehearseRestore(wish, clock, progress); },
        [this, asked](const Result<Rehearsal>& seen) {
            if (asked == m_asked) took(seen);
        });
    updateButtons();
}

void RestorePanel::took(const Result<Rehearsal>& seen)
{
    m_job = {};
    if (seen) {
        m_seen = *seen;
        showSeen(*seen);
    } else {
        m_content->setText(tr("Not looked into yet."));
        say(seen.error().what, true);
    }
    updateButtons();
    if (canRestore()) m_restore->setFocus(Qt::OtherFocusReason);
}

void RestorePanel::showSeen(const Rehearsal& seen)
{
    const BookContent& content = seen.content;
    QString words = tr("%n lifter(s)", nullptr, static_cast<int>(content.athletes)) + QStringLiteral(", ")
                    + tr("%n session(s)", nullptr, static_cast<int>(content.sessions)) + QStringLiteral(", ")
                    + tr("%n set(s)", nullptr, static_cast<int>(content.sets)) + u'.';
    if (content.lastSession) words += u' ' + tr("The last session is of %1.").arg(format::date(*content.lastSession));
    m_content->setText(words);
    m_loss->setText(seen.loss ? lossWords(*seen.loss) : tr("What it lacks of the book can't be said."));
    if (seen.findings.isEmpty())
        say(tr("It opens, and everything in it was checked."), false);
    else
        say(tr("It isn't sound, so it can't be restored: %n finding(s). The first: %1", nullptr,
               static_cast<int>(seen.findings.size()))
                .arg(seen.findings.front()),
            true);
}

void RestorePanel::say(const QString& text, bool alarming)
{
    QPalette colours = palette();
    if (alarming) colours.setColor(QPalette::WindowText, themeColours(colours).alarm);
    m_verdict->setPalette(colours);
    m_verdict->setText(text);
}

bool RestorePanel::canRestore() const
{
    return m_seen && m_seen->findings.isEmpty() && !m_job.isRunning();
}

void RestorePanel::updateButtons()
{
    m_look->setEnabled(m_source && !m_job.isRunning());
    m_restore->setEnabled(canRestore());
}

}  // namespace steelyard
