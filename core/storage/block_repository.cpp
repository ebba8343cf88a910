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
    return slot;
}

// One pass over week -> day -> slot; outer joins keep weeks without days and days without slots.
Result<void> readWeeks(Database& db, Row<Block>& row)
{
    STEELYARD_TRY(
        auto st, db.prepare("SELECT w.id, w.kind, d.id, d.date, d.title, s.id, s.variant_id, s.grip_id, s.standard_id, "
                            "s.sets, s.band_low, s.band_high, s.planned_rir, s.load, s.rest_s, s.note "
                            "FROM block_week w LEFT JOIN block_day d ON d.week_id = w.id "
                            "LEFT JOIN slot s ON s.day_id = d.id WHERE w.block_id = ?1 "
                            "ORDER BY w.ordinal, d.ordinal, s.ordinal"));
    st.bind(1, row.id);
    std::int64_t week = 0;
    std::int64_t day = 0;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        if (st.int64(0) != week) {
            week = st.int64(0);
            row.value.weeks.push_back({st.choice(1, WeekKind::Normal), {}});
        }
        auto& days = row.value.weeks.back().days;
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
                                       "band_low, band_high, planned_rir, load, rest_s, note) VALUES (?1, ?2, ?3, ?4, "
                                       "?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)"));
    int ordinal = 0;
    for (const Slot& slot : slotList) {
        add.bindAll(day, ++ordinal, slot.variant, slot.grip, slot.standard, slot.sets, slot.band.low, slot.band.high,
                    slot.plannedRir, slot.load, slot.restSeconds, slot.note);
        STEELYARD_CHECK(add.run());
    }
    return {};
}

}  // namespace

Result<std::vector<Row<Block>>> BlockRepository::of(Id<Athlete> athlete) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT id, uuid, name, aim, start FROM block WHERE athlete_id = ?1 "
                                              "ORDER BY start, id"));
    st.bind(1, athlete);
    std::vector<Row<Block>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        rows.push_back({st.id<Block>(0), st.uuid(1), {athlete, st.text(2), st.text(3), st.date(4), {}}});
    }
    for (Row<Block>& row : rows) STEELYARD_CHECK(readWeeks(m_database, row));
    return rows;
}

Result<void> BlockRepository::writeWeeks(Id<Block> id, const Block& block) const
{
    STEELYARD_TRY(auto addWeek,
                  m_database.prepare("INSERT INTO block_week (block_id, ordinal, kind) VALUES (?1, ?2, ?3)"));
    STEELYARD_TRY(auto addDay, m_database.prepare("INSERT INTO block_day (week_id, ordinal, date, title) "
                                                  "VALUES (?1, ?2, ?3, ?4)"));
    int weekOrdinal = 0;
    for (const PlannedWeek& week : block.weeks) {
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
    if (const Problems problems = validate(block); !problems.empty())
        return fail(ErrorCode::Invalid, problems.front().text);
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO block (uuid, athlete_id, name, aim, start) "
                                              "VALUES (?1, ?2, ?3, ?4, ?5)"));
    st.bindAll(uuid, block.athlete, block.name, block.aim, block.start);
    STEELYARD_TRY(const auto id, st.insert());
    STEELYARD_CHECK(writeWeeks(Id<Block>(id), block));
    transaction.changes().athletes.insert(block.athlete);
    return Id<Block>(id);
}

Result<void> BlockRepository::replace(Transaction& transaction, Id<Block> id, const Block& block) const
{
    if (const Problems problems = validate(block); !problems.empty())
        return fail(ErrorCode::Invalid, problems.front().text);
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE block SET name = ?1, aim = ?2, start = ?3 WHERE id = ?4"));
    st.bindAll(block.name, block.aim, block.start, id);
    STEELYARD_CHECK(st.run());
    STEELYARD_TRY(auto clear, m_database.prepare("DELETE FROM block_week WHERE block_id = ?1"));
    clear.bind(1, id);
    STEELYARD_CHECK(clear.run());
    STEELYARD_CHECK(writeWeeks(id, block));
    transaction.changes().athletes.insert(block.athlete);
    return {};
}

Result<void> BlockRepository::remove(Transaction& transaction, Id<Block> id, Id<Athlete> owner) const
{
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM block WHERE id = ?1"));
    st.bind(1, id);
    STEELYARD_CHECK(st.run());
    transaction.changes().athletes.insert(owner);
    return {};
}

}  // namespace steelyard
