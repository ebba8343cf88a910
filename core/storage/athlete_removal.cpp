#include "core/storage/athlete_removal.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

#include <map>
#include <set>

namespace steelyard {
namespace {

struct AthleteRemovalText {
    Q_DECLARE_TR_FUNCTIONS(AthleteRemovalText)
};

struct TableLink {
    std::string column;
    std::string to;
};

std::string quotedName(const std::string& name)
{
    return '"' + name + '"';
}

// Which rows of which table are somebody's, as conditions of SQL with the athlete's id as ?1.
class OwnedRows {
public:
    [[nodiscard]] static Result<OwnedRows> of(Database& db)
    {
        OwnedRows owned;
        STEELYARD_TRY(auto names, db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' "
                                             "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name"));
        while (true) {
            STEELYARD_TRY(const bool more, names.step());
            if (!more) break;
            owned.m_links[std::string(names.bytes(0))] = {};
        }
        STEELYARD_TRY(auto links, db.prepare("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?1)"));
        for (auto& [table, found] : owned.m_links) {
            links.bind(1, std::string_view(table));
            while (true) {
                STEELYARD_TRY(const bool more, links.step());
                if (!more) break;
                found.push_back({std::string(links.bytes(0)), std::string(links.bytes(1))});
            }
        }
        for (const auto& [table, found] : owned.m_links) owned.condition(table);
        return owned;
    }

    [[nodiscard]] std::vector<std::string> tables() const
    {
        std::vector<std::string> names;
        for (const auto& [table, condition] : m_conditions)
            if (!condition.empty()) names.push_back(table);
        return names;
    }
    [[nodiscard]] std::vector<std::string> allTables() const
    {
        std::vector<std::string> names;
        names.reserve(m_links.size());
        for (const auto& [table, links] : m_links) names.push_back(table);
        return names;
    }
    // Empty: the table has nobody's rows.
    [[nodiscard]] const std::string& conditionOf(const std::string& table) const { return m_conditions.at(table); }
    // What points at a table.
    [[nodiscard]] std::vector<std::string> childrenOf(const std::string& table) const
    {
        std::vector<std::string> children;
        for (const auto& [child, links] : m_links)
            for (const TableLink& link : links)
                if (link.to == table && child != table) children.push_back(child);
        return children;
    }

private:
    const std::string& condition(const std::string& table)
    {
        if (const auto known = m_conditions.find(table); known != m_conditions.end()) return known->second;
        std::string& condition = m_conditions[table];  // empty meanwhile: a table that points at itself adds nothing
        if (table == "athlete") return condition = "id = ?1";
        std::string made;
        for (const TableLink& link : m_links[table]) {
            const std::string owner = this->condition(link.to);
            if (owner.empty()) continue;
            made += (made.empty() ? "" : " OR ") + quotedName(link.column) + " IN (SELECT id FROM "
                    + quotedName(link.to) + " WHERE " + owner + ")";
        }
        return m_conditions[table] = made;
    }

    std::map<std::string, std::vector<TableLink>> m_links;
    std::map<std::string, std::string> m_conditions;
};

Result<void> runForAthlete(Database& db, const std::string& sql, Id<Athlete> athlete)
{
    STEELYARD_TRY(auto st, db.prepare(sql));
    st.bind(1, athlete);
    return st.run();
}

// Those that point at a row go before it.
Result<void> removeFrom(Database& db, const OwnedRows& owned, const std::string& table, Id<Athlete> athlete,
                        std::set<std::string>& done)
{
    if (owned.conditionOf(table).empty() || !done.insert(table).second) return {};
    for (const std::string& child : owned.childrenOf(table))
        STEELYARD_CHECK(removeFrom(db, owned, child, athlete, done));
    return runForAthlete(db, "DELETE FROM " + quotedName(table) + " WHERE " + owned.conditionOf(table), athlete);
}

constexpr std::string_view kStandardsOfOthers =
    "SELECT r.id, r.variant_id FROM rep_standard r WHERE r.athlete_id = ?1 AND ("
    "EXISTS (SELECT 1 FROM lift_line l WHERE l.standard_id = r.id AND l.athlete_id <> ?1) "
    "OR EXISTS (SELECT 1 FROM slot s JOIN block_day d ON d.id = s.day_id JOIN block_week w ON w.id = d.week_id "
    "JOIN block b ON b.id = w.block_id WHERE s.standard_id = r.id AND b.athlete_id IS NOT ?1) "
    "OR EXISTS (SELECT 1 FROM trial_arm a JOIN trial t ON t.id = a.trial_id WHERE a.standard_id = r.id "
    "AND t.athlete_id <> ?1))";

Result<QString> freeStandardName(Database& db, std::int64_t variant)
{
    STEELYARD_TRY(auto taken, db.prepare("SELECT 1 FROM rep_standard WHERE variant_id = ?1 AND athlete_id IS NULL "
                                         "AND name = ?2"));
    for (int number = 1;; ++number) {
        QString name = AthleteRemovalText::tr("kept standard %1").arg(number);
        taken.bindAll(variant, name);
        STEELYARD_TRY(const bool found, taken.step());
        taken.reset();
        if (!found) return name;
    }
}

Result<void> leaveStandardsToOthers(Database& db, Id<Athlete> athlete)
{
    std::vector<std::pair<std::int64_t, std::int64_t>> shared;
    {
        STEELYARD_TRY(auto st, db.prepare(kStandardsOfOthers));
        st.bind(1, athlete);
        while (true) {
            STEELYARD_TRY(const bool more, st.step());
            if (!more) break;
            shared.emplace_back(st.int64(0), st.int64(1));
        }
    }
    for (const auto& [id, variant] : shared) {
        STEELYARD_TRY(const QString name, freeStandardName(db, variant));
        STEELYARD_TRY(auto st, db.prepare("UPDATE rep_standard SET athlete_id = NULL, is_default = 0, name = ?2, "
                                          "uuid = ?3 WHERE id = ?1"));
        st.bindAll(id, name, QUuid::createUuid());
        STEELYARD_CHECK(st.run());
    }
    return {};
}

Result<std::vector<std::string>> textColumns(Database& db, const std::string& table)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT name FROM pragma_table_info(?1) WHERE type = 'TEXT' ORDER BY cid"));
    st.bind(1, std::string_view(table));
    std::vector<std::string> columns;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return columns;
        columns.emplace_back(st.bytes(0));
    }
}

}  // namespace

