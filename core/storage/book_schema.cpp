#include "core/storage/book_schema.h"

#include "core/storage/migrations.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct BookSchemaText {
    Q_DECLARE_TR_FUNCTIONS(BookSchemaText)
};

// SQLite's own tables (figures for its planner) and the indexes of constraints. Nothing else may call itself so.
bool isSqlitesOwn(const QString& type, const QString& name)
{
    return name.startsWith(u"sqlite_") && (type == u"table" || (type == u"index" && name.contains(u"autoindex")));
}

QString comparable(const QString& sql)
{
    QString plain;
    bool inText = false;
    for (const QChar c : sql) {
        if (c == u'\'') inText = !inText;
        if (inText || !(c.isSpace() || c == u'"')) plain += c;
    }
    return plain;
}

}  // namespace

Result<Schema> readSchema(Database& db)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT type, name, coalesce(sql, '') FROM sqlite_schema"));
    Schema schema;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return schema;
        if (!isSqlitesOwn(st.text(0), st.text(1))) schema[st.text(0) + u' ' + st.text(1)] = st.text(2);
    }
}

Result<Schema> schemaOfVersion(int version)
{
    auto steps = builtInMigrations();
    std::erase_if(steps, [&](const Migration& step) { return step.version > version; });
    if (steps.empty()) return Schema();
    STEELYARD_TRY(const auto made, Database::create(QStringLiteral(":memory:"), steps));
    return readSchema(*made);
}

QStringList compareSchemas(const Schema& found, const Schema& expected)
{
    QStringList differences;
    for (const auto& [name, sql] : expected)
        if (!found.contains(name)) differences << BookSchemaText::tr("Schema: %1 is missing.").arg(name);
    for (const auto& [name, sql] : found) {
        const auto it = expected.find(name);
        if (it == expected.end())
            differences << BookSchemaText::tr("Schema: %1 does not belong here.").arg(name);
        else if (comparable(it->second) != comparable(sql))
            differences << BookSchemaText::tr("Schema: %1 differs from what it should be.").arg(name);
    }
    return differences;
}

Result<void> checkSchema(Database& db)
{
    STEELYARD_TRY(const int version, schemaVersion(db));
    if (version > builtInMigrations().back().version) return {};
    STEELYARD_TRY(const Schema found, readSchema(db));
    STEELYARD_TRY(const Schema expected, schemaOfVersion(version));
    const QStringList differences = compareSchemas(found, expected);
    if (differences.isEmpty()) return {};
    return fail(ErrorCode::Storage,
                BookSchemaText::tr("“%1” has parts that no Steelyard made, or lacks some that it needs, so it was not "
                                   "used. If somebody gave it to you, ask where it comes from; else restore a backup, "
                                   "or save what can be saved from it.")
                    .arg(db.path()),
                differences.join(u' '));
}

}  // namespace steelyard
