#include "core/storage/trial_repository.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

#include <bit>

namespace steelyard {
namespace {

struct TrialRepositoryText {
    Q_DECLARE_TR_FUNCTIONS(TrialRepositoryText)
};

// Places count from 1 in the file, from 0 in the value.
std::int64_t ordinalOf(std::size_t place)
{
    return static_cast<std::int64_t>(place) + 1;
}

std::optional<std::int64_t> ordinalOf(std::optional<std::size_t> place)
{
    return place ? std::optional(ordinalOf(*place)) : std::nullopt;
}

std::size_t placeAt(const Statement& st, int column)
{
    return static_cast<std::size_t>(st.int64(column) - 1);
}

std::optional<std::size_t> maybePlaceAt(const Statement& st, int column)
{
    return st.isNull(column) ? std::nullopt : std::optional(placeAt(st, column));
}

template <class Read>
Result<void> readRows(Database& db, std::string_view sql, Id<Trial> trial, Read read)
{
    STEELYARD_TRY(auto st, db.prepare(sql));
    st.bind(1, trial);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        read(st);
    }
}

Result<void> readParts(Database& db, Id<Trial> id, Trial& trial)
{
    STEELYARD_CHECK(readRows(db,
                             "SELECT variant_id, grip_id, standard_id, band_low, band_high, lowering_s, run_in "
                             "FROM trial_arm WHERE trial_id = ?1 ORDER BY ordinal",
                             id, [&](const Statement& st) {
                                 TrialArm arm{.variant = st.id<Variant>(0),
                                              .grip = st.id<Grip>(1),
                                              .standard = st.id<RepStandard>(2),
                                              .band = {st.integer(3), st.integer(4)}};
                                 arm.loweringSeconds = st.maybeDecimal(5);
                                 arm.runIn = st.integer(6);
                                 trial.arms.push_back(arm);
                             }));
    STEELYARD_CHECK(readRows(db, "SELECT key, weight FROM trial_outcome WHERE trial_id = ?1 ORDER BY ordinal", id,
                             [&](const Statement& st) {
                                 trial.outcomes.push_back({st.text(0), st.real(1)});
                             }));
    STEELYARD_CHECK(readRows(
        db, "SELECT date, block, arm, arm_done, missed, note FROM trial_day WHERE trial_id = ?1 ORDER BY ordinal", id,
        [&](const Statement& st) {
            trial.days.push_back(
                {st.date(0), st.integer(1), placeAt(st, 2), maybePlaceAt(st, 3), st.flag(4), st.text(5)});
        }));
    return readRows(db, "SELECT date, sessions_done FROM trial_look WHERE trial_id = ?1 ORDER BY ordinal", id,
                    [&](const Statement& st) {
                        trial.looks.push_back({st.date(0), st.integer(1)});
                    });
}

// Rows keep their place, so that a change of one day is a change of one row. What is beyond the end goes.
template <class Part, class Bind>
Result<void> writeRows(Database& db, Id<Trial> trial, const std::vector<Part>& parts, std::string_view upsert,
                       std::string_view removeBeyond, Bind bind)
{
    STEELYARD_TRY(auto put, db.prepare(upsert));
    std::int64_t ordinal = 0;
    for (const Part& part : parts) {
        bind(put, trial, ++ordinal, part);
        STEELYARD_CHECK(put.run());
    }
    STEELYARD_TRY(auto remove, db.prepare(removeBeyond));
    remove.bindAll(trial, ordinal);
    return remove.run();
}

Result<void> writeDays(Database& db, Id<Trial> id, const Trial& trial)
{
    STEELYARD_CHECK(writeRows(
        db, id, trial.days,
        "INSERT INTO trial_day (trial_id, ordinal, date, block, arm, arm_done, missed, note) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8) ON CONFLICT (trial_id, ordinal) DO UPDATE SET date = excluded.date, "
        "block = excluded.block, arm = excluded.arm, arm_done = excluded.arm_done, missed = excluded.missed, "
        "note = excluded.note",
        "DELETE FROM trial_day WHERE trial_id = ?1 AND ordinal > ?2",
        [](Statement& st, Id<Trial> of, std::int64_t ordinal, const TrialDay& day) {
            st.bindAll(of, ordinal, day.date, day.block, ordinalOf(day.arm), ordinalOf(day.armDone), day.missed,
                       day.note);
        }));
    return writeRows(db, id, trial.looks,
                     "INSERT INTO trial_look (trial_id, ordinal, date, sessions_done) VALUES (?1, ?2, ?3, ?4) "
                     "ON CONFLICT (trial_id, ordinal) DO UPDATE SET date = excluded.date, "
                     "sessions_done = excluded.sessions_done",
                     "DELETE FROM trial_look WHERE trial_id = ?1 AND ordinal > ?2",
                     [](Statement& st, Id<Trial> of, std::int64_t ordinal, const TrialLook& look) {
                         st.bindAll(of, ordinal, look.date, look.sessionsDone);
                     });
}

Result<void> writeParts(Database& db, Id<Trial> id, const Trial& trial)
{
    STEELYARD_CHECK(writeRows(
        db, id, trial.arms,
        "INSERT INTO trial_arm (trial_id, ordinal, variant_id, grip_id, standard_id, band_low, band_high, lowering_s, "
        "run_in) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9) ON CONFLICT (trial_id, ordinal) DO UPDATE SET "
        "variant_id = excluded.variant_id, grip_id = excluded.grip_id, standard_id = excluded.standard_id, "
        "band_low = excluded.band_low, band_high = excluded.band_high, lowering_s = excluded.lowering_s, "
        "run_in = excluded.run_in",
        "DELETE FROM trial_arm WHERE trial_id = ?1 AND ordinal > ?2",
        [](Statement& st, Id<Trial> of, std::int64_t ordinal, const TrialArm& arm) {
            st.bindAll(of, ordinal, arm.variant, arm.grip, arm.standard, arm.band.low, arm.band.high,
                       arm.loweringSeconds, arm.runIn);
        }));
    STEELYARD_CHECK(writeRows(db, id, trial.outcomes,
                              "INSERT INTO trial_outcome (trial_id, ordinal, key, weight) VALUES (?1, ?2, ?3, ?4) "
                              "ON CONFLICT (trial_id, ordinal) DO UPDATE SET key = excluded.key, "
                              "weight = excluded.weight",
                              "DELETE FROM trial_outcome WHERE trial_id = ?1 AND ordinal > ?2",
                              [](Statement& st, Id<Trial> of, std::int64_t ordinal, const TrialOutcome& outcome) {
                                  st.bindAll(of, ordinal, outcome.key, outcome.weight);
                              }));
    return writeDays(db, id, trial);
}

std::int64_t storedSeed(const Trial& trial)
{
    return std::bit_cast<std::int64_t>(trial.seed);
}

// The columns that design and ending fill, from the third parameter on.
template <class Key>
void bindTrial(Statement& st, const Key& first, const Trial& trial)
{
    const auto& ending = trial.ending;
    st.bindAll(first, trial.question, trial.designedOn, trial.factor, trial.whyMoreThanOne, trial.limit.rating,
               trial.limit.sessionsRunning, trial.sets, trial.plannedRir, trial.daysBetween, trial.blocks,
               storedSeed(trial), ending ? std::optional(ending->date) : std::nullopt,
               ending ? std::optional(ending->kind) : std::nullopt, ending ? ending->reason : QStringLiteral(""),
               ending ? ordinalOf(ending->choice) : std::nullopt);
}

Result<void> refuseTrial(const Trial& trial)
{
    const Problems problems = validate(trial);
    if (problems.empty()) return {};
    return fail(ErrorCode::Invalid, problems.front().text, problems.front().field);
}

Trial readTrial(const Statement& st, Id<Athlete> athlete)
{
    Trial trial{.athlete = athlete};
    trial.question = st.text(2);
    trial.designedOn = st.date(3);
    trial.factor = st.choice(4, TrialFactor::Grip);
    trial.whyMoreThanOne = st.text(5);
    trial.limit = {st.integer(6), st.integer(7)};
    trial.sets = st.integer(8);
    trial.plannedRir = st.maybeDecimal(9);
    trial.daysBetween = st.integer(10);
    trial.blocks = st.integer(11);
    trial.seed = std::bit_cast<std::uint64_t>(st.int64(12));
    if (!st.isNull(13))
        trial.ending = TrialEnding{st.date(13), st.choice(14, TrialEnd::Stopped), st.text(15), maybePlaceAt(st, 16)};
    return trial;
}

}  // namespace

