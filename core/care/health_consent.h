// Recording that a lifter agreed to health entries, and taking it back.
//
//   STEELYARD_CHECK(book.history().perform(giveHealthConsent(athlete, HealthConsent::given(today))));
//   STEELYARD_TRY(const HealthEntries kept, countHealthEntries(book.database(), athlete));       // what would go
//   STEELYARD_CHECK(withdrawHealthConsent(book, athlete));
//
// Giving is an edit like any other. Withdrawing empties the fields, forgets the history of edits (which would bring them back) and
// cleans the file, as erasing does: it can't be undone. That there was a consent, and until when, stays on record.
#pragma once

#include "core/book/book.h"
#include "core/storage/health_entries.h"

namespace steelyard {

[[nodiscard]] std::unique_ptr<Edit> giveHealthConsent(Id<Athlete>, const HealthConsent&);

struct WithdrawalReport {
    HealthEntries removed;
    bool fileCleaned = true;  // see cleanFile()
};
[[nodiscard]] Result<WithdrawalReport> withdrawHealthConsent(Book&, Id<Athlete>);

}  // namespace steelyard
