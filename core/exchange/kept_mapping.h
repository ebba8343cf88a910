// A mapping that outlives its file: by the names of columns where they have one, so that it fits another file of the same
// kind whatever the order of its columns, and without anything about people.
//
//   settings.setValue(key, writeMapping(toKeep(mapping, header)));
//   const auto fitting = fitMapping(kept, header);          // by number again; nothing when a column is missing
//   headerSignature(header)                                 // the same for files with the same columns in any order
#pragma once

#include "core/exchange/logbook_mapping.h"

namespace steelyard {

[[nodiscard]] LogbookMapping toKeep(const LogbookMapping& mapping, const QStringList& header);
[[nodiscard]] std::optional<LogbookMapping> fitMapping(const LogbookMapping& kept, const QStringList& header);
// Empty when the file has no header: nothing tells one such file from another.
[[nodiscard]] QString headerSignature(const LogbookMapping& mapping, const QStringList& header);

}  // namespace steelyard
