#include "ui/shell/lock_cover.h"

#include "ui/widgets/passphrase_fields.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QGridLayout>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kCoverLetters = 62;

}  // namespace

LockCover::LockCover(const QString& settingsFile, QWidget* parent)
    : QWidget(parent),
      m_fields(new PassphraseFields({.is = PassphraseFields::Known}, this)),
      m_open(new QPushButton(tr("&Open"), this)),
      m_words(plainWords(this))
{
    setObjectName(QStringLiteral("lockCover"));
    setAutoFillBackground(true);
    auto* title = plainWords(this);
    title->setText(tr("Locked"));
    QFont large = title->font();
    large.setPointSizeF(large.pointSizeF() * 1.8);
    title->setFont(large);
    auto* quit = new QPushButton(tr("&Quit Steelyard"), this);
    quit->setObjectName(QStringLiteral("lockQuit"));
    m_open->setObjectName(QStringLiteral("lockOpen"));
    m_words->setObjectName(QStringLiteral("lockWords"));
    m_words->setMinimumHeight(m_words->fontMetrics().lineSpacing() * 2);
    m_words->setAlignment(Qt::AlignTop);

    auto* card = new QWidget(this);
    card->setFixedWidth(fontMetrics().averageCharWidth() * kCoverLetters);
    auto* column = new QVBoxLayout(card);
    column->setSpacing(10);
    column->addWidget(title);
    column->addWidget(m_fields);
    column->addWidget(m_words);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(quit);
    buttons->addStretch(1);
    buttons->addWidget(m_open);
    column->addLayout(buttons);
    column->addWidget(makeForgotten(settingsFile));
    auto* grid = new QGridLayout(this);
    grid->addWidget(card, 1, 1);
    grid->setRowStretch(0, 2);
    grid->setRowStretch(2, 3);
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(2, 1);
    connect(m_fields, &PassphraseFields::entered, this, &LockCover::attempt);
    connect(m_open, &QPushButton::clicked, this, &LockCover::attempt);
    connect(quit, &QPushButton::clicked, this, &LockCover::quitRequested);
}

QWidget* LockCover::makeForgotten(const QString& settingsFile)
{
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 12, 0, 0);
    auto* button = new QPushButton(tr("For&gotten?"), part);
    button->setObjectName(QStringLiteral("lockForgotten"));
    button->setFlat(true);
    button->setCheckable(true);
    auto* words = selectableWords(part);
    words->setText(
        tr("The lock covers the screen; it does not encrypt the book, so nothing is lost. There is no way past it "
           "from here. Whoever owns the account on this computer can quit, open the file\n%1\nin a text editor, "
           "remove the line below [lock] that begins with secret=, and start Steelyard again.")
            .arg(settingsFile));
    words->hide();
    connect(button, &QPushButton::toggled, words, &QLabel::setVisible);
    column->addWidget(button, 0, Qt::AlignLeft);
    column->addWidget(words);
    return part;
}

void LockCover::start()
{
    m_fields->clear();
    m_words->clear();
    m_fields->takeFocus();
}

void LockCover::say(const QString& words)
{
    m_words->setText(words);
}

void LockCover::setOpen(bool open)
{
    const bool wasOpen = isOpen();
    m_fields->setEnabled(open);
    m_open->setEnabled(open);
    if (open && !wasOpen) m_fields->takeFocus();
}

bool LockCover::isOpen() const
{
    return m_open->isEnabled();
}

void LockCover::attempt()
{
    if (!isOpen() || m_fields->isEmpty()) return;
    auto typed = m_fields->take();
    m_fields->clear();  // also of the word that it is too short: here it is just not the one
    if (typed)
        Q_EMIT tried(std::make_shared<Passphrase>(*std::move(typed)));
    else
        Q_EMIT triedTooShort();
}

}  // namespace steelyard
