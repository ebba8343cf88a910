// The names of an export's files, and the page that explains them to a reader who does not have the program.
#pragma once

#include <QtCore/QByteArray>
#include <QtCore/QString>

namespace steelyard {

inline constexpr QLatin1StringView kLogbookFile{"logbook.csv"};
inline constexpr QLatin1StringView kBookJsonFile{"book.json"};
inline constexpr QLatin1StringView kReadmeFile{"README.txt"};
inline constexpr QLatin1StringView kRecordPageFile{"record.html"};  // of one athlete only

// `athlete`: whose record it is; empty: the whole book.
[[nodiscard]] QByteArray exportReadme(const QString& athlete);

}  // namespace steelyard
