#include "core/storage/erased_athlete_repository.h"

#include "core/storage/statement.h"

namespace steelyard {

QUuid erasureMark(const QUuid& athlete)
{
    // Any fixed UUID would do; it keeps these marks apart from other uses of the same function.
    static const QUuid space(QStringLiteral("6b1f3b0a-52f4-4b0e-9d0b-2f6c1f1f7c5e"));
    return QUuid::createUuidV5(space, athlete.toRfc4122());
}

Result<std::vector<ErasedAthlete>> ErasedAthleteRepository::all() const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT mark, erased_at FROM erased_athlete ORDER BY erased_at, mark"));
    std::vector<ErasedAthlete> erased;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return erased;
        erased.push_back({st.uuid(0), QDateTime::fromString(st.text(1), Qt::ISODate)});
    }
}

Result<void> ErasedAthleteRepository::put(Transaction& transaction, const ErasedAthlete& erased) const
{
    Q_ASSERT(&transaction.database() == &m_database);
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO erased_athlete (mark, erased_at) VALUES (?1, ?2) "
                                              "ON CONFLICT (mark) DO NOTHING"));
    st.bindAll(erased.mark, erased.at.toUTC().toString(Qt::ISODate));
    return st.run();
}

}  // namespace steelyard
