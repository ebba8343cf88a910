#include "core/exchange/athlete_json.h"
#include "core/exchange/block_json.h"

#include "core/exchange/json_names.h"
#include "core/exchange/reading_fit_json.h"
#include "core/storage/block_repository.h"
#include "core/storage/erased_athlete_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/rule_setting_repository.h"
#include "core/storage/set_json.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>

namespace steelyard {
namespace {

struct BookJsonReaderText {
    Q_DECLARE_TR_FUNCTIONS(BookJsonReaderText)
};

Result<void> needNoAthletes(Database& db)
{
    STEELYARD_TRY(const auto athletes, db.integer("SELECT count(*) FROM athlete"));
    if (athletes == 0) return {};
    return fail(
        ErrorCode::Invalid,
        BookJsonReaderText::tr("This book has athletes already. Whole exports go into a new book: make one, and "
                               "import there."));
}

Result<void> emptyLibrary(Transaction& transaction)
{
    transaction.changes().library = true;
    transaction.changes().settings = true;
    return transaction.database().execute(
        "DELETE FROM block WHERE athlete_id IS NULL; DELETE FROM rule_setting; DELETE FROM rep_standard; DELETE FROM "
        "variant; DELETE FROM exercise_muscle;"
        "DELETE FROM exercise; DELETE FROM grip; DELETE FROM muscle; DELETE FROM gym_bar; DELETE FROM gym_plate;"
        "DELETE FROM gym_run; DELETE FROM gym;");
}

Result<void> settingsFromJson(Transaction& transaction, const QJsonObject& json)
{
    const RuleSettingRepository settings(transaction.database());
    for (auto rule = json.begin(); rule != json.end(); ++rule) {
        const QJsonObject values = rule.value().toObject();
        for (auto value = values.begin(); value != values.end(); ++value) {
            if (!value.value().isDouble())
                return fail(ErrorCode::Invalid,
                            BookJsonReaderText::tr("book.json, rule_settings, “%1”, “%2”: a number is "
                                                   "needed.")
                                .arg(rule.key(), value.key()));
            STEELYARD_CHECK(settings.put(transaction, rule.key(), value.key(), value.value().toDouble()));
        }
    }
    return {};
}

Result<void> erasedFromJson(Transaction& transaction, const QJsonArray& list)
{
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), BookJsonReaderText::tr("book.json, erased athlete"));
        const QUuid mark = readUuid(place, QStringLiteral("mark"));
        const QDateTime at = QDateTime::fromString(place.text(QStringLiteral("erased_at")), Qt::ISODate);
        if (!at.isValid())
            place.fault(QStringLiteral("erased_at"),
                        BookJsonReaderText::tr("a time is needed, like 2027-03-01T18:00:00Z"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(ErasedAthleteRepository(transaction.database()).put(transaction, {mark, at}));
    }
    return {};
}

// Ids of sets that are gone lie below zero, where no set that is made later gets one.
struct GoneIds {
    std::int64_t next = -1;
};

Result<std::int64_t> replacedSetId(Database& db, JsonPlace& place, Id<Session> session, Id<LiftLine> line,
                                   GoneIds& gone)
{
    const auto number = place.optionalInteger(QStringLiteral("now"));
    if (!number) return gone.next--;
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT id FROM set_entry WHERE session_id = ?1 AND line_id = ?2 AND number = ?3"));
    st.bindAll(session, line, *number);
    STEELYARD_TRY(const bool found, st.step());
    if (found) return st.int64(0);
    place.fault(QStringLiteral("now"), BookJsonReaderText::tr("logbook.csv has no such set on that day"));
    return 0;
}

Result<void> replacedValueFromJson(Statement& add, const QJsonObject& json, const QString& where)
{
    JsonPlace place(json, where);
    const QString at = place.text(QStringLiteral("at"));
    const QString change = place.text(QStringLiteral("change"));
    const QJsonObject set = place.object(QStringLiteral("set"));
    if (!QDateTime::fromString(at, Qt::ISODate).isValid())
        place.fault(QStringLiteral("at"), BookJsonReaderText::tr("a time is needed, like 2027-03-01T18:00:00Z"));
    if (change != QStringLiteral("edited") && change != QStringLiteral("removed"))
        place.fault(QStringLiteral("change"), BookJsonReaderText::tr("“edited” or “removed” is needed"));
    if (!setFromJson(set)) place.fault(QStringLiteral("set"), BookJsonReaderText::tr("this can't be read as a set"));
    STEELYARD_CHECK(place.finish());
    add.bind(4, at);
    add.bind(5, change);
    add.bind(6, QString::fromUtf8(QJsonDocument(set).toJson(QJsonDocument::Compact)));
    return add.run();
}

Result<void> replacedSetFromJson(Transaction& transaction, const BookJsonRest::OfAthlete& rest, const QJsonObject& json,
                                 GoneIds& gone)
{
    const QString where = BookJsonReaderText::tr("book.json, athlete “%1”, replaced set").arg(rest.name);
    JsonPlace place(json, where);
    const QDate date = readDate(place, QStringLiteral("date"));
    const auto line = readName(place, QStringLiteral("line"), rest.lines);
    const QJsonArray values = place.array(QStringLiteral("was"));
    static_cast<void>(place.optionalInteger(QStringLiteral("now")));
    STEELYARD_CHECK(place.finish());
    if (!line) return {};  // finish() has said so
    STEELYARD_TRY(const auto session,
                  LogbookRepository(transaction.database()).session(transaction, rest.athlete, date));
    STEELYARD_TRY(const auto set, replacedSetId(transaction.database(), place, session, *line, gone));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(auto add, transaction.database().prepare(
                                "INSERT INTO set_replaced (session_id, line_id, set_id, replaced_at, change, was) "
                                "VALUES (?1, ?2, ?3, ?4, ?5, ?6)"));
    add.bindAll(session, *line, set);
    for (const auto& value : values) STEELYARD_CHECK(replacedValueFromJson(add, value.toObject(), where));
    return {};
}

}  // namespace

