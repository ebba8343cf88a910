#include "core/storage/decision_repository.h"

#include "core/storage/statement.h"

namespace steelyard {

Result<std::vector<Row<Decision>>> DecisionRepository::of(Id<Athlete> athlete) const
{
    STEELYARD_TRY(auto st, m_database.prepare(
                               "SELECT id, uuid, line_id, rule, kind, made_on, until, action, reason, "
                               "severity, said, measure FROM decision WHERE athlete_id = ?1 ORDER BY made_on, id"));
    st.bind(1, athlete);
    std::vector<Row<Decision>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return rows;
        Decision decision{.athlete = athlete};
        decision.line = st.maybeId<LiftLine>(2);
        decision.rule = st.text(3);
        decision.kind = st.choice(4, DecisionKind::Act);
        decision.madeOn = st.date(5);
        decision.until = st.maybeDate(6);
        decision.action = st.text(7);
        decision.reason = st.text(8);
        decision.severity = st.maybeChoice<Severity>(9);
        decision.said = st.text(10);
        decision.measure = st.maybeReal(11);
        rows.push_back({st.id<Decision>(0), st.uuid(1), std::move(decision)});
    }
}

Result<Id<Decision>> DecisionRepository::insert(Transaction& transaction, const Decision& decision, QUuid uuid) const
{
    if (const Problems problems = validate(decision); !problems.empty())
        return fail(ErrorCode::Invalid, problems.front().text);
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO decision (uuid, athlete_id, line_id, rule, kind, made_on, "
                                              "until, action, reason, severity, said, measure) "
                                              "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)"));
    st.bindAll(uuid, decision.athlete, decision.line, decision.rule, decision.kind, decision.madeOn, decision.until,
               decision.action, decision.reason, decision.severity, decision.said, decision.measure);
    STEELYARD_TRY(const auto id, st.insert());
    transaction.changes().athletes.insert(decision.athlete);
    return Id<Decision>(id);
}

}  // namespace steelyard
