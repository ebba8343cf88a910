#include "core/exchange/import_consent.h"

#include "core/storage/athlete_repository.h"

namespace steelyard {

Result<ExerciseRating> ImportConsent::allowed(Id<Athlete> athlete, const ExerciseRating& rating)
{
    if (!rating.hasDiscomfort()) return rating;
    auto known = m_known.find(athlete);
    if (known == m_known.end()) {
        STEELYARD_TRY(const bool may, decide(athlete));
        known = m_known.emplace(athlete, may).first;
    }
    return known->second ? rating : rating.withoutDiscomfort();
}

Result<bool> ImportConsent::decide(Id<Athlete> athlete)
{
    const AthleteRepository athletes(m_transaction.database());
    STEELYARD_TRY(auto row, athletes.find(athlete));
    if (mayKeep(row.value.consents, HealthField::Discomfort)) return true;
    if (standingOf(row.value.consents) == ConsentStanding::Withdrawn
        || m_options.discomfort == ImportedDiscomfort::LeaveOut) {
        m_report.discomfortLeftOut.append(row.value.name);
        return false;
    }
    const HealthScope scope{true, false};
    HealthConsent consent = HealthConsent::toConfirm();
    if (m_options.discomfort == ImportedDiscomfort::Agreed) consent = HealthConsent::given(m_options.agreedOn);
    consent.scope = scope;
    row.value.consents.push_back(consent);
    STEELYARD_CHECK(athletes.replace(m_transaction, athlete, row.value));
    if (!consent.givenOn) m_report.discomfortToConfirm.append(row.value.name);
    return true;
}

}  // namespace steelyard
