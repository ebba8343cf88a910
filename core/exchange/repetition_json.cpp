#include "core/exchange/repetition_json.h"

#include "core/exchange/json_names.h"
#include "core/exchange/library_json.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/repetition_repository.h"
#include "core/storage/set_json.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct RepetitionJsonText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionJsonText)
};

Result<std::optional<Id<SetEntry>>> setOnDay(Database& db, Id<Session> session, Id<LiftLine> line, int number)
{
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT id FROM set_entry WHERE session_id = ?1 AND line_id = ?2 AND number = ?3"));
    st.bindAll(session, line, number);
    STEELYARD_TRY(const bool found, st.step());
    return found ? std::optional(st.id<SetEntry>(0)) : std::nullopt;
}

Result<void> oneSetFromJson(Transaction& transaction, const BookJsonRest::OfAthlete& rest, const QJsonObject& json)
{
    JsonPlace place(json, RepetitionJsonText::tr("book.json, athlete “%1”, repetitions").arg(rest.name));
    const QDate date = readDate(place, QStringLiteral("date"));
    const auto line = readName(place, QStringLiteral("line"), rest.lines);
    const int number = place.integer(QStringLiteral("set"));
    const auto repetitions = repetitionsFromJson(place.array(QStringLiteral("repetitions")));
    if (!repetitions)
        place.fault(QStringLiteral("repetitions"), RepetitionJsonText::tr("this can't be read as a set's repetitions"));
    STEELYARD_CHECK(place.finish());
    if (!line || !repetitions) return {};  // finish() has said so
    Database& db = transaction.database();
    STEELYARD_TRY(const auto session, LogbookRepository(db).session(transaction, rest.athlete, date));
    STEELYARD_TRY(const auto set, setOnDay(db, session, *line, number));
    if (!set) {
        place.fault(QStringLiteral("set"), RepetitionJsonText::tr("logbook.csv has no such set on that day"));
        return place.finish();
    }
    return RepetitionRepository(db).put(transaction, rest.athlete, *set, *repetitions);
}

}  // namespace

Result<QJsonArray> repetitionsToJson(Database& db, Id<Athlete> athlete, const std::map<Id<LiftLine>, QUuid>& lines)
{
    STEELYARD_TRY(const auto all, RepetitionRepository(db).ofLifter(athlete));
    STEELYARD_TRY(auto st, db.prepare("SELECT s.date, e.line_id, e.number FROM set_entry e "
                                      "JOIN session s ON s.id = e.session_id WHERE e.id = ?1"));
    QJsonArray list;
    for (const SetRepetitions& of : all) {
        st.bindAll(of.set);
        STEELYARD_TRY(const bool found, st.step());
        const auto line = found ? lines.find(st.id<LiftLine>(1)) : lines.end();
        if (line != lines.end())
            list.append(QJsonObject{{QStringLiteral("date"), st.text(0)},
                                    {QStringLiteral("line"), uuidText(line->second)},
                                    {QStringLiteral("set"), st.integer(2)},
                                    {QStringLiteral("repetitions"), toJson(of.repetitions)}});
        st.reset();
    }
    return list;
}

Result<void> repetitionsFromJson(Transaction& transaction, const BookJsonRest& rest)
{
    for (const BookJsonRest::OfAthlete& athlete : rest.athletes)
        for (const QJsonObject& json : athlete.repetitions) STEELYARD_CHECK(oneSetFromJson(transaction, athlete, json));
    return {};
}

}  // namespace steelyard
