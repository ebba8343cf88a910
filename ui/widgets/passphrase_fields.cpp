#include "ui/widgets/passphrase_fields.h"

#include "core/care/passphrase_strength.h"
#include "core/care/suggested_passphrase.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QFormLayout>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>

#include <utility>

namespace steelyard {
namespace {

void wipeField(QLineEdit* field)
{
    QString typed = field->text();
    field->clear();
    wipe(typed);
}

QString strengthWords(PassphraseStrength strength)
{
    switch (strength) {
    case PassphraseStrength::TooShort:
        return PassphraseFields::tr("Too short: at least %1 letters.").arg(Passphrase::kFewestLetters);
    case PassphraseStrength::Weak:
        return PassphraseFields::tr("Easy to guess. More words, or words that don't belong together, help.");
    case PassphraseStrength::Fair:
        return PassphraseFields::tr("Fair. One more word makes it good.");
    case PassphraseStrength::Good:
        return PassphraseFields::tr("Good, unless somebody who knows you could guess it.");
    }
    return {};
}

}  // namespace

PassphraseFields::PassphraseFields(const Options& options, QWidget* parent)
    : QWidget(parent), m_options(options), m_form(new QFormLayout(this)), m_problem(plainWords(this))
{
    m_form->setContentsMargins(0, 0, 0, 0);
    m_form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    m_first = addField(options.label.isEmpty() ? tr("Passphrase") : options.label);
    m_first->setObjectName(QStringLiteral("passphrase"));
    if (options.is == New) m_second = addField(tr("Once more"));
    if (m_second) m_second->setObjectName(QStringLiteral("passphraseAgain"));
    m_shown = new QCheckBox(tr("Show what is &typed"), this);
    connect(m_shown, &QCheckBox::toggled, this, &PassphraseFields::showLetters);
    if (options.is == New)
        addNewParts();
    else
        m_form->addRow(QString(), m_shown);
    if (!options.warning.isEmpty()) {
        auto* warning = plainWords(this);
        warning->setText(options.warning);
        m_form->addRow(QString(), warning);
    }
    if (options.canRemember) {
        m_remember = new QCheckBox(tr("&Remember it in this computer's keychain"), this);
        m_remember->setObjectName(QStringLiteral("rememberPassphrase"));
        m_form->addRow(QString(), m_remember);
    }
    m_problem->setObjectName(QStringLiteral("passphraseProblem"));
    m_form->addRow(QString(), m_problem);
    m_form->setRowVisible(m_problem, false);
    setFocusProxy(m_first);
}

PassphraseFields::~PassphraseFields()
{
    for (QLineEdit* field : {m_first, m_second})
        if (field) {
            const QSignalBlocker quiet(field);
            wipeField(field);
        }
}

QLineEdit* PassphraseFields::addField(const QString& label)
{
    auto* field = new QLineEdit(this);
    field->setEchoMode(QLineEdit::Password);
    field->setInputMethodHints(Qt::ImhHiddenText | Qt::ImhNoPredictiveText | Qt::ImhNoAutoUppercase
                               | Qt::ImhSensitiveData);
    field->setContextMenuPolicy(Qt::NoContextMenu);
    field->setAccessibleName(label);
    auto* words = new QLabel(label, this);
    words->setTextFormat(Qt::PlainText);
    words->setBuddy(field);
    m_form->addRow(words, field);
    connect(field, &QLineEdit::textEdited, this, [this] {
        say({});
        Q_EMIT edited();
    });
    // Enter goes on to the second field before it means that all is typed.
    connect(field, &QLineEdit::returnPressed, this, [this, field] {
        if (m_second && field == m_first)
            m_second->setFocus(Qt::TabFocusReason);
        else
            Q_EMIT entered();
    });
    return field;
}

void PassphraseFields::addNewParts()
{
    m_strength = quietWords(this);
    m_strength->setObjectName(QStringLiteral("passphraseStrength"));
    m_strength->setMinimumHeight(m_strength->fontMetrics().lineSpacing());  // the rest stays where it is
    m_form->addRow(QString(), m_strength);
    auto* offer = new QPushButton(tr("&Offer words"), this);
    offer->setObjectName(QStringLiteral("offerWords"));
    offer->setAutoDefault(false);
    offer->setToolTip(tr("Puts words drawn by chance into the field, to be written down"));
    connect(offer, &QPushButton::clicked, this, &PassphraseFields::offerWords);
    auto* row = new QHBoxLayout;
    row->addWidget(m_shown);
    row->addStretch(1);
    row->addWidget(offer);
    m_form->addRow(QString(), row);
    connect(m_first, &QLineEdit::textChanged, this, &PassphraseFields::showStrength);
}

// Only into the first field: typing them once more shows that they were read.
void PassphraseFields::offerWords()
{
    QString words = suggestedPassphrase();
    m_first->setText(words);
    wipe(words);
    m_second->clear();
    m_shown->setChecked(true);
    say({});
    m_second->setFocus(Qt::OtherFocusReason);
    Q_EMIT edited();
}

void PassphraseFields::showStrength()
{
    m_strength->setText(m_first->text().isEmpty() ? QString() : strengthWords(passphraseStrength(m_first->text())));
}

void PassphraseFields::showLetters(bool shown)
{
    for (QLineEdit* field : {m_first, m_second})
        if (field) field->setEchoMode(shown ? QLineEdit::Normal : QLineEdit::Password);
}

bool PassphraseFields::isEmpty() const
{
    return m_first->text().isEmpty() && (!m_second || m_second->text().isEmpty());
}

Result<Passphrase> PassphraseFields::take()
{
    QString typed = m_first->text();
    auto made = Passphrase::make(typed);
    if (made && m_second
        && m_second->text().normalized(QString::NormalizationForm_C)
               != typed.normalized(QString::NormalizationForm_C)) {
        made = fail(ErrorCode::Invalid, tr("The two are not the same. Type it once more."));
        wipeField(m_second);
        m_second->setFocus(Qt::OtherFocusReason);
    } else if (!made) {
        takeFocus();
    }
    wipe(typed);
    if (made)
        clear();
    else
        say(made.error().what);
    return made;
}

bool PassphraseFields::wantsRemembering() const
{
    return m_remember && m_remember->isChecked();
}

void PassphraseFields::fill(const QString& remembered)
{
    m_first->setText(remembered);
    if (m_second) m_second->setText(remembered);
}

void PassphraseFields::say(const QString& problem)
{
    m_problem->setText(problem);
    m_form->setRowVisible(m_problem, !problem.isEmpty());
}

void PassphraseFields::clear()
{
    wipeField(m_first);
    if (m_second) wipeField(m_second);
    m_shown->setChecked(false);
    say({});
}

void PassphraseFields::takeFocus()
{
    m_first->setFocus(Qt::OtherFocusReason);
    m_first->selectAll();
}

}  // namespace steelyard
