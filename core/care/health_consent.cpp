#include "core/care/health_consent.h"

#include "core/edits/plain_edit.h"
#include "core/storage/athlete_removal.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct HealthConsentText {
    Q_DECLARE_TR_FUNCTIONS(HealthConsentText)
};

}  // namespace

std::unique_ptr<Edit> giveHealthConsent(Id<Athlete> athlete, const HealthConsent& consent)
{
    return plainEdit(
        HealthConsentText::tr("record a consent"), [athlete, consent](Transaction& transaction) -> Result<void> {
            const AthleteRepository athletes(transaction.database());
            STEELYARD_TRY(auto row, athletes.find(athlete));
            // What was only to be confirmed is confirmed by this; what was given stays on record.
            std::erase_if(row.value.consents,
                          [](const HealthConsent& earlier) { return !earlier.givenOn && !earlier.withdrawnOn; });
            row.value.consents.push_back(consent);
            return athletes.replace(transaction, athlete, row.value);
        });
}

Result<WithdrawalReport> withdrawHealthConsent(Book& book, Id<Athlete> athlete)
{
    WithdrawalReport report;
    Changes changes;
    {
        STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
        STEELYARD_TRY(report.removed, countHealthEntries(book.database(), athlete));
        STEELYARD_CHECK(removeHealthEntries(transaction, athlete));
        STEELYARD_TRY(auto row, book.athletes().find(athlete));
        withdraw(row.value.consents, book.clock().today());
        STEELYARD_CHECK(book.athletes().replace(transaction, athlete, row.value));
        STEELYARD_CHECK(book.history().clear(transaction));
        changes = transaction.changes();
        STEELYARD_CHECK(transaction.commit());
    }
    report.fileCleaned = cleanFile(book.database()).value_or(false);
    book.history().adopt(changes);
    return report;
}

}  // namespace steelyard
