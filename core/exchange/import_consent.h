// What of a file's discomfort ratings comes in: that of lifters who agreed, and of the others what the options say.
//
//   ImportConsent consent(transaction, options, report);
//   STEELYARD_TRY(const ExerciseRating rating, consent.allowed(athlete, row.rating));
//
// Records consents on the way and says in the report whose. Each lifter is looked up once.
#pragma once

#include "core/exchange/logbook_import.h"

#include <map>

namespace steelyard {

class ImportConsent {
public:
    ImportConsent(Transaction& transaction, const ImportOptions& options, ImportReport& report)
        : m_transaction(transaction), m_options(options), m_report(report)
    {}

    [[nodiscard]] Result<ExerciseRating> allowed(Id<Athlete> athlete, const ExerciseRating& rating);

private:
    [[nodiscard]] Result<bool> decide(Id<Athlete> athlete);

    Transaction& m_transaction;
    const ImportOptions& m_options;
    ImportReport& m_report;
    std::map<Id<Athlete>, bool> m_known;
};

}  // namespace steelyard
