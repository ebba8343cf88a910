// How a delimited logbook is most likely written, from its beginning: a proposal for a person to look at, never applied unseen.
//
//   const LogbookGuess guess = guessLogbook(file.read(kGuessBytes), {athletes, exercises}, today);
//   if (guess.datesAmbiguous) ...            // 03/04/2026 could be either; ask
//
// Guessed are encoding, separator, rows before the header, header or none, decimal mark, order of dates, unit, one set a row
// or several, and the columns: by their headings, else by what stands in them. No failures: what can't be guessed is left out.
#pragma once

#include "core/exchange/logbook_mapping.h"

#include <QtCore/QDate>

namespace steelyard {

inline constexpr qint64 kGuessBytes = 256 * 1024;

// Of the book: what stands in a column is told by them.
struct KnownNames {
    QStringList athletes;
    QStringList exercises;
};

enum class ColumnHint { Heading, Likeness, Content };

struct LogbookGuess {
    LogbookMapping mapping;               // columns by number
    QStringList header;                   // numbers from 1 when the file has none
    std::map<QString, ColumnHint> hints;  // by our column: why it was chosen
    bool datesAmbiguous = false;          // day and month first both give days that have come
    QString exampleDate;                  // one that reads either way
};

// Without a day, dates to come don't tell the order.
[[nodiscard]] LogbookGuess guessLogbook(const QByteArray& beginning, const KnownNames& known, QDate today);
[[nodiscard]] LogbookMapping guessMapping(const QByteArray& beginning);

}  // namespace steelyard
