#include "core/storage/health_entries.h"

#include "core/storage/statement.h"

namespace steelyard {
namespace {

constexpr std::string_view kRatingsWithDiscomfort =
    "session_id IN (SELECT id FROM session WHERE athlete_id = ?1) "
    "AND coalesce(elbow, shoulder, wrist, lower_back, hip, knee, neck, ankle) IS NOT NULL";
// The rules whose sentence may say which joint and how much.
constexpr std::string_view kDecisionsOnDiscomfort =
    "athlete_id = ?1 AND rule IN ('joint_discomfort', 'deload_due') AND (said <> '' OR reason <> '')";
constexpr std::string_view kTrialsOnDiscomfort = "athlete_id = ?1 AND end_kind = 'discomfort' AND end_reason <> ''";

Result<std::int64_t> countWhere(Database& db, std::string_view table, std::string_view condition, Id<Athlete> athlete)
{
    std::string sql("SELECT count(*) FROM ");
    sql.append(table).append(" WHERE ").append(condition);
    STEELYARD_TRY(auto st, db.prepare(sql));
    st.bind(1, athlete);
    STEELYARD_CHECK(st.step());
    return st.int64(0);
}

Result<void> changeWhere(Database& db, std::string_view change, std::string_view condition, Id<Athlete> athlete)
{
    std::string sql(change);
    sql.append(" WHERE ").append(condition);
    STEELYARD_TRY(auto st, db.prepare(sql));
    st.bind(1, athlete);
    return st.run();
}

}  // namespace

Result<HealthEntries> countHealthEntries(Database& db, Id<Athlete> athlete)
{
    HealthEntries kept;
    STEELYARD_TRY(kept.ratings, countWhere(db, "exercise_rating", kRatingsWithDiscomfort, athlete));
    STEELYARD_TRY(const auto decisions, countWhere(db, "decision", kDecisionsOnDiscomfort, athlete));
    STEELYARD_TRY(const auto trials, countWhere(db, "trial", kTrialsOnDiscomfort, athlete));
    kept.sentences = decisions + trials;
    STEELYARD_TRY(const auto histories, countWhere(db, "athlete", "id = ?1 AND joint_history <> ''", athlete));
    kept.jointHistory = histories > 0;
    return kept;
}

Result<void> removeHealthEntries(Transaction& transaction, Id<Athlete> athlete)
{
    Database& db = transaction.database();
    STEELYARD_CHECK(changeWhere(db,
                                "UPDATE exercise_rating SET elbow = NULL, shoulder = NULL, wrist = NULL, "
                                "lower_back = NULL, hip = NULL, knee = NULL, neck = NULL, ankle = NULL",
                                kRatingsWithDiscomfort, athlete));
    STEELYARD_CHECK(changeWhere(db, "DELETE FROM exercise_rating",
                                "session_id IN (SELECT id FROM session WHERE athlete_id = ?1) AND coalesce(tension, "
                                "burn, pump, next_soreness, next_weakness) IS NULL AND gave_out IS NULL AND "
                                "coalesce(elbow, shoulder, wrist, lower_back, hip, knee, neck, ankle) IS NULL",
                                athlete));
    STEELYARD_CHECK(changeWhere(db, "UPDATE decision SET said = '', reason = ''", kDecisionsOnDiscomfort, athlete));
    STEELYARD_CHECK(changeWhere(db, "UPDATE trial SET end_reason = ''", kTrialsOnDiscomfort, athlete));
    STEELYARD_CHECK(changeWhere(db, "UPDATE athlete SET joint_history = ''", "id = ?1", athlete));
    transaction.changes().athletes.insert(athlete);
    transaction.changes().roster = true;
    return {};
}

}  // namespace steelyard
