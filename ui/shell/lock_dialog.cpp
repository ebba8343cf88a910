#include "ui/shell/lock_dialog.h"

#include "ui/widgets/passphrase_fields.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QComboBox>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>

#include <array>

namespace steelyard {
namespace {

constexpr std::array kMinutesOffered{2, 5, 10, 15, 30, 60};

}  // namespace

LockDialog::LockDialog(ScreenLock& lock, JobRunner& jobs, QWidget* parent)
    : QDialog(parent),
      m_lock(lock),
      m_jobs(jobs),
      m_present(new PassphraseFields({.is = PassphraseFields::Known, .label = tr("Present passphrase")}, this)),
      m_new(new PassphraseFields({.label = tr("New passphrase")}, this)),
      m_minutes(new QComboBox(this)),
      m_said(plainWords(this)),
      m_set(new QPushButton(this)),
      m_remove(new QPushButton(tr("&Take the lock away"), this))
{
    setAttribute(Qt::WA_DeleteOnClose);
    setWindowTitle(tr("Lock and idle time"));
    m_present->setObjectName(QStringLiteral("presentPassphrase"));
    m_new->setObjectName(QStringLiteral("newPassphrase"));
    m_set->setObjectName(QStringLiteral("setLock"));
    m_remove->setObjectName(QStringLiteral("removeLock"));
    m_said->setObjectName(QStringLiteral("lockSaid"));
    auto* what = plainWords(this);
    what->setText(
        tr("Locked, the program shows nothing of the book until this passphrase is typed; when it starts, too. "
           "That keeps eyes off the screen. It does not encrypt the book: for a computer that could be lost or "
           "stolen, encrypt its disk."));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(m_set, QDialogButtonBox::ActionRole);
    buttons->addButton(m_remove, QDialogButtonBox::ActionRole);
    for (QPushButton* button : {m_set, m_remove, buttons->button(QDialogButtonBox::Close)})
        button->setAutoDefault(false);  // Enter in a field goes on, or sets it
    auto* column = new QVBoxLayout(this);
    column->setSpacing(12);
    column->addWidget(what);
    auto* form = new QFormLayout;
    addMinutes(form);
    column->addLayout(form);
    column->addWidget(m_present);
    column->addWidget(m_new);
    column->addWidget(m_said);
    column->addStretch(1);
    column->addWidget(buttons);
    const int em = fontMetrics().averageCharWidth();
    resize(em * 84, em * 60);
    connect(m_new, &PassphraseFields::entered, this, &LockDialog::set);
    connect(m_set, &QPushButton::clicked, this, &LockDialog::set);
    connect(m_remove, &QPushButton::clicked, this, &LockDialog::remove);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    switchKnown();
}

void LockDialog::addMinutes(QFormLayout* form)
{
    m_minutes->setObjectName(QStringLiteral("lockMinutes"));
    m_minutes->addItem(tr("never"), 0);
    for (const int minutes : kMinutesOffered)
        m_minutes->addItem(tr("after %n minute(s) without a key or the mouse", nullptr, minutes), minutes);
    const int kept = m_lock.kept().minutes();
    if (m_minutes->findData(kept) < 0)
        m_minutes->addItem(tr("after %n minute(s) without a key or the mouse", nullptr, kept), kept);
    m_minutes->setCurrentIndex(m_minutes->findData(kept));
    auto* label = new QLabel(tr("Lock by &itself"), this);
    label->setTextFormat(Qt::PlainText);
    label->setBuddy(m_minutes);
    form->addRow(label, m_minutes);
    connect(m_minutes, &QComboBox::currentIndexChanged, this,
            [this] { m_lock.kept().setMinutes(m_minutes->currentData().toInt()); });
}

void LockDialog::switchKnown()
{
    const bool known = m_lock.canLock();
    m_present->setVisible(known);
    m_remove->setVisible(known);
    m_set->setText(known ? tr("&Change the passphrase") : tr("&Set the passphrase"));
    (known ? m_present : m_new)->takeFocus();
}

void LockDialog::setBusy(bool busy)
{
    for (QWidget* each : std::initializer_list<QWidget*>{m_present, m_new, m_set, m_remove}) each->setEnabled(!busy);
}

// Whoever changes the lock knows its passphrase, as whoever opens it does.
void LockDialog::ask(const std::function<void()>& whenRight)
{
    if (!m_lock.canLock()) return whenRight();
    const auto wrong = [this] {
        const auto wait = static_cast<int>(m_lock.toWait().count());
        m_present->say(
            wait == 0 ? tr("That is not the passphrase.")
                      : tr("That is not the passphrase. The next try is looked at in %n second(s).", nullptr, wait));
        m_present->takeFocus();
    };
    auto typed = m_present->take();
    if (!typed) return;
    setBusy(true);
    m_lock.check(std::make_shared<Passphrase>(*std::move(typed)), this, [=, this](bool right) {
        setBusy(false);
        if (right)
            whenRight();
        else
            wrong();
    });
}

void LockDialog::set()
{
    if (m_lock.canLock() && m_present->isEmpty()) {
        m_present->say(tr("The present passphrase is needed to change it."));
        m_present->takeFocus();
        return;
    }
    auto chosen = m_new->take();
    if (!chosen) return;
    ask([this, made = std::make_shared<Passphrase>(*std::move(chosen))] { hash(made); });
}

void LockDialog::hash(const std::shared_ptr<Passphrase>& chosen)
{
    setBusy(true);
    m_jobs.run(
        this, tr("Setting the passphrase"), [chosen](const Progress&) { return LockSecret::of(*chosen); },
        [this](const Result<LockSecret>& made) {
            setBusy(false);
            if (!made) return m_new->say(made.error().what);
            m_lock.kept().set(*made);
            m_said->setText(tr("The passphrase is set. Ctrl+L locks."));
            switchKnown();
            Q_EMIT passphraseSet();
        });
}

void LockDialog::remove()
{
    ask([this] {
        m_lock.kept().remove();
        m_said->setText(tr("There is no lock any more."));
        switchKnown();
    });
}

}  // namespace steelyard
