// Bytes of a text file as Unicode, whole or piece by piece, strictly: nothing is replaced silently.
//
//   STEELYARD_TRY(const QString text, decodeText(bytes, TextEncoding::Windows1252));
//   TextPieces pieces(bytes, TextEncoding::Utf8);          // the same text, about a megabyte at a time
//   while (!pieces.atEnd()) { STEELYARD_TRY(const QString piece, pieces.next()); ... }
//
// Bytes that are handed over, and held by nobody else, are freed as soon as the last piece was taken.
// A byte order mark decides between UTF-8 and UTF-16, whatever was asked for, and is dropped. UTF-16 without a mark is read
// in the byte order in which more of its first characters are Latin ones.
// Fails with Invalid and the line: bytes that are not of the encoding, a NUL.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/result.h"

#include <QtCore/QByteArray>

namespace steelyard {

enum class TextEncoding { Utf8, Utf16, Latin1, Windows1252 };

class TextPieces {
public:
    TextPieces(QByteArray bytes, TextEncoding encoding);
    [[nodiscard]] bool atEnd() const { return m_at >= m_size; }
    [[nodiscard]] Result<QString> next();
    [[nodiscard]] double share() const;  // of the bytes that were handed out, 0..1

private:
    [[nodiscard]] qsizetype endOfPiece() const;
    QByteArray m_bytes;  // given free with the last piece
    qsizetype m_size;
    TextEncoding m_encoding;
    bool m_bigEndian = false;  // of UTF-16
    qsizetype m_at = 0;
    qsizetype m_line = 1;
};

[[nodiscard]] Result<QString> decodeText(const QByteArray& bytes, TextEncoding encoding);

template <>
struct EnumText<TextEncoding> {
    static constexpr auto table = std::to_array<EnumKey<TextEncoding>>({{TextEncoding::Utf8, "utf-8"},
                                                                        {TextEncoding::Utf16, "utf-16"},
                                                                        {TextEncoding::Latin1, "latin-1"},
                                                                        {TextEncoding::Windows1252, "windows-1252"}});
};

}  // namespace steelyard
