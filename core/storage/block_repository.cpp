#include "core/storage/block_repository.h"

#include "core/storage/statement.h"

namespace steelyard {
namespace {

Slot readSlot(const Statement& st, int first)
{
    Slot slot{
        .variant = st.id<Variant>(first), .grip = st.id<Grip>(first + 1), .standard = st.id<RepStandard>(first + 2)};
    slot.sets = st.integer(first + 3);
    slot.band = {st.integer(first + 4), st.integer(first + 5)};
    slot.plannedRir = st.maybeDecimal(first + 6);
    slot.load = st.maybeLoad(first + 7);
    slot.restSeconds = st.maybeInteger(first + 8);
    slot.note = st.text(first + 9);
    slot.progression = st.text(first + 10);
    slot.superset = st.integer(first + 11);
    slot.loadLocked = st.flag(first + 12);
    return slot;
}

// One pass over week -> day -> slot; outer joins keep weeks without days and days without slots.
Result<std::vector<PlannedWeek>> readWeeks(Database& db, Id<Block> block)
{
    STEELYARD_TRY(
        auto st, db.prepare("SELECT w.id, w.kind, d.id, d.date, d.title, s.id, s.variant_id, s.grip_id, s.standard_id, "
                            "s.sets, s.band_low, s.band_high, s.planned_rir, s.load, s.rest_s, s.note, s.progression, "
                            "s.superset, s.load_locked "
                            "FROM block_week w LEFT JOIN block_day d ON d.week_id = w.id "
                            "LEFT JOIN slot s ON s.day_id = d.id WHERE w.block_id = ?1 "
                            "ORDER BY w.ordinal, d.ordinal, s.ordinal"));
    st.bind(1, block);
    std::vector<PlannedWeek> weeks;
    std::int64_t week = 0;
    std::int64_t day = 0;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return weeks;
        if (st.int64(0) != week) {
            week = st.int64(0);
            weeks.push_back({st.choice(1, WeekKind::Normal), {}});
        }
        auto& days = weeks.back().days;
        if (!st.isNull(2) && st.int64(2) != day) {
            day = st.int64(2);
            days.push_back({st.date(3), st.text(4), {}});
        }
        if (!st.isNull(5)) days.back().slotList.push_back(readSlot(st, 6));
    }
}

Result<void> writeSlots(Database& db, std::int64_t day, const std::vector<Slot>& slotList)
{
    STEELYARD_TRY(auto add, db.prepare("INSERT INTO slot (day_id, ordinal, variant_id, grip_id, standard_id, sets, "
                                       "band_low, band_high, planned_rir, load, rest_s, note, progression, "
                                       "superset, load_locked) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, "
                                       "?12, ?13, ?14, ?15)"));
    int ordinal = 0;
    for (const Slot& slot : slotList) {
        add.bindAll(day, ++ordinal, slot.variant, slot.grip, slot.standard, slot.sets, slot.band.low, slot.band.high,
                    slot.plannedRir, slot.load, slot.restSeconds, slot.note, slot.progression, slot.superset,
                    slot.loadLocked);
        STEELYARD_CHECK(add.run());
    }
    return {};
}

Result<void> readAims(Database& db, Row<Block>& row)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT muscle_id, weekly_sets_low, weekly_sets_high FROM block_aim "
                                      "WHERE block_id = ?1 ORDER BY muscle_id"));
    st.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        row.value.aims.push_back({st.id<Muscle>(0), st.integer(1), st.integer(2)});
    }
}

Result<void> readDaysOff(Database& db, Row<Block>& row)
{
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT first, last, reason FROM block_days_off WHERE block_id = ?1 ORDER BY first"));
    st.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        row.value.daysOff.push_back({st.date(0), st.date(1), st.text(2)});
    }
}

