#include "core/exchange/csv_reader.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct CsvText {
    Q_DECLARE_TR_FUNCTIONS(CsvText)
};

}  // namespace

bool CsvReader::atLineEnd() const
{
    return m_text.at(m_at) == u'\n' || m_text.at(m_at) == u'\r';
}

void CsvReader::passLineEnd()
{
    if (m_text.at(m_at) == u'\r' && m_at + 1 < m_text.size() && m_text.at(m_at + 1) == u'\n') ++m_at;
    ++m_at;
    ++m_line;
}

Result<QString> CsvReader::quotedField()
{
    const int began = m_line;
    QString field;
    for (++m_at; m_at < m_text.size();) {
        const QChar c = m_text.at(m_at);
        if (c == u'"') {
            if (m_at + 1 < m_text.size() && m_text.at(m_at + 1) == u'"') {
                field += c;
                m_at += 2;
                continue;
            }
            ++m_at;
            if (m_at < m_text.size() && m_text.at(m_at) != m_separator && !atLineEnd())
                return fail(ErrorCode::Invalid,
                            CsvText::tr("Line %1: there is text after a closing quotation mark. Double the mark if it "
                                        "belongs to the text.")
                                .arg(m_line));
            return field;
        }
        if (c == u'\n' || (c == u'\r' && !(m_at + 1 < m_text.size() && m_text.at(m_at + 1) == u'\n'))) ++m_line;
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
    while (m_at < m_text.size() && m_text.at(m_at) != m_separator && !atLineEnd()) ++m_at;
    if (m_at - begin > kMostFieldCharacters)
        return fail(
            ErrorCode::Invalid,
            CsvText::tr("Line %1: a field is longer than %2 characters.").arg(m_line).arg(kMostFieldCharacters));
    return m_text.mid(begin, m_at - begin);
}

Result<std::optional<CsvRecord>> CsvReader::next()
{
    while (true) {
        STEELYARD_CHECK(refill());
        while (m_at < m_text.size() && atLineEnd()) passLineEnd();
        if (m_at < m_text.size()) break;
        if (!moreToCome()) return std::nullopt;
    }
    STEELYARD_CHECK(refill());
    CsvRecord record{m_line, {}, m_textBegins + m_at};
    record.fields.reserve(m_fields);
    while (true) {
        const bool quoted = m_at < m_text.size() && m_text.at(m_at) == u'"';
        STEELYARD_TRY(QString field, quoted ? quotedField() : plainField());
        if (record.fields.size() == kMostFields)
            return fail(ErrorCode::Invalid,
                        CsvText::tr("Line %1 has more than %2 fields. Is the separator the right one?")
                            .arg(record.line)
                            .arg(kMostFields));
        record.fields.append(std::move(field));
        if (m_at >= m_text.size()) break;
        if (atLineEnd()) {
            passLineEnd();
            break;
        }
        ++m_at;  // the separator; a field follows even if it is empty
    }
    m_fields = record.fields.size();
    // At its beginning there was room for the longest record that is read.
    if (m_at >= m_text.size() && moreToCome())
        return fail(ErrorCode::Invalid,
                    CsvText::tr("Line %1: a row is longer than %2 characters. Is a quotation mark missing?")
                        .arg(record.line)
                        .arg(kMostRecordCharacters));
    return record;
}

// Before a record is begun: what was read goes, and as much comes as the longest record has.
Result<void> CsvReader::refill()
{
    if (!moreToCome() || m_text.size() - m_at > kMostRecordCharacters) return {};
    m_text.remove(0, m_at);
    m_textBegins += m_at;
    m_at = 0;
    while (moreToCome() && m_text.size() <= 2 * kMostRecordCharacters) {
        STEELYARD_TRY(const QString piece, m_pieces->next());
        m_text += piece;
    }
    return {};
}

double CsvReader::share() const
{
    const qsizetype all = m_textBegins + m_text.size();
    const double ofText = all == 0 ? 1.0 : static_cast<double>(m_textBegins + m_at) / static_cast<double>(all);
    return m_pieces ? m_pieces->share() * ofText : ofText;
}

}  // namespace steelyard
