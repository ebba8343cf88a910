#include "core/care/retention.h"

#include "core/storage/statement.h"

namespace steelyard {
namespace {

constexpr std::string_view kLastDays =
    "SELECT a.id, a.name, a.archived, max(d.date) AS last FROM athlete a JOIN ("
    "SELECT athlete_id, date FROM session UNION ALL SELECT athlete_id, date FROM body_mass "
    "UNION ALL SELECT athlete_id, date FROM measurement UNION ALL SELECT athlete_id, made_on FROM decision "
    "UNION ALL SELECT athlete_id, given_on FROM health_consent "
    "UNION ALL SELECT b.athlete_id, y.date FROM block b JOIN block_week w ON w.block_id = b.id "
    "JOIN block_day y ON y.week_id = w.id) d ON d.athlete_id = a.id "
    "GROUP BY a.id HAVING last IS NOT NULL ORDER BY last, a.name";

}  // namespace

Result<std::vector<InactiveAthlete>> inactiveAthletes(Database& db, QDate today, int months)
{
    STEELYARD_TRY(auto st, db.prepare(kLastDays));
    std::vector<InactiveAthlete> inactive;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return inactive;
        const QDate last = st.date(3);
        if (last.isValid() && last.addMonths(months) <= today)
            inactive.push_back({st.id<Athlete>(0), st.text(1), last, st.flag(2)});
    }
}

}  // namespace steelyard
