#include "core/storage/migrations.h"

#include "core/storage/book_copy.h"
#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFile>

#include <algorithm>

// Resources of a static library are pulled in by name, from outside any namespace.
static void initMigrationResources()
{
    Q_INIT_RESOURCE(migrations);
}

namespace steelyard {
namespace {

struct MigrationText {
    Q_DECLARE_TR_FUNCTIONS(MigrationText)
};

// A copy that is there already may be of a start that was cut off half-way, and then is the only one of the book as it was.
QString unusedName(const QString& wanted)
{
    QString name = wanted;
    for (int i = 2; QFile::exists(name); ++i) name = wanted + QStringLiteral("-%1").arg(i);
    return name;
}

Result<void> runStep(Database& db, const Migration& migration)
{
    STEELYARD_CHECK(db.execute("BEGIN IMMEDIATE"));
    const auto attempt = [&]() -> Result<void> {
        STEELYARD_CHECK(db.execute(migration.script.constData()));
        STEELYARD_TRY(auto broken, db.prepare("PRAGMA foreign_key_check"));
        STEELYARD_TRY(const bool any, broken.step());
        if (any)
            return fail(ErrorCode::Storage, MigrationText::tr("Bringing the book up to date would lose a link."),
                        broken.text(0));
        const QByteArray stamp = "PRAGMA user_version = " + QByteArray::number(migration.version);
        STEELYARD_CHECK(db.execute(stamp.constData()));
        return db.execute("COMMIT");
    };
    auto outcome = attempt();
    if (!outcome) static_cast<void>(db.execute("ROLLBACK"));
    return outcome;
}

}  // namespace

std::vector<Migration> builtInMigrations()
{
    initMigrationResources();
    std::vector<Migration> migrations;
    const QDir folder(QStringLiteral(":/steelyard/migrations"));
    for (const QString& name : folder.entryList(QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        if (!file.open(QIODevice::ReadOnly)) continue;
        migrations.push_back({name.left(4).toInt(), file.readAll()});
    }
    Q_ASSERT(!migrations.empty());
    return migrations;
}

Result<int> schemaVersion(Database& db)
{
    STEELYARD_TRY(const auto version, db.integer("PRAGMA user_version"));
    return static_cast<int>(version);
}

Error tooNew(int version)
{
    return {
        ErrorCode::NewerFormat,
        MigrationText::tr("This book was written by a newer Steelyard (book version %1; this program reads up to %2). "
                          "Install the newer program. The book was not touched.")
            .arg(version)
            .arg(builtInMigrations().back().version)};
}

Result<void> migrate(Database& db, const std::vector<Migration>& migrations, const QString& copyAside)
{
    STEELYARD_TRY(const int current, schemaVersion(db));
    const int target = migrations.back().version;
    if (current == target) return {};
    if (current > target) return fail(tooNew(current));
    if (current > 0 && !copyAside.isEmpty()) STEELYARD_CHECK(copyBook(db, unusedName(copyAside)));
    // A table that is rebuilt is dropped for a moment; keys are checked at the end of each step instead.
    STEELYARD_CHECK(db.execute("PRAGMA foreign_keys = OFF"));
    Result<void> outcome;
    for (const Migration& migration : migrations)
        if (migration.version > current && outcome) outcome = runStep(db, migration);
    STEELYARD_CHECK(db.execute("PRAGMA foreign_keys = ON"));
    return outcome;
}

}  // namespace steelyard
