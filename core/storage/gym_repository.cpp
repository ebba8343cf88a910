#include "core/storage/gym_repository.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct GymRepositoryText {
    Q_DECLARE_TR_FUNCTIONS(GymRepositoryText)
};

// '1.25 kg; 2.5 kg'. What can't be read is left out, as an unknown word of a newer program is.
std::vector<Load> addOnsFrom(const QString& text)
{
    std::vector<Load> plates;
    for (const QString& one : text.split(u';', Qt::SkipEmptyParts))
        if (const auto load = Load::parseWithUnit(one.trimmed())) plates.push_back(*load);
    return plates;
}

QString addOnText(const std::vector<Load>& plates)
{
    QStringList texts;
    for (const Load& plate : plates) texts << plate.toString();
    return texts.join(QStringLiteral("; "));
}

Result<void> readEquipment(Database& db, Row<Gym>& row)
{
    STEELYARD_TRY(auto bars, db.prepare("SELECT name, implement, mass FROM gym_bar WHERE gym_id = ?1 ORDER BY id"));
    bars.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, bars.step());
        if (!more) break;
        row.value.bars.push_back({bars.text(0), bars.choice(1, Implement::Other), bars.maybeLoad(2).value_or(Load{})});
    }
    STEELYARD_TRY(auto plates, db.prepare("SELECT plate, pairs FROM gym_plate WHERE gym_id = ?1 ORDER BY id"));
    plates.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, plates.step());
        if (!more) break;
        row.value.plates.push_back({plates.maybeLoad(0).value_or(Load{}), plates.integer(1)});
    }
    STEELYARD_TRY(auto runs, db.prepare("SELECT kind, name, first, step, last, add_ons FROM gym_run WHERE gym_id = ?1 "
                                        "ORDER BY id"));
    runs.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, runs.step());
        if (!more) return {};
        auto& list = runs.bytes(0) == "stack" ? row.value.stacks : row.value.dumbbells;
        list.push_back({runs.text(1), runs.maybeLoad(2).value_or(Load{}), runs.maybeLoad(3).value_or(Load{}),
                        runs.maybeLoad(4).value_or(Load{}), addOnsFrom(runs.text(5))});
    }
}

Result<void> writeRuns(Database& db, Id<Gym> id, std::string_view kind, const std::vector<LoadRun>& runs)
{
    STEELYARD_TRY(auto add, db.prepare("INSERT INTO gym_run (gym_id, kind, name, first, step, last, add_ons) "
                                       "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)"));
    for (const LoadRun& run : runs) {
        add.bindAll(id, kind, run.name, run.first, run.step, run.last, addOnText(run.addOns));
        STEELYARD_CHECK(add.run());
    }
    return {};
}

Result<void> writeEquipment(Database& db, Id<Gym> id, const Gym& gym)
{
    for (const std::string_view sql :
         {"DELETE FROM gym_bar WHERE gym_id = ?1", "DELETE FROM gym_plate WHERE gym_id = ?1",
          "DELETE FROM gym_run WHERE gym_id = ?1"}) {
        STEELYARD_TRY(auto clear, db.prepare(sql));
        clear.bind(1, id);
        STEELYARD_CHECK(clear.run());
    }
    STEELYARD_TRY(auto bar, db.prepare("INSERT INTO gym_bar (gym_id, name, implement, mass) VALUES (?1, ?2, ?3, ?4)"));
    for (const GymBar& one : gym.bars) {
        bar.bindAll(id, one.name, one.implement, one.mass);
        STEELYARD_CHECK(bar.run());
    }
    STEELYARD_TRY(auto plate, db.prepare("INSERT INTO gym_plate (gym_id, plate, pairs) VALUES (?1, ?2, ?3)"));
    for (const PlatePairs& one : gym.plates) {
        plate.bindAll(id, one.plate, one.pairs);
        STEELYARD_CHECK(plate.run());
    }
    STEELYARD_CHECK(writeRuns(db, id, "dumbbells", gym.dumbbells));
    return writeRuns(db, id, "stack", gym.stacks);
}

}  // namespace

Result<std::vector<Row<Gym>>> GymRepository::all() const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT id, uuid, name, collar_pair FROM gym ORDER BY name"));
    std::vector<Row<Gym>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        Gym gym;
        gym.name = st.text(2);
        gym.collarPair = st.maybeLoad(3);
        rows.push_back({st.id<Gym>(0), st.uuid(1), std::move(gym)});
    }
    for (Row<Gym>& row : rows) STEELYARD_CHECK(readEquipment(m_database, row));
    return rows;
}

Result<Row<Gym>> GymRepository::find(Id<Gym> id) const
{
    STEELYARD_TRY(auto rows, all());
    for (Row<Gym>& row : rows)
        if (row.id == id) return std::move(row);
    return fail(ErrorCode::NotFound, GymRepositoryText::tr("This gym is no longer in the book."));
}

Result<Id<Gym>> GymRepository::insert(Transaction& transaction, const Gym& gym, QUuid uuid) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO gym (uuid, name, collar_pair) VALUES (?1, ?2, ?3)"));
    st.bindAll(uuid, gym.name, gym.collarPair);
    STEELYARD_TRY(const auto rowId, st.insert());
    STEELYARD_CHECK(writeEquipment(m_database, Id<Gym>(rowId), gym));
    transaction.changes().library = true;
    return Id<Gym>(rowId);
}

Result<void> GymRepository::replace(Transaction& transaction, Id<Gym> id, const Gym& gym) const
{
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE gym SET name = ?1, collar_pair = ?2 WHERE id = ?3"));
    st.bindAll(gym.name, gym.collarPair, id);
    STEELYARD_CHECK(st.run());
    STEELYARD_CHECK(writeEquipment(m_database, id, gym));
    transaction.changes().library = true;
    return {};
}

}  // namespace steelyard