Result<BookJsonRest> bookFromJson(Transaction& transaction, const QJsonObject& json, QDate today)
{
    STEELYARD_CHECK(needNoAthletes(transaction.database()));
    JsonPlace place(json, BookJsonReaderText::tr("book.json"));
    if (const int format = place.integer(QStringLiteral("format")); format > kBookJsonFormat)
        return fail(ErrorCode::NewerFormat,
                    BookJsonReaderText::tr("book.json has format %1; this program reads %2. A newer program is needed.")
                        .arg(format)
                        .arg(kBookJsonFormat));
    const QJsonObject library = place.object(QStringLiteral("library"));
    const QJsonArray gyms = place.array(QStringLiteral("gyms"));
    const QJsonArray athletes = place.array(QStringLiteral("athletes"));
    const QJsonObject settings = place.object(QStringLiteral("rule_settings"));
    const QJsonArray templates = place.array(QStringLiteral("block_templates"));
    const QJsonArray fits = place.array(QStringLiteral("reading_parameters"));
    const QJsonArray erased = place.array(QStringLiteral("erased_athletes"));
    STEELYARD_CHECK(place.finish());

    JsonNames names;
    STEELYARD_CHECK(emptyLibrary(transaction));
    STEELYARD_CHECK(libraryFromJson(transaction, library, names));
    for (const auto& gym : gyms) STEELYARD_CHECK(gymFromJson(transaction, gym.toObject(), names));
    STEELYARD_CHECK(settingsFromJson(transaction, settings));
    STEELYARD_CHECK(readingFitsFromJson(transaction, fits));
    STEELYARD_CHECK(erasedFromJson(transaction, erased));
    std::vector<Id<Athlete>> ids;
    for (const auto& athlete : athletes) {
        STEELYARD_TRY(const auto id, athleteFromJson(transaction, athlete.toObject(), today, names));
        ids.push_back(id);
    }
    // After the athletes, whose own standards a template may use.
    for (const auto& item : templates) {
        STEELYARD_TRY(const auto shape, templateFromJson(item.toObject(), names));
        STEELYARD_CHECK(BlockRepository(transaction.database()).insert(transaction, shape.value, shape.uuid));
    }
    BookJsonRest rest;
    for (std::size_t i = 0; i < ids.size(); ++i) {
        const QJsonObject athlete = athletes.at(static_cast<qsizetype>(i)).toObject();
        STEELYARD_TRY(auto one, recordFromJson(transaction, athlete, ids[i], names));
        rest.athletes.push_back(std::move(one));
    }
    return rest;
}

Result<void> replacedSetsFromJson(Transaction& transaction, const BookJsonRest& rest)
{
    GoneIds gone;
    for (const BookJsonRest::OfAthlete& athlete : rest.athletes)
        for (const QJsonObject& json : athlete.replacedSets)
            STEELYARD_CHECK(replacedSetFromJson(transaction, athlete, json, gone));
    return {};
}

}  // namespace steelyard
