#include "core/storage/session_reader.h"

#include "core/storage/logbook_repository.h"

namespace steelyard {
namespace {

Result<void> readSetsOf(Database& db, Id<Athlete> athlete, QDate date, SessionRecord& record)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT e.id, l.variant_id, l.grip_id, l.standard_id, " + std::string(kSetColumns)
                                      + " FROM session s JOIN set_entry e ON e.session_id = s.id "
                                        "JOIN lift_line l ON l.id = e.line_id "
                                        "WHERE s.athlete_id = ?1 AND s.date = ?2 ORDER BY e.position, e.id"));
    st.bindAll(athlete, date);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        record.sets.push_back(
            {st.id<SetEntry>(0), {athlete, st.id<Variant>(1), st.id<Grip>(2), st.id<RepStandard>(3)}, readSet(st, 4)});
    }
}

Result<void> readRatingsOf(Database& db, Id<Athlete> athlete, QDate date, SessionRecord& record)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT l.variant_id, l.grip_id, l.standard_id, " + std::string(kRatingColumns)
                                      + " FROM session s JOIN exercise_rating r ON r.session_id = s.id "
                                        "JOIN lift_line l ON l.id = r.line_id "
                                        "WHERE s.athlete_id = ?1 AND s.date = ?2 ORDER BY r.id"));
    st.bindAll(athlete, date);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        record.ratings.push_back(
            {{athlete, st.id<Variant>(0), st.id<Grip>(1), st.id<RepStandard>(2)}, readRating(st, 3)});
    }
}

}  // namespace

Result<SessionRecord> readSession(Database& db, Id<Athlete> athlete, QDate date)
{
    SessionRecord record;
    STEELYARD_CHECK(readSetsOf(db, athlete, date, record));
    STEELYARD_CHECK(readRatingsOf(db, athlete, date, record));
    return record;
}

Result<std::map<Id<Athlete>, int>> countSetsOn(Database& db, QDate date)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT s.athlete_id, count(*) FROM session s "
                                      "JOIN set_entry e ON e.session_id = s.id WHERE s.date = ?1 GROUP BY 1"));
    st.bind(1, date);
    std::map<Id<Athlete>, int> counts;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return counts;
        counts.emplace(st.id<Athlete>(0), st.integer(1));
    }
}

}  // namespace steelyard
