#include "core/care/salvage_links.h"

#include "core/domain/athlete.h"
#include "core/domain/library.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QUuid>

namespace steelyard {
namespace {

struct LinkText {
    Q_DECLARE_TR_FUNCTIONS(LinkText)
};

class LinkMending {
public:
    explicit LinkMending(Database& db) : m_db(db) {}

    Result<MendedLinks> run()
    {
        STEELYARD_CHECK(dropRowsWithoutSession());
        STEELYARD_CHECK(standInForAthletes());
        STEELYARD_CHECK(standInForLines());
        STEELYARD_CHECK(standInForLibrary());
        STEELYARD_CHECK(dropWhatStillHangsOnNothing());
        return std::move(m_mended);
    }

private:
    Result<std::vector<std::int64_t>> ids(std::string_view sql)
    {
        STEELYARD_TRY(auto st, m_db.prepare(sql));
        std::vector<std::int64_t> found;
        while (true) {
            STEELYARD_TRY(const bool more, st.step());
            if (!more) return found;
            found.push_back(st.int64(0));
        }
    }
    template <class... Values>
    Result<void> insert(std::string_view sql, const Values&... values)
    {
        STEELYARD_TRY(auto st, m_db.prepare(sql));
        st.bindAll(values...);
        STEELYARD_CHECK(st.run());
        ++m_mended.standIns;
        return {};
    }
    static QString uuid() { return QUuid::createUuid().toString(QUuid::WithoutBraces); }

    // Its day is not known, and a day can't be made up.
    Result<void> dropRowsWithoutSession()
    {
        for (const char* table : {"set_entry", "exercise_rating", "set_replaced"}) {
            const std::string from =
                std::string(" FROM ") + table + " WHERE session_id NOT IN (SELECT id FROM session)";
            STEELYARD_TRY(const auto lost, m_db.integer("SELECT count(*)" + from));
            if (lost > 0) m_mended.leftOut[QString::fromLatin1(table)] += lost;
            STEELYARD_CHECK(m_db.execute(("DELETE" + from).c_str()));
        }
        return {};
    }

    Result<void> standInForAthletes()
    {
        STEELYARD_TRY(const auto lost,
                      ids("SELECT athlete_id FROM session UNION SELECT athlete_id FROM lift_line EXCEPT "
                          "SELECT id FROM athlete"));
        for (const std::int64_t id : lost)
            STEELYARD_CHECK(
                insert("INSERT INTO athlete (id, uuid, name, experience, unit) VALUES (?1, ?2, ?3, ?4, 'kg')", id,
                       uuid(), LinkText::tr("Recovered lifter %1").arg(id), Experience::Intermediate));
        return {};
    }

    // Which lift it was is lost, but not that its sets belong together: each gets a lift that nothing else is.
    Result<void> standInForLines()
    {
        STEELYARD_TRY(const auto lost,
                      ids("SELECT line_id FROM set_entry UNION SELECT line_id FROM exercise_rating UNION "
                          "SELECT line_id FROM set_replaced EXCEPT SELECT id FROM lift_line"));
        for (const std::int64_t id : lost) {
            STEELYARD_TRY(auto who,
                          m_db.prepare("SELECT athlete_id FROM session WHERE id IN (SELECT session_id FROM set_entry "
                                       "WHERE line_id = ?1 UNION SELECT session_id FROM exercise_rating WHERE "
                                       "line_id = ?1 UNION SELECT session_id FROM set_replaced WHERE line_id = ?1)"));
            who.bind(1, id);
            STEELYARD_TRY(const bool known, who.step());
            if (!known) continue;
            const std::int64_t athlete = who.int64(0);
            who.reset();
            STEELYARD_TRY(const auto standard,
                          m_db.integer("SELECT 1 + max(coalesce((SELECT max(id) FROM rep_standard), 0), "
                                       "coalesce((SELECT max(standard_id) FROM lift_line), 0))"));
            STEELYARD_TRY(const auto variant, m_db.integer("SELECT 1 + max(coalesce((SELECT max(id) FROM variant), 0), "
                                                           "coalesce((SELECT max(variant_id) FROM lift_line), 0))"));
            STEELYARD_TRY(const auto grip, m_db.integer("SELECT coalesce(min(id), 1) FROM grip"));
            STEELYARD_CHECK(
                insert("INSERT INTO lift_line (id, uuid, athlete_id, variant_id, grip_id, standard_id) VALUES (?1, "
                       "?2, ?3, ?4, ?5, ?6)",
                       id, uuid(), athlete, variant, grip, standard));
            STEELYARD_CHECK(standInForStandard(standard, variant));
        }
        return {};
    }

