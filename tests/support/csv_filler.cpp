#include "core/storage/statement.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"

#include <QtCore/QFile>

#include <map>

namespace steelyard::test {
namespace {

using CsvRow = std::map<QString, QString>;

// RFC 4180, written apart from the program's own reader.
std::vector<QStringList> csvRecords(const QString& text)
{
    std::vector<QStringList> records{{}};
    QString field;
    bool quoted = false;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text[i];
        if (c == u'"' && quoted && i + 1 < text.size() && text[i + 1] == u'"') {
            field += text[++i];
        } else if (c == u'"') {
            quoted = !quoted;
        } else if (!quoted && (c == u',' || c == u'\n')) {
            records.back().append(std::exchange(field, {}));
            if (c == u'\n') records.emplace_back();
        } else {
            field += c;
        }
    }
    records.pop_back();
    return records;
}

QString freeText(QString text)
{
    if (text.size() > 1 && text[0] == u'\'' && QStringView(u"=+-@\t\r'").contains(text[1])) text.remove(0, 1);
    return text;
}

std::optional<int> rated(const CsvRow& row, const QString& column)
{
    return row.at(column).isEmpty() ? std::nullopt : std::optional(row.at(column).toInt());
}

SetEntry setOf(const CsvRow& row)
{
    SetEntry set;
    set.number = row.at(QStringLiteral("set")).toInt();
    set.load = Load::parse(QStringView(row.at(QStringLiteral("load"))),
                           fromKey<MassUnit>(QStringView(row.at(QStringLiteral("unit")))).value())
                   .value();
    set.reps = row.at(QStringLiteral("reps")).toInt();
    set.off = rated(row, QStringLiteral("off"));
    set.failed = row.at(QStringLiteral("failed")) == QStringLiteral("1");
    if (const auto rir = Decimal::parse(QStringView(row.at(QStringLiteral("rir")))))
        set.effort = {Effort::Scale::Rir, *rir};
    if (const auto rpe = Decimal::parse(QStringView(row.at(QStringLiteral("rpe")))))
        set.effort = {Effort::Scale::Rpe, *rpe};
    set.marks = MarkCounts::parse(row.at(QStringLiteral("marks")).toStdString()).value();
    set.loweringSeconds = Decimal::parse(QStringView(row.at(QStringLiteral("lowering_s"))));
    set.leanDegrees = Decimal::parse(QStringView(row.at(QStringLiteral("lean_deg"))));
    set.kind = fromKey<SetKind>(QStringView(row.at(QStringLiteral("kind")))).value();
    set.note = freeText(row.at(QStringLiteral("note")));
    return set;
}

ExerciseRating ratingOf(const CsvRow& row)
{
    ExerciseRating r;
    r.tension = rated(row, QStringLiteral("tension"));
    r.burn = rated(row, QStringLiteral("burn"));
    r.pump = rated(row, QStringLiteral("pump"));
    r.gaveOut = freeText(row.at(QStringLiteral("gave_out")));
    for (const auto& joint : EnumText<Joint>::table)
        r.discomfort[static_cast<std::size_t>(joint.value)] =
            rated(row, QStringLiteral("discomfort_") + toText(joint.value));
    r.nextSoreness = rated(row, QStringLiteral("next_soreness"));
    r.nextWeakness = rated(row, QStringLiteral("next_weakness"));
    return r;
}

Result<Id<LiftLine>> lineOf(Database& db, const CsvRow& row)
{
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT l.id FROM lift_line l JOIN athlete a ON a.id = l.athlete_id "
                             "JOIN variant v ON v.id = l.variant_id JOIN exercise x ON x.id = v.exercise_id "
                             "JOIN grip g ON g.id = l.grip_id JOIN rep_standard r ON r.id = l.standard_id "
                             "WHERE a.name = ?1 AND x.name = ?2 AND v.name = ?3 AND g.name = ?4 AND r.name = ?5"));
    int index = 0;
    for (const char* column : {"athlete", "exercise", "variant", "grip", "standard"})
        st.bind(++index, freeText(row.at(QString::fromLatin1(column))));
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return fail(ErrorCode::NotFound, QStringLiteral("no such line"));
    return st.id<LiftLine>(0);
}

}  // namespace

Result<void> fillFromCsv(Transaction& tx, const QString& csvPath)
{
    Database& db = tx.database();
    const LogbookRepository log(db);
    const auto records = csvRecords(QString::fromUtf8(fileBytes(csvPath)));
    int position = 0;
    for (std::size_t i = 1; i < records.size(); ++i) {
        CsvRow row;
        for (qsizetype column = 0; column < records[0].size(); ++column)
            row[records[0][column]] = records[i].at(column);
        STEELYARD_TRY(const auto athlete,
                      AthleteRepository(db).findByName(freeText(row.at(QStringLiteral("athlete")))));
        STEELYARD_TRY(const auto line, lineOf(db, row));
        const QDate date = QDate::fromString(row.at(QStringLiteral("date")), Qt::ISODate);
        STEELYARD_TRY(const auto session, log.session(tx, athlete.id, date));
        STEELYARD_CHECK(log.insert(tx, athlete.id, {session, line, ++position, setOf(row)}));
        if (const auto rating = ratingOf(row); !rating.none())
            STEELYARD_CHECK(log.putRating(tx, athlete.id, session, line, rating));
    }
    return {};
}

}  // namespace steelyard::test