Result<std::vector<Row<Trial>>> TrialRepository::of(Id<Athlete> athlete) const
{
    STEELYARD_TRY(auto st, m_database.prepare(
                               "SELECT id, uuid, question, designed_on, factor, why_more_than_one, limit_rating, "
                               "limit_sessions, sets, planned_rir, days_between, blocks, seed, ended_on, end_kind, "
                               "end_reason, choice FROM trial WHERE athlete_id = ?1 ORDER BY designed_on, id"));
    st.bind(1, athlete);
    std::vector<Row<Trial>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        rows.push_back({st.id<Trial>(0), st.uuid(1), readTrial(st, athlete)});
    }
    for (Row<Trial>& row : rows) STEELYARD_CHECK(readParts(m_database, row.id, row.value));
    return rows;
}

Result<Id<Trial>> TrialRepository::insert(Transaction& transaction, const Trial& trial, QUuid uuid) const
{
    STEELYARD_CHECK(refuseTrial(trial));
    STEELYARD_TRY(auto st, m_database.prepare(
                               "INSERT INTO trial (athlete_id, question, designed_on, factor, why_more_than_one, "
                               "limit_rating, limit_sessions, sets, planned_rir, days_between, blocks, seed, ended_on, "
                               "end_kind, end_reason, choice, uuid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, "
                               "?11, ?12, ?13, ?14, ?15, ?16, ?17)"));
    bindTrial(st, trial.athlete, trial);
    st.bind(17, uuid);
    STEELYARD_TRY(const auto id, st.insert());
    STEELYARD_CHECK(writeParts(m_database, Id<Trial>(id), trial));
    transaction.changes().athletes.insert(trial.athlete);
    return Id<Trial>(id);
}

