#include "core/exchange/logbook_reader.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LogbookReaderText {
    Q_DECLARE_TR_FUNCTIONS(LogbookReaderText)
};

}  // namespace

LogbookReader::LogbookReader(QByteArray bytes, const LogbookMapping& mapping)
    : m_mapping(mapping), m_csv(TextPieces(std::move(bytes), mapping.encoding), mapping.separator)
{}

Result<std::unique_ptr<LogbookReader>> LogbookReader::open(QByteArray bytes, const LogbookMapping& mapping, QDate today)
{
    if (bytes.size() > kMostImportBytes)
        return fail(ErrorCode::Invalid,
                    LogbookReaderText::tr("The file is larger than %1 MB. Split it and import the parts.")
                        .arg(kMostImportBytes / 1024 / 1024));
    std::unique_ptr<LogbookReader> reader(new LogbookReader(std::move(bytes), mapping));
    STEELYARD_CHECK(reader->readHeader());
    STEELYARD_TRY(reader->m_columns, placeColumns(reader->m_mapping, reader->m_header));
    reader->m_parser.emplace(reader->m_mapping, reader->m_columns, reader->m_header, today);
    return reader;
}

Result<void> LogbookReader::readHeader()
{
    for (int passed = 0; passed <= m_mapping.skip; ++passed) {
        STEELYARD_TRY(auto record, m_csv.next());
        if (!record)
            return fail(
                ErrorCode::Invalid,
                LogbookReaderText::tr("The file is empty. A logbook has a header line and a row for each set."));
        m_record = std::move(*record);
    }
    for (qsizetype i = 0; i < m_record.fields.size(); ++i)
        m_header.append(m_mapping.hasHeader ? m_record.fields[i].trimmed() : QString::number(i + 1));
    m_recordWaits = !m_mapping.hasHeader;
    return {};
}

Result<bool> LogbookReader::next()
{
    if (!std::exchange(m_recordWaits, false)) {
        STEELYARD_TRY(auto record, m_csv.next());
        if (!record) return false;
        m_record = std::move(*record);
    }
    ++m_rowsRead;
    m_sets.clear();
    m_problems.clear();
    static_cast<void>(m_parser->parse(m_record, m_sets, m_problems));
    STEELYARD_CHECK(checkNames());
    return true;
}

Result<void> LogbookReader::checkNames() const
{
    if (athletes().size() <= kMostNames && exercises().size() <= kMostNames) return {};
    const QString column =
        athletes().size() > kMostNames ? LogbookReaderText::tr("lifters") : LogbookReaderText::tr("exercises");
    return fail(ErrorCode::Invalid,
                LogbookReaderText::tr("Up to line %1 there are more than %2 different %3, so this is "
                                      "hardly the column of their names. Choose another one.")
                    .arg(QString::number(m_record.line), QString::number(kMostNames), column));
}

}  // namespace steelyard
