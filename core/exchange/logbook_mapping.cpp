#include "core/exchange/logbook_mapping.h"

#include "core/domain/logbook.h"
#include "core/exchange/json_reading.h"
#include "core/exchange/logbook_columns.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>

namespace steelyard {
namespace {

struct MappingText {
    Q_DECLARE_TR_FUNCTIONS(MappingText)
};

Result<QChar> oneCharacter(JsonPlace& file, const QString& name, QChar fallback)
{
    if (!file.has(name)) return fallback;
    const QString text = file.text(name);
    if (text.size() != 1) file.fault(name, MappingText::tr("one character is needed"));
    return text.isEmpty() ? fallback : text.front();
}

// {"date": "Datum", "reps": 3}
ColumnNames readColumnNames(const QJsonObject& columns, const QString& where, bool ofASet, JsonPlace& file)
{
    ColumnNames names;
    for (auto it = columns.begin(); it != columns.end(); ++it) {
        const QLatin1StringView also = ofASet ? kNotationColumn : kCountColumn;
        if (!logbookColumns().contains(it.key()) && it.key() != also)
            file.fault(
                where,
                MappingText::tr("“%1” is none of %2").arg(it.key(), logbookColumns().join(QStringLiteral(", "))));
        if (it.value().isDouble() && it.value().toInt() >= 1)
            names[it.key()] = it.value().toInt();
        else if (it.value().isString())
            names[it.key()] = it.value().toString();
        else
            file.fault(where, MappingText::tr("“%1” needs a header or a number from 1").arg(it.key()));
    }
    return names;
}

void readColumns(JsonPlace& file, LogbookMapping& mapping)
{
    const QString columns = QStringLiteral("columns");
    mapping.columns = readColumnNames(file.object(columns), columns, false, file);
    const QString sets = QStringLiteral("sets");
    for (const QJsonValue set : file.array(sets)) {
        if (!set.isObject() || set.toObject().isEmpty())
            file.fault(sets, MappingText::tr("each set needs its columns, such as {\"load\": 4, \"reps\": 5}"));
        mapping.sets.push_back(readColumnNames(set.toObject(), sets, true, file));
    }
    const QJsonObject fixed = file.object(QStringLiteral("fixed"));
    for (auto it = fixed.begin(); it != fixed.end(); ++it) {
        if (!logbookColumns().contains(it.key()) || !it.value().isString())
            file.fault(QStringLiteral("fixed"), MappingText::tr("“%1” is no column of ours with a text").arg(it.key()));
        mapping.fixed[it.key()] = it.value().toString();
    }
}

Result<void> readExercises(JsonPlace& file, LogbookMapping& mapping)
{
    for (const QJsonValue row : file.array(QStringLiteral("exercises"))) {
        JsonPlace place = JsonPlace::of(row, MappingText::tr("The mapping's exercises"));
        const ExerciseName theirs{place.text(QStringLiteral("name")), place.optionalText(QStringLiteral("variant"))};
        JsonPlace is(place.object(QStringLiteral("is")),
                     MappingText::tr("The mapping's exercise “%1”").arg(theirs.exercise));
        const ExerciseName ours{is.shortText(QStringLiteral("exercise")), is.optionalText(QStringLiteral("variant"))};
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(is.finish());
        mapping.exercises[theirs] = ours;
    }
    return {};
}

QJsonObject columnsJson(const ColumnNames& columns)
{
    QJsonObject json;
    for (const auto& [column, name] : columns) {
        if (const auto* text = std::get_if<QString>(&name))
            json[column] = *text;
        else
            json[column] = std::get<int>(name);
    }
    return json;
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
    mapping.byHand = file.flag(QStringLiteral("by_hand"));
    mapping.skip = file.optionalInteger(QStringLiteral("skip")).value_or(0);
    if (mapping.skip < 0 || mapping.skip > 1000)
        file.fault(QStringLiteral("skip"), MappingText::tr("a number from 0 to 1000 is needed"));
    mapping.unit = file.optionalChoice<MassUnit>(QStringLiteral("unit"));
    if (mapping.separator == u'"' || mapping.separator == u'\n' || mapping.separator == u'\r')
        file.fault(QStringLiteral("separator"),
                   MappingText::tr("a quotation mark or a line end can't separate fields"));
    readColumns(file, mapping);
    STEELYARD_CHECK(readExercises(file, mapping));
    if (!mapping.hasHeader && mapping.columns.empty())
        file.fault(QStringLiteral("columns"), MappingText::tr("a file without a header needs its columns by number"));
    STEELYARD_CHECK(file.finish());
    return mapping;
}

QByteArray writeMapping(const LogbookMapping& mapping)
{
    QJsonObject json{{QStringLiteral("format"), 1},
                     {QStringLiteral("encoding"), toText(mapping.encoding)},
                     {QStringLiteral("separator"), QString(mapping.separator)},
                     {QStringLiteral("decimal"), QString(mapping.decimalMark)},
                     {QStringLiteral("date_order"), toText(mapping.dateOrder)},
                     {QStringLiteral("header"), mapping.hasHeader},
                     {QStringLiteral("by_hand"), mapping.byHand},
                     {QStringLiteral("skip"), mapping.skip},
                     {QStringLiteral("columns"), columnsJson(mapping.columns)}};
    if (mapping.unit) json[QStringLiteral("unit")] = toText(*mapping.unit);
    QJsonObject fixed;
    for (const auto& [column, value] : mapping.fixed) fixed[column] = value;
    json[QStringLiteral("fixed")] = fixed;
    QJsonArray sets;
    for (const ColumnNames& set : mapping.sets) sets.append(columnsJson(set));
    json[QStringLiteral("sets")] = sets;
    QJsonArray exercises;
    for (const auto& [theirs, ours] : mapping.exercises)
        exercises.append(QJsonObject{{QStringLiteral("name"), theirs.exercise},
                                     {QStringLiteral("variant"), theirs.variant},
                                     {QStringLiteral("is"), QJsonObject{{QStringLiteral("exercise"), ours.exercise},
                                                                        {QStringLiteral("variant"), ours.variant}}}});
    json[QStringLiteral("exercises")] = exercises;
    return QJsonDocument(json).toJson(QJsonDocument::Compact);
}

}  // namespace steelyard
