#include "core/exchange/book_dump.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>
#include <map>

namespace steelyard {
namespace {

struct BookDumpText {
    Q_DECLARE_TR_FUNCTIONS(BookDumpText)
};

// How a row of a table is named without its id; %1 is the column that points at it.
struct NaturalKey {
    std::string_view table;
    std::string_view sql;
};

constexpr auto kNaturalKeys = std::to_array<NaturalKey>({
    {"muscle", "(SELECT key FROM muscle WHERE id = %1)"},
    {"exercise", "(SELECT name FROM exercise WHERE id = %1)"},
    {"grip", "(SELECT name FROM grip WHERE id = %1)"},
    {"gym", "(SELECT name FROM gym WHERE id = %1)"},
    {"athlete", "(SELECT name FROM athlete WHERE id = %1)"},
    {"variant",
     "(SELECT json_array(x.name, k.name) FROM variant k JOIN exercise x ON x.id = k.exercise_id "
     "WHERE k.id = %1)"},
    {"rep_standard",
     "(SELECT json_array(x.name, v.name, k.name, a.name) FROM rep_standard k "
     "JOIN variant v ON v.id = k.variant_id JOIN exercise x ON x.id = v.exercise_id "
     "LEFT JOIN athlete a ON a.id = k.athlete_id WHERE k.id = %1)"},
    {"lift_line",
     "(SELECT json_array(a.name, x.name, v.name, g.name, r.name, o.name) FROM lift_line k "
     "JOIN athlete a ON a.id = k.athlete_id JOIN variant v ON v.id = k.variant_id "
     "JOIN exercise x ON x.id = v.exercise_id JOIN grip g ON g.id = k.grip_id "
     "JOIN rep_standard r ON r.id = k.standard_id LEFT JOIN athlete o ON o.id = r.athlete_id "
     "WHERE k.id = %1)"},
    {"session",
     "(SELECT json_array(a.name, k.date) FROM session k JOIN athlete a ON a.id = k.athlete_id "
     "WHERE k.id = %1)"},
    {"set_entry",
     "(SELECT json_array(a.name, x.name, v.name, g.name, r.name, s.date, k.number) FROM set_entry k "
     "JOIN session s ON s.id = k.session_id JOIN lift_line l ON l.id = k.line_id "
     "JOIN athlete a ON a.id = l.athlete_id JOIN variant v ON v.id = l.variant_id "
     "JOIN exercise x ON x.id = v.exercise_id JOIN grip g ON g.id = l.grip_id "
     "JOIN rep_standard r ON r.id = l.standard_id WHERE k.id = %1)"},
    {"block", "(SELECT uuid FROM block WHERE id = %1)"},
    {"trial", "(SELECT uuid FROM trial WHERE id = %1)"},
    {"block_week",
     "(SELECT json_array(b.uuid, k.ordinal) FROM block_week k JOIN block b ON b.id = k.block_id "
     "WHERE k.id = %1)"},
    {"block_day",
     "(SELECT json_array(b.uuid, w.ordinal, k.ordinal) FROM block_day k "
     "JOIN block_week w ON w.id = k.week_id JOIN block b ON b.id = w.block_id WHERE k.id = %1)"},
});

// Columns whose value means something only within its own file, and what stands for them.
struct Replacement {
    std::string_view table;
    std::string_view column;
    std::string_view sql;
};

constexpr auto kReplacements = std::to_array<Replacement>({
    {"set_entry", "position", "row_number() OVER (PARTITION BY t.session_id ORDER BY t.position, t.id)"},
    {"set_replaced", "set_id",
     "(SELECT e.number FROM set_entry e WHERE e.id = t.set_id AND e.session_id = t.session_id "
     "AND e.line_id = t.line_id)"},
});

// Order that only the ids carry.
constexpr auto kOrders = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"health_consent", "PARTITION BY t.athlete_id ORDER BY t.id"},
    {"gym_bar", "PARTITION BY t.gym_id ORDER BY t.id"},
    {"gym_plate", "PARTITION BY t.gym_id ORDER BY t.id"},
    {"gym_run", "PARTITION BY t.gym_id, t.kind ORDER BY t.id"},
    {"decision", "PARTITION BY t.athlete_id ORDER BY t.made_on, t.id"},
    {"set_replaced", "PARTITION BY t.session_id, t.line_id, t.set_id ORDER BY t.id"},
});

Result<std::vector<std::string>> tableNames(Database& db)
{
    // Steps of the history say how the content came about; they are no part of it.
    STEELYARD_TRY(auto st, db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'edit_step' "
                                      "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY name"));
    std::vector<std::string> names;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return names;
        names.emplace_back(st.bytes(0));
    }
}

// Column -> table that it points at.
Result<std::map<std::string, std::string>> pointers(Database& db, const std::string& table)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?1)"));
    st.bind(1, std::string_view(table));
    std::map<std::string, std::string> found;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return found;
        found.emplace(st.bytes(0), st.bytes(1));
    }
}

Result<std::string> naturalKeySql(const std::string& target, const std::string& column)
{
    const auto key = std::ranges::find(kNaturalKeys, target, &NaturalKey::table);
    if (key == kNaturalKeys.end())
        return fail(
            ErrorCode::Storage,
            BookDumpText::tr("Rows of “%1” have no name to compare them by.").arg(QString::fromStdString(target)));
    std::string sql(key->sql);
    return sql.replace(sql.find("%1"), 2, "t." + column);
}

// Real numbers with all their digits; SQLite's JSON functions would round them.
std::string plainColumnSql(const std::string& column, std::string_view type)
{
    return type == "REAL" ? "printf('%!.17g', t." + column + ")" : "t." + column;
}

Result<std::string> rowSql(Database& db, const std::string& table)
{
    STEELYARD_TRY(const auto targets, pointers(db, table));
    STEELYARD_TRY(auto st, db.prepare("SELECT name, type FROM pragma_table_info(?1) ORDER BY cid"));
    st.bind(1, std::string_view(table));
    std::string columns;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        const std::string column(st.bytes(0));
        if (column == "id") continue;
        std::string sql = plainColumnSql(column, st.bytes(1));
        if (const auto target = targets.find(column); target != targets.end()) {
            STEELYARD_TRY(sql, naturalKeySql(target->second, column));
        }
        for (const Replacement& one : kReplacements)
            if (one.table == table && one.column == column) sql = one.sql;
        columns.append(columns.empty() ? "'" : ", '").append(column).append("', ").append(sql);
    }
    for (const auto& [ordered, window] : kOrders)
        if (ordered == table) columns += ", 'place', row_number() OVER (" + std::string(window) + ")";
    return "SELECT json_object(" + columns + ") FROM \"" + table + "\" t ORDER BY 1";
}

}  // namespace

Result<QByteArray> dumpContent(Database& db)
{
    return dumpContent(db, {});
}

Result<QByteArray> dumpContent(Database& db, const std::vector<std::string>& without)
{
    STEELYARD_TRY(const auto tables, tableNames(db));
    QByteArray dump;
    for (const std::string& table : tables) {
        if (std::ranges::find(without, table) != without.end()) continue;
        STEELYARD_TRY(const std::string sql, rowSql(db, table));
        STEELYARD_TRY(auto st, db.prepare(sql));
        while (true) {
            STEELYARD_TRY(const bool more, st.step());
            if (!more) break;
            const std::string_view row = st.bytes(0);
            dump.append(table.c_str()).append(' ').append(row.data(), static_cast<qsizetype>(row.size())).append('\n');
        }
    }
    return dump;
}

}  // namespace steelyard
