#include "ui/pages/care/consent_panel.h"

#include "core/base/text.h"
#include "ui/format/format.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

QString standingWords(const HealthConsents& consents)
{
    const auto newest = [&](auto&& day) {
        std::optional<QDate> last;
        for (const HealthConsent& consent : consents) last = std::max(last, day(consent));
        return last ? format::date(*last) : QString();
    };
    switch (standingOf(consents)) {
    case ConsentStanding::NotAsked:
        return ConsentPanel::tr("No consent is recorded. Discomfort and joint history are neither asked nor kept.");
    case ConsentStanding::ToConfirm:
        return ConsentPanel::tr(
            "To be confirmed: discomfort or joint history was kept before anybody was asked, or "
            "came with a file. Ask them; record their consent, or withdraw.");
    case ConsentStanding::Given:
        return ConsentPanel::tr("They agreed on %1.").arg(newest([](const HealthConsent& c) { return c.givenOn; }));
    case ConsentStanding::Withdrawn:
        return ConsentPanel::tr("Withdrawn on %1. Discomfort and joint history are neither asked nor kept.")
            .arg(newest([](const HealthConsent& c) { return c.withdrawnOn; }));
    }
    return {};
}

}  // namespace

ConsentPanel::ConsentPanel(QWidget* parent)
    : QGroupBox(tr("Consent to entries about health"), parent),
      m_state(new QLabel(this)),
      m_words(new QLabel(this)),
      m_note(new QLineEdit(this)),
      m_give(new QPushButton(tr("&Record that they agreed today"), this)),
      m_withdraw(new QPushButton(this))
{
    for (QLabel* label : {m_state, m_words}) {
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
    }
    m_words->setText(tr("In these words: “%1”").arg(consentWording(kConsentWording)));
    m_note->setPlaceholderText(tr("how: signed on paper, with a parent, …"));
    m_note->setAccessibleName(tr("How they agreed"));
    m_note->setMaxLength(static_cast<int>(kMaxNameLength));
    for (QPushButton* button : {m_give, m_withdraw}) button->setAutoDefault(false);
    connect(m_give, &QPushButton::clicked, this, [this] { Q_EMIT given(cleanName(m_note->text())); });
    connect(m_withdraw, &QPushButton::clicked, this, &ConsentPanel::askOrWithdraw);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_note, 1);
    buttons->addWidget(m_give);
    buttons->addWidget(m_withdraw);
    auto* all = new QVBoxLayout(this);
    all->addWidget(m_state);
    all->addWidget(m_words);
    all->addLayout(buttons);
    setNobody();
}

void ConsentPanel::show(const Row<Athlete>& athlete, const HealthEntries& kept)
{
    m_kept = kept;
    m_asked = false;
    m_state->setText(standingWords(athlete.value.consents));
    const ConsentStanding standing = standingOf(athlete.value.consents);
    const bool holds = standing == ConsentStanding::Given || standing == ConsentStanding::ToConfirm;
    m_note->clear();
    m_note->setEnabled(standing != ConsentStanding::Given);
    m_give->setEnabled(standing != ConsentStanding::Given);
    m_withdraw->setEnabled(holds);
    m_withdraw->setText(tr("&Withdraw…"));
}

void ConsentPanel::setNobody()
{
    m_asked = false;
    m_state->setText(tr("No lifter is chosen."));
    m_withdraw->setText(tr("&Withdraw…"));
    for (QWidget* part :
         {static_cast<QWidget*>(m_note), static_cast<QWidget*>(m_give), static_cast<QWidget*>(m_withdraw)})
        part->setEnabled(false);
}

void ConsentPanel::askOrWithdraw()
{
    if (m_asked) {
        Q_EMIT withdrawn();
        return;
    }
    m_asked = true;
    m_withdraw->setText(tr("&Withdraw and remove"));
    if (m_kept.none()) {
        m_state->setText(tr("Nothing of it is kept. Press once more to withdraw; undo is emptied with it."));
        return;
    }
    m_state->setText(
        tr("This removes the discomfort of %1 ratings, %2 sentences about it%3, and empties undo; it can't "
           "be taken back. A backup is made first: it still has all of this, and so have the earlier ones, until you "
           "delete them. Press once more to do it.")
            .arg(QString::number(m_kept.ratings), QString::number(m_kept.sentences),
                 m_kept.jointHistory ? tr(" and the joint history") : QString()));
}

}  // namespace steelyard