    Result<void> standInForStandard(std::int64_t id, std::int64_t variant)
    {
        return insert(
            "INSERT INTO rep_standard (id, uuid, variant_id, name, start, finish, path, body, lowering) VALUES (?1, "
            "?2, "
            "?3, ?4, '', '', '', '', '')",
            id, uuid(), variant, LinkText::tr("Recovered standard %1").arg(id));
    }

    Result<void> standInForLibrary()
    {
        STEELYARD_TRY(const auto grips, ids("SELECT grip_id FROM lift_line EXCEPT SELECT id FROM grip"));
        for (const std::int64_t id : grips)
            STEELYARD_CHECK(insert("INSERT INTO grip (id, uuid, name) VALUES (?1, ?2, ?3)", id, uuid(),
                                   LinkText::tr("Recovered grip %1").arg(id)));
        STEELYARD_TRY(auto standards,
                      m_db.prepare("SELECT standard_id, min(variant_id) FROM lift_line WHERE standard_id NOT IN "
                                   "(SELECT id FROM rep_standard) GROUP BY standard_id"));
        std::vector<std::pair<std::int64_t, std::int64_t>> lost;
        while (true) {
            STEELYARD_TRY(const bool more, standards.step());
            if (!more) break;
            lost.emplace_back(standards.int64(0), standards.int64(1));
        }
        for (const auto& [id, variant] : lost) STEELYARD_CHECK(standInForStandard(id, variant));
        STEELYARD_TRY(const auto variants, ids("SELECT variant_id FROM lift_line EXCEPT SELECT id FROM variant"));
        STEELYARD_TRY(const auto unknown, m_db.integer("SELECT 1 + max(coalesce((SELECT max(id) FROM exercise), 0), "
                                                       "coalesce((SELECT max(exercise_id) FROM variant), 0))"));
        for (const std::int64_t id : variants) STEELYARD_CHECK(standInForVariant(id, unknown));
        STEELYARD_TRY(const auto exercises, ids("SELECT exercise_id FROM variant EXCEPT SELECT id FROM exercise"));
        for (const std::int64_t id : exercises)
            STEELYARD_CHECK(insert("INSERT INTO exercise (id, uuid, name) VALUES (?1, ?2, ?3)", id, uuid(),
                                   LinkText::tr("Recovered exercise %1").arg(id)));
        return {};
    }

    Result<void> standInForVariant(std::int64_t id, std::int64_t exercise)
    {
        const Variant usual{.exercise = Id<Exercise>(exercise)};
        return insert(
            "INSERT INTO variant (id, uuid, exercise_id, name, implement, position, path, loading, back_loading, "
            "sides, "
            "travel, band_low, band_high) VALUES (?1, ?2, ?3, ?4, ?5, '', '', ?6, ?7, ?8, ?9, ?10, ?11)",
            id, uuid(), exercise, LinkText::tr("Recovered variant %1").arg(id), usual.implement, usual.loading,
            usual.backLoading, usual.sides, usual.travel, usual.band.low, usual.band.high);
    }

    // Rows may hang on rows that hang on nothing: until none is left.
    Result<void> dropWhatStillHangsOnNothing()
    {
        STEELYARD_CHECK(
            m_db.execute("UPDATE athlete SET gym_id = NULL WHERE gym_id NOT IN (SELECT id FROM gym);"
                         "UPDATE variant SET usual_grip_id = NULL WHERE usual_grip_id NOT IN (SELECT id FROM grip)"));
        while (true) {
            STEELYARD_TRY(auto broken, m_db.prepare("SELECT DISTINCT \"table\", rowid FROM pragma_foreign_key_check"));
            std::map<QString, std::vector<std::int64_t>> rows;
            while (true) {
                STEELYARD_TRY(const bool more, broken.step());
                if (!more) break;
                rows[broken.text(0)].push_back(broken.int64(1));
            }
            if (rows.empty()) return {};
            for (const auto& [table, lost] : rows) {
                // The name is the schema's own, not the damaged file's.
                STEELYARD_TRY(auto remove,
                              m_db.prepare("DELETE FROM \"" + table.toStdString() + "\" WHERE rowid = ?1"));
                for (const std::int64_t row : lost) {
                    remove.bind(1, row);
                    STEELYARD_CHECK(remove.run());
                    ++m_mended.leftOut[table];
                }
            }
        }
    }

    Database& m_db;
    MendedLinks m_mended;
};

}  // namespace

Result<MendedLinks> mendLinks(Transaction& transaction)
{
    return LinkMending(transaction.database()).run();
}

}  // namespace steelyard
