#include "core/exchange/csv_reader.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringDecoder>

#include <array>

namespace steelyard {
namespace {

struct CsvText {
    Q_DECLARE_TR_FUNCTIONS(CsvText)
};

// What windows-1252 has where Latin-1 has control characters (0x80 to 0x9F); 0 = unused. Source: the Unicode consortium's
// mapping table CP1252.TXT, from memory.
constexpr std::array<char16_t, 32> kWindows1252{0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                                0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

int lineOf(const QByteArray& bytes, qsizetype offset)
{
    return static_cast<int>(1 + std::count(bytes.begin(), bytes.begin() + offset, '\n'));
}

tl::unexpected<Error> badBytes(int line, TextEncoding encoding)
{
    return fail(ErrorCode::Invalid, CsvText::tr("Line %1: these bytes are no %2 text. Say which encoding the file has.")
                                        .arg(QString::number(line), toText(encoding)));
}

int utf8Length(unsigned char lead)
{
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return 2;
    if (lead >= 0xE0 && lead <= 0xEF) return 3;
    return lead >= 0xF0 && lead <= 0xF4 ? 4 : 0;
}

// The place of the first byte that is not well-formed UTF-8 (Unicode 15, table 3-7), or -1.
qsizetype firstBadUtf8(const QByteArray& bytes)
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

Result<QString> decodeSingleBytes(const QByteArray& bytes, TextEncoding encoding)
{
    QString text = QString::fromLatin1(bytes);
    if (encoding == TextEncoding::Latin1) return text;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const char16_t code = text[i].unicode();
        if (code < 0x80 || code > 0x9F) continue;
        const char16_t mapped = kWindows1252[code - 0x80];
        if (mapped == 0) return badBytes(lineOf(bytes, i), encoding);
        text[i] = QChar(mapped);
    }
    return text;
}

Result<QString> decodeUtf16(const QByteArray& bytes)
{
    if (bytes.size() % 2 != 0) return badBytes(1, TextEncoding::Utf16);
    QStringDecoder decoder(QStringDecoder::Utf16);
    QString text = decoder.decode(bytes);
    if (text.startsWith(QChar(0xFEFF))) text.remove(0, 1);
    for (qsizetype i = 0; i < text.size(); ++i) {
        const bool pair = text[i].isHighSurrogate() && i + 1 < text.size() && text[i + 1].isLowSurrogate();
        if (text[i].isSurrogate() && !pair)
            return badBytes(static_cast<int>(1 + text.left(i).count(u'\n')), TextEncoding::Utf16);
        if (pair) ++i;
    }
    return text;
}

}  // namespace

Result<QString> decodeText(const QByteArray& bytes, TextEncoding encoding)
{
    Result<QString> text;
    if (bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF")) {
        text = decodeUtf16(bytes);
    } else if (bytes.startsWith("\xEF\xBB\xBF") || encoding == TextEncoding::Utf8) {
        if (const qsizetype bad = firstBadUtf8(bytes); bad >= 0)
            return badBytes(lineOf(bytes, bad), TextEncoding::Utf8);
        text = QString::fromUtf8(bytes);
        if (text->startsWith(QChar(0xFEFF))) text->remove(0, 1);
    } else if (encoding == TextEncoding::Utf16) {
        text = decodeUtf16(bytes);
    } else {
        text = decodeSingleBytes(bytes, encoding);
    }
    if (!text) return text;
    if (const qsizetype zero = text->indexOf(QChar(0)); zero >= 0)
        return fail(
            ErrorCode::Invalid,
            CsvText::tr("Line %1 holds a NUL character; this is no text file.").arg(1 + text->left(zero).count(u'\n')));
    return text;
}

bool CsvReader::atLineEnd() const
{
    return m_text[m_at] == u'\n' || m_text[m_at] == u'\r';
}

void CsvReader::passLineEnd()
{
    if (m_text[m_at] == u'\r' && m_at + 1 < m_text.size() && m_text[m_at + 1] == u'\n') ++m_at;
    ++m_at;
    ++m_line;
}

Result<QString> CsvReader::quotedField()
{
    const int began = m_line;
    QString field;
    for (++m_at; m_at < m_text.size();) {
        const QChar c = m_text[m_at];
        if (c == u'"') {
            if (m_at + 1 < m_text.size() && m_text[m_at + 1] == u'"') {
                field += c;
                m_at += 2;
                continue;
            }
            ++m_at;
            if (m_at < m_text.size() && m_text[m_at] != m_separator && !atLineEnd())
                return fail(ErrorCode::Invalid,
                            CsvText::tr("Line %1: there is text after a closing quotation mark. Double the mark if it "
                                        "belongs to the text.")
                                .arg(m_line));
            return field;
        }
        if (c == u'\n' || (c == u'\r' && !(m_at + 1 < m_text.size() && m_text[m_at + 1] == u'\n'))) ++m_line;
        field += c;
        ++m_at;
        if (field.size() > kMostFieldCharacters) break;
    }
    if (m_at >= m_text.size())
        return fail(
            ErrorCode::Invalid,
            CsvText::tr("Line %1: a quotation that begins here is never closed. Add the closing mark.").arg(began));
    return fail(ErrorCode::Invalid,
                CsvText::tr("Line %1: a field is longer than %2 characters. Is a quotation mark missing?")
                    .arg(began)
                    .arg(kMostFieldCharacters));
}

Result<QString> CsvReader::plainField()
{
    const qsizetype begin = m_at;
    while (m_at < m_text.size() && m_text[m_at] != m_separator && !atLineEnd()) ++m_at;
    if (m_at - begin > kMostFieldCharacters)
        return fail(
            ErrorCode::Invalid,
            CsvText::tr("Line %1: a field is longer than %2 characters.").arg(m_line).arg(kMostFieldCharacters));
    return m_text.mid(begin, m_at - begin);
}

Result<std::optional<CsvRecord>> CsvReader::next()
{
    while (m_at < m_text.size() && atLineEnd()) passLineEnd();
    if (m_at >= m_text.size()) return std::nullopt;
    CsvRecord record{m_line, {}, m_at};
    record.fields.reserve(m_fields);
    while (true) {
        const bool quoted = m_at < m_text.size() && m_text[m_at] == u'"';
        STEELYARD_TRY(QString field, quoted ? quotedField() : plainField());
        record.fields.append(std::move(field));
        if (m_at >= m_text.size()) break;
        if (atLineEnd()) {
            passLineEnd();
            break;
        }
        ++m_at;  // the separator; a field follows even if it is empty
    }
    m_fields = record.fields.size();
    return record;
}

double CsvReader::share() const
{
    return m_text.isEmpty() ? 1.0 : static_cast<double>(m_at) / static_cast<double>(m_text.size());
}

}  // namespace steelyard
