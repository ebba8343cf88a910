// Reads delimited text strictly: RFC 4180 quoting, any single-character separator, LF, CRLF or CR line ends.
//
//   CsvReader reader(TextPieces(bytes, TextEncoding::Utf8), u',');     // or of a text as a whole
//   while (true) {
//       STEELYARD_TRY(const auto record, reader.next());
//       if (!record) break;
//   }
//
// Given pieces, a few megabytes of text are held at a time, whatever the size of the file.
// Fails with Invalid and the line: bytes that are not of the encoding, a NUL, a quotation that is never closed, text after
// a closing quotation mark, a field over kMostFieldCharacters, a record of more than kMostFields or over
// kMostRecordCharacters (pieces only).
#pragma once

#include "core/exchange/text_decoding.h"

#include <QtCore/QStringList>

#include <optional>

namespace steelyard {

inline constexpr qint64 kMostImportBytes = 256LL * 1024 * 1024;
inline constexpr qsizetype kMostFieldCharacters = 64 * 1024;
inline constexpr qsizetype kMostFields = 1000;  // a field takes many times the room of its separator
inline constexpr qsizetype kMostRecordCharacters = 1024 * 1024;

struct CsvRecord {
    int line = 1;  // of its first character
    QStringList fields;
    qsizetype at = 0;  // of its first character in the text
};

class CsvReader {
public:
    CsvReader(QString text, QChar separator) : m_text(std::move(text)), m_separator(separator) {}
    CsvReader(TextPieces pieces, QChar separator) : m_pieces(std::move(pieces)), m_separator(separator) {}
    // Goes on where a record began, to read it once more.
    CsvReader(QString text, QChar separator, int line, qsizetype at)
        : m_text(std::move(text)), m_separator(separator), m_at(at), m_line(line)
    {}
    // The next record that is not an empty line; nothing at the end.
    [[nodiscard]] Result<std::optional<CsvRecord>> next();
    [[nodiscard]] double share() const;  // of the text that has been read, 0..1

private:
    [[nodiscard]] Result<void> refill();
    [[nodiscard]] bool moreToCome() const { return m_pieces && !m_pieces->atEnd(); }
    [[nodiscard]] Result<QString> quotedField();
    [[nodiscard]] Result<QString> plainField();
    [[nodiscard]] bool atLineEnd() const;
    void passLineEnd();
    std::optional<TextPieces> m_pieces;
    QString m_text;              // what was not read yet, and a little before it
    qsizetype m_textBegins = 0;  // where that stands in the whole text
    QChar m_separator;
    qsizetype m_at = 0;
    int m_line = 1;
    qsizetype m_fields = 0;  // of the last record; the next one has most likely as many
};

}  // namespace steelyard
