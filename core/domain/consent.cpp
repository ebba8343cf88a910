#include "core/domain/consent.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <algorithm>

namespace steelyard {
namespace {

struct ConsentText {
    Q_DECLARE_TR_FUNCTIONS(ConsentText)
};

bool stillCounts(const HealthConsent& consent)
{
    return !consent.withdrawnOn;
}

}  // namespace

QString HealthScope::toString() const
{
    QStringList words;
    for (const auto& [field, word] : EnumText<HealthField>::table)
        if (has(field)) words.append(toText(field));
    return words.join(u' ');
}

HealthScope HealthScope::parse(QStringView text)
{
    HealthScope scope{false, false};
    for (const QStringView word : text.split(u' ')) {
        const auto field = fromKey<HealthField>(word);
        scope.discomfort = scope.discomfort || field == HealthField::Discomfort;
        scope.jointHistory = scope.jointHistory || field == HealthField::JointHistory;
    }
    return scope;
}

HealthConsent HealthConsent::given(QDate day, HealthScope scope)
{
    return {day, kConsentWording, scope, std::nullopt, {}};
}

bool mayKeep(const HealthConsents& consents, HealthField field)
{
    return std::ranges::any_of(consents,
                               [field](const HealthConsent& c) { return stillCounts(c) && c.scope.has(field); });
}

ConsentStanding standingOf(const HealthConsents& consents)
{
    const auto given = [](const HealthConsent& c) { return stillCounts(c) && c.givenOn; };
    if (std::ranges::any_of(consents, given)) return ConsentStanding::Given;
    if (std::ranges::any_of(consents, stillCounts)) return ConsentStanding::ToConfirm;
    return consents.empty() ? ConsentStanding::NotAsked : ConsentStanding::Withdrawn;
}

void withdraw(HealthConsents& consents, QDate day)
{
    for (HealthConsent& consent : consents)
        if (stillCounts(consent)) consent.withdrawnOn = day;
}

Problems validate(const HealthConsents& consents, QDate today)
{
    const QString field = QStringLiteral("consents");
    for (const HealthConsent& consent : consents) {
        if (consent.scope.none()) return {{field, ConsentText::tr("A consent is for one kind of entry at least.")}};
        if (consent.wording < 0 || consent.givenOn.has_value() != (consent.wording > 0))
            return {{field, ConsentText::tr("A consent that was given has a day and the number of its wording.")}};
        if (consent.note.size() > kMaxNoteLength)
            return {{field, ConsentText::tr("The note on the consent is longer than %n characters; shorten it.",
                                            nullptr, static_cast<int>(kMaxNoteLength))}};
        if ((consent.givenOn && *consent.givenOn > today) || (consent.withdrawnOn && *consent.withdrawnOn > today))
            return {{field, ConsentText::tr("The day of a consent lies in the future.")}};
        if (consent.givenOn && consent.withdrawnOn && *consent.withdrawnOn < *consent.givenOn)
            return {{field, ConsentText::tr("A consent can't be withdrawn before it was given.")}};
    }
    return {};
}

QString consentWording(int number)
{
    if (number != kConsentWording) return {};
    return ConsentText::tr(
        "My coach may keep what I say about discomfort in my joints (0 to 10, by exercise and day) and about earlier "
        "trouble with my joints, and use it only to plan my training and to decide when I should see a doctor. It is "
        "kept in my coach's book and its backups and given to nobody else. I may see it, have it corrected, and take "
        "this consent back at any time; these entries are then deleted from the book. Saying no has no disadvantage: "
        "training goes on without these entries.");
}

}  // namespace steelyard
