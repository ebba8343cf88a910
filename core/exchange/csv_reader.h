// Reads delimited text strictly: RFC 4180 quoting, any single-character separator, LF, CRLF or CR line ends.
//
//   STEELYARD_TRY(const QString text, decodeText(bytes, TextEncoding::Utf8));
//   CsvReader reader(text, u',');
//   while (true) {
//       STEELYARD_TRY(const auto record, reader.next());
//       if (!record) break;
//   }
//
// Fails with Invalid and the line: bytes that are not of the encoding, a NUL, a quotation that is never closed, text after
// a closing quotation mark, a field over kMostFieldCharacters. Nothing is replaced silently.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/result.h"

#include <QtCore/QStringList>

#include <optional>

namespace steelyard {

enum class TextEncoding { Utf8, Utf16, Latin1, Windows1252 };

inline constexpr qint64 kMostImportBytes = 256LL * 1024 * 1024;
inline constexpr qsizetype kMostFieldCharacters = 64 * 1024;

// A byte order mark decides between UTF-8 and UTF-16, whatever was asked for, and is dropped.
[[nodiscard]] Result<QString> decodeText(const QByteArray& bytes, TextEncoding encoding);

struct CsvRecord {
    int line = 1;  // of its first character
    QStringList fields;
    qsizetype at = 0;  // of its first character in the text
};

class CsvReader {
public:
    CsvReader(QString text, QChar separator) : m_text(std::move(text)), m_separator(separator) {}
    // Goes on where a record began, to read it once more.
    CsvReader(QString text, QChar separator, int line, qsizetype at)
        : m_text(std::move(text)), m_separator(separator), m_at(at), m_line(line)
    {}
    // The next record that is not an empty line; nothing at the end.
    [[nodiscard]] Result<std::optional<CsvRecord>> next();
    [[nodiscard]] double share() const;  // of the text that has been read, 0..1

private:
    [[nodiscard]] Result<QString> quotedField();
    [[nodiscard]] Result<QString> plainField();
    [[nodiscard]] bool atLineEnd() const;
    void passLineEnd();
    QString m_text;
    QChar m_separator;
    qsizetype m_at = 0;
    int m_line = 1;
    qsizetype m_fields = 0;  // of the last record; the next one has most likely as many
};

template <>
struct EnumText<TextEncoding> {
    static constexpr auto table = std::to_array<EnumKey<TextEncoding>>({{TextEncoding::Utf8, "utf-8"},
                                                                        {TextEncoding::Utf16, "utf-16"},
                                                                        {TextEncoding::Latin1, "latin-1"},
                                                                        {TextEncoding::Windows1252, "windows-1252"}});
};

}  // namespace steelyard
