// One athlete's whole record for another coach, or for whoever the athlete names: a sealed file (sealed_file.h) with a book of theirs
// alone in it. Opened, it is a book like any other; it says nothing of anybody else.
//
//   STEELYARD_TRY(const auto report, sealRecord(db, {athlete, QStringLiteral("record.sealed"), passphrase}, clock, progress));
//
// What is sealed stands in clear meanwhile in a folder of the owner's alone among the computer's temporary files, and is
// removed, whatever happens short of a kill. Failures: NotFound, Storage, Cancelled.
#pragma once

#include "core/base/clock.h"
#include "core/care/sealed_file.h"
#include "core/exchange/book_export.h"

namespace steelyard {

struct SealRecordWish {
    Id<Athlete> athlete;
    QString to;
    const Passphrase& passphrase;
    SealCost cost = SealCost::usual();
};

[[nodiscard]] Result<ExportReport> sealRecord(Database&, const SealRecordWish&, const Clock&, const Progress&);

}  // namespace steelyard