Result<void> writeAround(Database& db, Id<Block> id, const Block& block)
{
    STEELYARD_TRY(auto aim, db.prepare("INSERT INTO block_aim (block_id, muscle_id, weekly_sets_low, weekly_sets_high) "
                                       "VALUES (?1, ?2, ?3, ?4)"));
    for (const MuscleAim& one : block.aims) {
        aim.bindAll(id, one.muscle, one.weeklySetsLow, one.weeklySetsHigh);
        STEELYARD_CHECK(aim.run());
    }
    STEELYARD_TRY(auto off, db.prepare("INSERT INTO block_days_off (block_id, first, last, reason) "
                                       "VALUES (?1, ?2, ?3, ?4)"));
    for (const DaysOff& one : block.daysOff) {
        off.bindAll(id, one.first, one.last, one.reason);
        STEELYARD_CHECK(off.run());
    }
    return {};
}

Result<void> runFor(Database& db, Id<Block> id, std::initializer_list<std::string_view> statements)
{
    for (const std::string_view sql : statements) {
        STEELYARD_TRY(auto st, db.prepare(sql));
        st.bind(1, id);
        STEELYARD_CHECK(st.run());
    }
    return {};
}

Result<void> refuse(const Problems& problems)
{
    if (problems.empty()) return {};
    return fail(ErrorCode::Invalid, problems.front().text);
}

}  // namespace

Result<std::vector<Row<Block>>> BlockRepository::of(Id<Athlete> athlete) const
{
    STEELYARD_TRY(auto st,
                  m_database.prepare("SELECT id, uuid, name, aim, start, minutes_per_day, easing_sets_percent, "
                                     "easing_load_percent, easing_reserve FROM block WHERE athlete_id = ?1 "
                                     "ORDER BY start, id"));
    st.bind(1, athlete);
    std::vector<Row<Block>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        Block block{.athlete = athlete, .name = st.text(2), .aim = st.text(3), .start = st.date(4)};
        block.minutesPerDay = st.maybeInteger(5);
        block.easing = {st.integer(6), st.integer(7), st.integer(8)};
        rows.push_back({st.id<Block>(0), st.uuid(1), std::move(block)});
    }
    for (Row<Block>& row : rows) {
        STEELYARD_TRY(row.value.weeks, readWeeks(m_database, row.id));
        STEELYARD_CHECK(readAims(m_database, row));
        STEELYARD_CHECK(readDaysOff(m_database, row));
    }
    return rows;
}

Result<void> BlockRepository::writeWeeks(Id<Block> id, const std::vector<PlannedWeek>& weeks) const
{
    STEELYARD_TRY(auto addWeek,
                  m_database.prepare("INSERT INTO block_week (block_id, ordinal, kind) VALUES (?1, ?2, ?3)"));
    STEELYARD_TRY(auto addDay, m_database.prepare("INSERT INTO block_day (week_id, ordinal, date, title) "
                                                  "VALUES (?1, ?2, ?3, ?4)"));
    int weekOrdinal = 0;
    for (const PlannedWeek& week : weeks) {
        addWeek.bindAll(id, ++weekOrdinal, week.kind);
        STEELYARD_TRY(const auto weekId, addWeek.insert());
        int dayOrdinal = 0;
        for (const PlannedDay& day : week.days) {
            addDay.bindAll(weekId, ++dayOrdinal, day.date, day.title);
            STEELYARD_TRY(const auto dayId, addDay.insert());
            STEELYARD_CHECK(writeSlots(m_database, dayId, day.slotList));
        }
    }
    return {};
}

Result<Id<Block>> BlockRepository::insert(Transaction& transaction, const Block& block, QUuid uuid) const
{
    STEELYARD_CHECK(refuse(validate(block)));
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO block (uuid, athlete_id, name, aim, start, minutes_per_day, "
                                              "easing_sets_percent, easing_load_percent, easing_reserve) "
                                              "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)"));
    st.bindAll(uuid, block.athlete, block.name, block.aim, block.start, block.minutesPerDay, block.easing.setsPercent,
               block.easing.loadPercent, block.easing.moreReserve);
    STEELYARD_TRY(const auto id, st.insert());
    STEELYARD_CHECK(writeWeeks(Id<Block>(id), block.weeks));
    STEELYARD_CHECK(writeAround(m_database, Id<Block>(id), block));
    transaction.changes().athletes.insert(block.athlete);
    return Id<Block>(id);
}

