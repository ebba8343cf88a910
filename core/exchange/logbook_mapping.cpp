#include "core/exchange/logbook_mapping.h"

#include "core/base/text.h"
#include "core/domain/logbook.h"
#include "core/exchange/json_reading.h"
#include "core/exchange/logbook_columns.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>
#include <QtCore/QRegularExpression>

namespace steelyard {
namespace {

struct MappingText {
    Q_DECLARE_TR_FUNCTIONS(MappingText)
};

// Other words for our columns, folded by searchKey(); common headings of a coach's spreadsheet in English and German.
const std::map<QString, QStringList>& headerWords()
{
    static const std::map<QString, QStringList> words{
        {QStringLiteral("date"), {QStringLiteral("day"), QStringLiteral("datum"), QStringLiteral("tag")}},
        {QStringLiteral("athlete"),
         {QStringLiteral("lifter"), QStringLiteral("name"), QStringLiteral("client"), QStringLiteral("person"),
          QStringLiteral("athlet"), QStringLiteral("sportler")}},
        {QStringLiteral("exercise"), {QStringLiteral("lift"), QStringLiteral("movement"), QStringLiteral("ubung")}},
        {QStringLiteral("load"),
         {QStringLiteral("weight"), QStringLiteral("gewicht"), QStringLiteral("last"), QStringLiteral("kg"),
          QStringLiteral("lb"), QStringLiteral("lbs")}},
        {QStringLiteral("unit"), {QStringLiteral("units"), QStringLiteral("einheit")}},
        {QStringLiteral("set"), {QStringLiteral("set no"), QStringLiteral("satz"), QStringLiteral("no")}},
        {QStringLiteral("reps"),
         {QStringLiteral("repetitions"), QStringLiteral("rep"), QStringLiteral("wdh"),
          QStringLiteral("wiederholungen")}},
        {QStringLiteral("grip"), {QStringLiteral("griff")}},
        {QStringLiteral("variant"), {QStringLiteral("variation"), QStringLiteral("variante")}},
        {QStringLiteral("rpe"), {QStringLiteral("effort"), QStringLiteral("anstrengung")}},
        {QStringLiteral("rir"), {QStringLiteral("reserve"), QStringLiteral("reps left")}},
        {QStringLiteral("note"),
         {QStringLiteral("notes"), QStringLiteral("comment"), QStringLiteral("remarks"), QStringLiteral("notiz"),
          QStringLiteral("bemerkung")}}};
    return words;
}

std::optional<QString> columnForHeader(const QString& header)
{
    // "Weight (kg)", "Load [lb]": the unit in brackets is read elsewhere.
    static const QRegularExpression bracketed(QStringLiteral("\\s*[(\\[].*$"));
    QString folded = searchKey(header.trimmed().remove(bracketed));
    if (logbookColumns().contains(folded)) return folded;
    for (const auto& [column, words] : headerWords())
        if (words.contains(folded)) return column;
    return std::nullopt;
}

QChar guessSeparator(const QString& firstLine)
{
    QChar best = u',';
    for (const QChar candidate : {u',', u';', u'\t', u'|'})
        if (firstLine.count(candidate) > firstLine.count(best)) best = candidate;
    return best;
}

DateOrder guessDateOrder(const QString& text)
{
    static const QRegularExpression isoDate(QStringLiteral("\\b\\d{4}[-/.]\\d{1,2}[-/.]\\d{1,2}\\b"));
    if (isoDate.match(text).hasMatch()) return DateOrder::YearMonthDay;
    static const QRegularExpression other(QStringLiteral("\\b(\\d{1,2})[-/.](\\d{1,2})[-/.](\\d{2,4})\\b"));
    auto matches = other.globalMatch(text);
    while (matches.hasNext()) {
        const auto match = matches.next();
        if (match.captured(1).toInt() > 12) return DateOrder::DayMonthYear;
        if (match.captured(2).toInt() > 12) return DateOrder::MonthDayYear;
    }
    return text.contains(other) ? DateOrder::DayMonthYear : DateOrder::YearMonthDay;
}

Result<QChar> oneCharacter(JsonPlace& file, const QString& name, QChar fallback)
{
    if (!file.has(name)) return fallback;
    const QString text = file.text(name);
    if (text.size() != 1) file.fault(name, MappingText::tr("one character is needed"));
    return text.isEmpty() ? fallback : text.front();
}

void readColumns(JsonPlace& file, LogbookMapping& mapping)
{
    const QJsonObject columns = file.object(QStringLiteral("columns"));
    for (auto it = columns.begin(); it != columns.end(); ++it) {
        if (!logbookColumns().contains(it.key()))
            file.fault(
                QStringLiteral("columns"),
                MappingText::tr("“%1” is none of %2").arg(it.key(), logbookColumns().join(QStringLiteral(", "))));
        if (it.value().isDouble() && it.value().toInt() >= 1)
            mapping.columns[it.key()] = it.value().toInt();
        else if (it.value().isString())
            mapping.columns[it.key()] = it.value().toString();
        else
            file.fault(QStringLiteral("columns"),
                       MappingText::tr("“%1” needs a header or a number from 1").arg(it.key()));
    }
    const QJsonObject fixed = file.object(QStringLiteral("fixed"));
    for (auto it = fixed.begin(); it != fixed.end(); ++it) {
        if (!logbookColumns().contains(it.key()) || !it.value().isString())
            file.fault(QStringLiteral("fixed"), MappingText::tr("“%1” is no column of ours with a text").arg(it.key()));
        mapping.fixed[it.key()] = it.value().toString();
    }
}

}  // namespace

const QStringList& logbookColumns()
{
    static const QStringList columns = [] {
        QStringList list;
        for (const LogbookColumn& column : kLogbookColumns)
            list.append(QString::fromLatin1(column.name.data(), static_cast<qsizetype>(column.name.size())));
        return list;
    }();
    return columns;
}

Result<LogbookMapping> readMapping(const QByteArray& json)
{
    QJsonParseError parse;
    const QJsonDocument document = QJsonDocument::fromJson(json, &parse);
    if (!document.isObject())
        return fail(ErrorCode::Invalid, MappingText::tr("The mapping is no JSON object (%1, byte %2).")
                                            .arg(parse.errorString(), QString::number(parse.offset)));
    JsonPlace file(document.object(), MappingText::tr("The mapping"));
    LogbookMapping mapping;
    if (file.integer(QStringLiteral("format")) != 1)
        file.fault(QStringLiteral("format"), MappingText::tr("this program reads format 1"));
    if (const auto encoding = file.optionalChoice<TextEncoding>(QStringLiteral("encoding")))
        mapping.encoding = *encoding;
    STEELYARD_TRY(mapping.separator, oneCharacter(file, QStringLiteral("separator"), mapping.separator));
    STEELYARD_TRY(mapping.decimalMark, oneCharacter(file, QStringLiteral("decimal"), mapping.decimalMark));
    if (mapping.decimalMark != u'.' && mapping.decimalMark != u',')
        file.fault(QStringLiteral("decimal"), MappingText::tr("“.” or “,” is needed"));
    if (const auto order = file.optionalChoice<DateOrder>(QStringLiteral("date_order"))) mapping.dateOrder = *order;
    if (file.has(QStringLiteral("header"))) mapping.hasHeader = file.flag(QStringLiteral("header"));
    mapping.unit = file.optionalChoice<MassUnit>(QStringLiteral("unit"));
    if (mapping.separator == u'"' || mapping.separator == u'\n' || mapping.separator == u'\r')
        file.fault(QStringLiteral("separator"),
                   MappingText::tr("a quotation mark or a line end can't separate fields"));
    readColumns(file, mapping);
    if (!mapping.hasHeader && mapping.columns.empty())
        file.fault(QStringLiteral("columns"), MappingText::tr("a file without a header needs its columns by number"));
    STEELYARD_CHECK(file.finish());
    return mapping;
}

LogbookMapping guessMapping(const QByteArray& beginning)
{
    LogbookMapping mapping;
    auto text = decodeText(beginning, TextEncoding::Utf8);
    if (!text) {
        // A cut in the middle of a character is not another encoding: look at whole lines only.
        const qsizetype lastLine = beginning.lastIndexOf('\n');
        text = decodeText(beginning.left(std::max<qsizetype>(lastLine, 0)), TextEncoding::Utf8);
        if (!text || lastLine < 0) {
            mapping.encoding = TextEncoding::Windows1252;
            text = QString::fromLatin1(beginning);
        }
    }
    static const QRegularExpression lineEnd(QStringLiteral("\\r\\n|\\n|\\r"));
    const QString firstLine = text->section(lineEnd, 0, 0);
    mapping.separator = guessSeparator(firstLine);
    static const QRegularExpression decimalComma(QStringLiteral("(^|[^\\d,])\\d{1,3},\\d{1,2}([^\\d,]|$)"));
    if (mapping.separator != u',' && text->contains(decimalComma)) mapping.decimalMark = u',';
    mapping.dateOrder = guessDateOrder(*text);
    CsvReader reader(firstLine, mapping.separator);
    const auto header = reader.next();
    if (!header || !*header) return mapping;
    for (qsizetype i = 0; i < (*header)->fields.size(); ++i) {
        const QString& name = (*header)->fields[i];
        const auto column = columnForHeader(name);
        if (column && !mapping.columns.contains(*column)) mapping.columns[*column] = name;
        const QString folded = searchKey(name);
        if (column == QStringLiteral("load") && folded.contains(QStringLiteral("lb"))) mapping.unit = MassUnit::lb;
        if (column == QStringLiteral("load") && folded.contains(QStringLiteral("kg"))) mapping.unit = MassUnit::kg;
    }
    return mapping;
}

}  // namespace steelyard
