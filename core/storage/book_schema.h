// The tables and indexes that a book of a version has, as its migrations make them. A trigger or a view that came with somebody
// else's file could do anything: a book that has more, less or other things than its version is refused before it is used.
//
//   STEELYARD_CHECK(checkSchema(db));                                   // for the version that the book says it has
//   const QStringList differences = compareSchemas(found, expected);    // one sentence each
//
// Blanks and quotation marks around names are not compared: versions of SQLite differ there when a table is renamed.
#pragma once

#include "core/storage/database.h"

#include <QtCore/QStringList>

#include <map>

namespace steelyard {

// "table athlete" to the text that makes it (empty for an index that belongs to a constraint).
using Schema = std::map<QString, QString>;

[[nodiscard]] Result<Schema> readSchema(Database&);
// What the built-in migrations make up to this version.
[[nodiscard]] Result<Schema> schemaOfVersion(int version);
[[nodiscard]] QStringList compareSchemas(const Schema& found, const Schema& expected);

// Storage, with the differences as the detail. A version that this program doesn't know is the business of migrate().
[[nodiscard]] Result<void> checkSchema(Database&);

}  // namespace steelyard