Result<std::vector<RowCount>> countRowsOf(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(const OwnedRows owned, OwnedRows::of(db));
    std::vector<RowCount> counts;
    for (const std::string& table : owned.tables()) {
        STEELYARD_TRY(auto st,
                      db.prepare("SELECT count(*) FROM " + quotedName(table) + " WHERE " + owned.conditionOf(table)));
        st.bind(1, athlete);
        STEELYARD_CHECK(st.step());
        if (st.int64(0) > 0) counts.push_back({table, st.int64(0)});
    }
    return counts;
}

Result<void> removeRowsOf(Transaction& transaction, Id<Athlete> athlete)
{
    Database& db = transaction.database();
    STEELYARD_CHECK(leaveStandardsToOthers(db, athlete));
    STEELYARD_TRY(const OwnedRows owned, OwnedRows::of(db));
    std::set<std::string> done;
    STEELYARD_CHECK(removeFrom(db, owned, "athlete", athlete, done));
    transaction.changes().roster = true;
    transaction.changes().library = true;
    transaction.changes().athletes.insert(athlete);
    return {};
}

Result<std::vector<NameMention>> mentionsElsewhere(Database& db, Id<Athlete> athlete, const QString& name,
                                                   std::size_t most)
{
    STEELYARD_TRY(const OwnedRows owned, OwnedRows::of(db));
    // Not \b: a name may begin or end with a sign.
    const QRegularExpression whole(
        QStringLiteral("(?<![\\p{L}\\p{N}])%1(?![\\p{L}\\p{N}])").arg(QRegularExpression::escape(name)),
        QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption);
    std::vector<NameMention> mentions;
    for (const std::string& table : owned.allTables()) {
        if (table == "edit_step") continue;  // goes as a whole
        STEELYARD_TRY(const auto columns, textColumns(db, table));
        const std::string& theirs = owned.conditionOf(table);
        for (const std::string& column : columns) {
            STEELYARD_TRY(auto st, db.prepare("SELECT " + quotedName(column) + " FROM " + quotedName(table)
                                              + " WHERE length(" + quotedName(column) + ") >= ?2"
                                              + (theirs.empty() ? "" : " AND NOT coalesce(" + theirs + ", 0)")));
            if (!theirs.empty()) st.bind(1, athlete);
            st.bind(2, static_cast<std::int64_t>(name.toUcs4().size()));
            while (true) {
                STEELYARD_TRY(const bool more, st.step());
                if (!more) break;
                const QString text = st.text(0);
                if (whole.match(text).hasMatch()) mentions.push_back({table, text});
                if (mentions.size() >= most) return mentions;
            }
        }
    }
    return mentions;
}

Result<bool> cleanFile(Database& db)
{
    STEELYARD_CHECK(db.execute("PRAGMA secure_delete = ON"));
    STEELYARD_CHECK(db.execute("VACUUM"));
    STEELYARD_TRY(auto st, db.prepare("PRAGMA wal_checkpoint(TRUNCATE)"));
    STEELYARD_TRY(const bool row, st.step());
    return row && st.int64(0) == 0;
}

}  // namespace steelyard
