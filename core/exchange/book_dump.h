// The whole content of a book as canonical text: two books with equal dumps have the same content, whatever their row ids.
//
//   STEELYARD_TRY(const QByteArray a, dumpContent(*first));
//   STEELYARD_TRY(const QByteArray b, dumpContent(*second));     // a == b after export and import
//
// One line a row: the table, then a JSON object of all its columns. Columns that point at rows hold natural keys (names,
// dates); places in a session count from 1 without gaps. Tables and columns are taken from the file itself, so that what a
// later version adds is compared too. Failure: Storage.
#pragma once

#include "core/storage/database.h"

#include <QtCore/QByteArray>

namespace steelyard {

[[nodiscard]] Result<QByteArray> dumpContent(Database&);
// Without the tables named, for content that has no sets.
[[nodiscard]] Result<QByteArray> dumpContent(Database&, const std::vector<std::string>& without);

}  // namespace steelyard