Result<void> TrialRepository::replace(Transaction& transaction, Id<Trial> id, const Trial& trial) const
{
    STEELYARD_CHECK(refuseTrial(trial));
    STEELYARD_TRY(auto st, m_database.prepare(
                               "UPDATE trial SET question = ?2, designed_on = ?3, factor = ?4, why_more_than_one = ?5, "
                               "limit_rating = ?6, limit_sessions = ?7, sets = ?8, planned_rir = ?9, "
                               "days_between = ?10, blocks = ?11, seed = ?12, ended_on = ?13, end_kind = ?14, "
                               "end_reason = ?15, choice = ?16 WHERE id = ?1 RETURNING id"));
    bindTrial(st, id, trial);
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return fail(ErrorCode::NotFound, TrialRepositoryText::tr("This trial is not in the book any more."));
    st.reset();
    STEELYARD_CHECK(writeParts(m_database, id, trial));
    transaction.changes().athletes.insert(trial.athlete);
    return {};
}

Result<void> TrialRepository::remove(Transaction& transaction, Id<Trial> id, Id<Athlete> owner) const
{
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM trial WHERE id = ?1"));
    st.bind(1, id);
    STEELYARD_CHECK(st.run());
    transaction.changes().athletes.insert(owner);
    return {};
}

}  // namespace steelyard