Result<void> BlockRepository::replace(Transaction& transaction, Id<Block> id, const Block& block) const
{
    STEELYARD_CHECK(refuse(validate(block)));
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE block SET name = ?1, aim = ?2, start = ?3, minutes_per_day = ?4, "
                                              "easing_sets_percent = ?5, easing_load_percent = ?6, easing_reserve = ?7 "
                                              "WHERE id = ?8"));
    st.bindAll(block.name, block.aim, block.start, block.minutesPerDay, block.easing.setsPercent,
               block.easing.loadPercent, block.easing.moreReserve, id);
    STEELYARD_CHECK(st.run());
    // The weeks that were go after the new ones have come, so that no row is used again. A slot whose row went over from one day to
    // another could not be undone: taking the day away takes its slots along before they go back.
    STEELYARD_CHECK(
        runFor(m_database, id,
               {"UPDATE block_week SET ordinal = -ordinal WHERE block_id = ?1",
                "DELETE FROM block_aim WHERE block_id = ?1", "DELETE FROM block_days_off WHERE block_id = ?1"}));
    STEELYARD_CHECK(writeWeeks(id, block.weeks));
    STEELYARD_CHECK(runFor(m_database, id, {"DELETE FROM block_week WHERE block_id = ?1 AND ordinal < 0"}));
    STEELYARD_CHECK(writeAround(m_database, id, block));
    transaction.changes().athletes.insert(block.athlete);
    return {};
}

Result<void> BlockRepository::remove(Transaction& transaction, Id<Block> id, Id<Athlete> owner) const
{
    STEELYARD_CHECK(removeRow(id));
    transaction.changes().athletes.insert(owner);
    return {};
}

Result<void> BlockRepository::removeRow(Id<Block> id) const
{
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM block WHERE id = ?1"));
    st.bind(1, id);
    return st.run();
}

Result<std::vector<Row<BlockTemplate>>> BlockRepository::templates() const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT id, uuid, name, aim, easing_sets_percent, easing_load_percent, "
                                              "easing_reserve FROM block WHERE athlete_id IS NULL ORDER BY name, id"));
    std::vector<Row<BlockTemplate>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        rows.push_back({st.id<BlockTemplate>(0),
                        st.uuid(1),
                        {st.text(2), st.text(3), {st.integer(4), st.integer(5), st.integer(6)}, {}}});
    }
    for (Row<BlockTemplate>& row : rows) {
        STEELYARD_TRY(row.value.weeks, readWeeks(m_database, Id<Block>(row.id.value())));
    }
    return rows;
}

Result<Id<BlockTemplate>> BlockRepository::insert(Transaction& transaction, const BlockTemplate& shape,
                                                  QUuid uuid) const
{
    STEELYARD_CHECK(refuse(validate(shape)));
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO block (uuid, name, aim, start, easing_sets_percent, "
                                              "easing_load_percent, easing_reserve) "
                                              "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)"));
    st.bindAll(uuid, shape.name, shape.aim, kTemplateStart, shape.easing.setsPercent, shape.easing.loadPercent,
               shape.easing.moreReserve);
    STEELYARD_TRY(const auto id, st.insert());
    STEELYARD_CHECK(writeWeeks(Id<Block>(id), shape.weeks));
    transaction.changes().library = true;
    return Id<BlockTemplate>(id);
}

Result<void> BlockRepository::remove(Transaction& transaction, Id<BlockTemplate> id) const
{
    STEELYARD_CHECK(removeRow(Id<Block>(id.value())));
    transaction.changes().library = true;
    return {};
}

}  // namespace steelyard
