// One athlete's whole record as a page that any browser shows: what is kept of them, why, who sees it and for how long, for the
// athlete who asks. What a table can't hold readably (every repetition of every set) is said to be in book.json.
//
//   STEELYARD_TRY(const QByteArray page, recordPage(db, library, athlete));
//
// UTF-8, no script, no picture, nothing loaded from anywhere; every text that a person typed stands as it was typed. Names nobody
// else. The same record gives the same page. Failures: NotFound, Storage.
#pragma once

#include "core/domain/library.h"
#include "core/storage/database.h"

#include <QtCore/QByteArray>

namespace steelyard {

// `library`: what the lifts, plans and trials of this athlete name.
[[nodiscard]] Result<QByteArray> recordPage(Database&, const Library& library, Id<Athlete> athlete);

}  // namespace steelyard
