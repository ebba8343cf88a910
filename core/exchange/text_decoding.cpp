#include "core/exchange/text_decoding.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QtEndian>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct DecodingText {
    Q_DECLARE_TR_FUNCTIONS(DecodingText)
};

constexpr qsizetype kPieceBytes = 1024 * 1024;

// What windows-1252 has where Latin-1 has control characters (0x80 to 0x9F); 0 = unused. Source: the Unicode consortium's
// mapping table CP1252.TXT, from memory.
constexpr std::array<char16_t, 32> kWindows1252{0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                                0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

int utf8Length(unsigned char lead)
{
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return 2;
    if (lead >= 0xE0 && lead <= 0xEF) return 3;
    return lead >= 0xF0 && lead <= 0xF4 ? 4 : 0;
}

// The place of the first byte that is not well-formed UTF-8 (Unicode 15, table 3-7), or -1.
qsizetype firstBadUtf8(QByteArrayView bytes)
{
    for (qsizetype at = 0; at < bytes.size();) {
        const auto lead = static_cast<unsigned char>(bytes[at]);
        const int length = utf8Length(lead);
        if (length == 0 || at + length > bytes.size()) return at;
        for (int i = 1; i < length; ++i)
            if ((static_cast<unsigned char>(bytes[at + i]) & 0xC0) != 0x80) return at;
        const auto second = length > 1 ? static_cast<unsigned char>(bytes[at + 1]) : 0;
        if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F) || (lead == 0xF0 && second < 0x90)
            || (lead == 0xF4 && second > 0x8F))
            return at;
        at += length;
    }
    return -1;
}

// A piece of text, or the place in the piece of the first byte that doesn't fit.
using DecodedPiece = tl::expected<QString, qsizetype>;

DecodedPiece decodeUtf8(QByteArrayView bytes)
{
    if (const qsizetype bad = firstBadUtf8(bytes); bad >= 0) return tl::unexpected(bad);
    return QString::fromUtf8(bytes);
}

DecodedPiece decodeSingleBytes(QByteArrayView bytes, bool windows)
{
    QString text = QString::fromLatin1(bytes);
    if (!windows) return text;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const char16_t code = text[i].unicode();
        if (code < 0x80 || code > 0x9F) continue;
        const char16_t mapped = kWindows1252[code - 0x80];
        if (mapped == 0) return tl::unexpected(i);
        text[i] = QChar(mapped);
    }
    return text;
}

DecodedPiece decodeUtf16(QByteArrayView bytes, bool bigEndian)
{
    if (bytes.size() % 2 != 0) return tl::unexpected(bytes.size() - 1);
    QString text(bytes.size() / 2, Qt::Uninitialized);
    for (qsizetype i = 0; i < text.size(); ++i)
        text[i] = QChar(bigEndian ? qFromBigEndian<char16_t>(bytes.data() + 2 * i)
                                  : qFromLittleEndian<char16_t>(bytes.data() + 2 * i));
    for (qsizetype i = 0; i < text.size(); ++i) {
        const bool pair = text[i].isHighSurrogate() && i + 1 < text.size() && text[i + 1].isLowSurrogate();
        if (text[i].isSurrogate() && !pair) return tl::unexpected(2 * i);
        if (pair) ++i;
    }
    return text;
}

// Latin characters have a zero in their high byte.
bool looksBigEndian(QByteArrayView bytes)
{
    qsizetype evenZeros = 0;
    qsizetype oddZeros = 0;
    for (qsizetype i = 0; i < std::min<qsizetype>(bytes.size(), 2000); ++i)
        if (bytes[i] == 0) ++(i % 2 == 0 ? evenZeros : oddZeros);
    return evenZeros > oddZeros;
}

}  // namespace

TextPieces::TextPieces(QByteArray bytes, TextEncoding encoding)
    : m_bytes(std::move(bytes)), m_size(m_bytes.size()), m_encoding(encoding)
{
    const bool littleMark = m_bytes.startsWith("\xFF\xFE");
    const bool bigMark = m_bytes.startsWith("\xFE\xFF");
    if (littleMark || bigMark) {
        m_encoding = TextEncoding::Utf16;
        m_bigEndian = bigMark;
        m_at = 2;
    } else if (m_bytes.startsWith("\xEF\xBB\xBF")) {
        m_encoding = TextEncoding::Utf8;
        m_at = 3;
    } else if (m_encoding == TextEncoding::Utf16) {
        m_bigEndian = looksBigEndian(m_bytes);
    }
}

double TextPieces::share() const
{
    return m_size == 0 ? 1.0 : static_cast<double>(m_at) / static_cast<double>(m_size);
}

// No character is cut in two.
qsizetype TextPieces::endOfPiece() const
{
    if (m_bytes.size() - m_at <= kPieceBytes) return m_bytes.size();
    qsizetype end = m_at + kPieceBytes;
    if (m_encoding == TextEncoding::Utf8) {
        for (int i = 0; i < 4 && (static_cast<unsigned char>(m_bytes[end]) & 0xC0) == 0x80; ++i) --end;
    } else if (m_encoding == TextEncoding::Utf16) {
        const auto high = static_cast<unsigned char>(m_bytes[end - (m_bigEndian ? 2 : 1)]);
        if (high >= 0xD8 && high <= 0xDB) end -= 2;
    }
    return end;
}

Result<QString> TextPieces::next()
{
    const qsizetype end = endOfPiece();
    const QByteArrayView piece = QByteArrayView(m_bytes).sliced(m_at, end - m_at);
    const DecodedPiece text = m_encoding == TextEncoding::Utf8 ? decodeUtf8(piece)
                              : m_encoding == TextEncoding::Utf16
                                  ? decodeUtf16(piece, m_bigEndian)
                                  : decodeSingleBytes(piece, m_encoding == TextEncoding::Windows1252);
    if (!text)
        return fail(ErrorCode::Invalid,
                    DecodingText::tr("Line %1: these bytes are no %2 text. Say which encoding the file has.")
                        .arg(QString::number(m_line + std::count(piece.begin(), piece.begin() + text.error(), '\n')),
                             toText(m_encoding)));
    if (const qsizetype zero = text->indexOf(QChar(0)); zero >= 0)
        return fail(ErrorCode::Invalid, DecodingText::tr("Line %1 holds a NUL character; this is no text file.")
                                            .arg(m_line + text->left(zero).count(u'\n')));
    m_line += text->count(u'\n');
    m_at = end;
    if (atEnd()) m_bytes.clear();
    return *text;
}

Result<QString> decodeText(const QByteArray& bytes, TextEncoding encoding)
{
    TextPieces pieces(bytes, encoding);
    QString text;
    while (!pieces.atEnd()) {
        STEELYARD_TRY(const QString piece, pieces.next());
        text += piece;
    }
    return text;
}

}  // namespace steelyard
