#include "core/exchange/csv_writer.h"

#include "core/exchange/csv_text.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QIODevice>

#include <algorithm>

namespace steelyard {
namespace {

struct CsvWriterText {
    Q_DECLARE_TR_FUNCTIONS(CsvWriterText)
};

constexpr qsizetype kCsvPiece = 256 * 1024;

}  // namespace

void CsvWriter::startField()
{
    if (m_rowBegun) m_buffer += ',';
    m_rowBegun = true;
}

void CsvWriter::append(QByteArrayView utf8)
{
    const bool quote =
        std::any_of(utf8.begin(), utf8.end(), [](char c) { return c == ',' || c == '"' || c == '\n' || c == '\r'; });
    if (!quote) {
        m_buffer.append(utf8);
        return;
    }
    m_buffer += '"';
    for (const char c : utf8) {
        if (c == '"') m_buffer += '"';
        m_buffer += c;
    }
    m_buffer += '"';
}

void CsvWriter::text(const QString& text)
{
    startField();
    append(guardText(text).toUtf8());
}

void CsvWriter::plain(std::string_view utf8)
{
    startField();
    append(QByteArrayView(utf8.data(), static_cast<qsizetype>(utf8.size())));
}

void CsvWriter::number(std::int64_t value)
{
    startField();
    m_buffer += QByteArray::number(static_cast<qlonglong>(value));
}

Result<void> CsvWriter::endRow()
{
    m_buffer += '\n';
    m_rowBegun = false;
    return m_buffer.size() < kCsvPiece ? Result<void>() : finish();
}

Result<void> CsvWriter::finish()
{
    if (m_device.write(m_buffer) != m_buffer.size())
        return fail(ErrorCode::Storage, CsvWriterText::tr("The file could not be written whole. Is the disk full?"),
                    m_device.errorString());
    m_buffer.clear();
    return {};
}

}  // namespace steelyard
