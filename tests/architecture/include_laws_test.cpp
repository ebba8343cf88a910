#include "tests/architecture/source_laws.h"
#include "tests/support/temp_dir.h"

#include <gtest/gtest.h>

#include <QtCore/QStringList>

#include <algorithm>
#include <set>

namespace steelyard::architecture {
namespace {

// packaging/check-fences points this at a copy with a planted violation.
QDir sourceRoot()
{
    return QDir(qEnvironmentVariable("STEELYARD_SOURCE_ROOT", QStringLiteral(STEELYARD_SOURCE_DIR)));
}

std::string told(const std::vector<Violation>& found)
{
    QStringList lines;
    for (const Violation& v : found)
        lines << QStringLiteral("%1:%2: %3: %4").arg(v.file, QString::number(v.line), v.law, v.what);
    return lines.join(u'\n').toStdString();
}

TEST(SourceLaws, HoldInEveryFile)
{
    ASSERT_GT(sourcesUnder(sourceRoot()).size(), 20u) << "The sources were not found.";
    const auto found = checkSources(sourceRoot());
    EXPECT_TRUE(found.empty()) << told(found);
}

struct Planted {
    const char* law;
    const char* file;
    QByteArray content;
};

std::vector<Planted> plantedViolations()
{
    return {
        {"core_knows_no_screen", "core/domain/a.cpp", "#include <QtWidgets/QWidget>\n"},
        {"core_knows_no_screen", "core/book/a.cpp", "#include <QtGui/QColor>\n"},
        {"core_knows_no_screen", "core/sheets/a.h", "#include \"ui/print/sheet_painter.h\"\n"},
        {"core_names_its_qt", "core/numerics/a.h", "#include <QtCore/QString>\n"},
        {"core_names_its_qt", "core/edits/a.cpp", "#include <QtNetwork/QTcpSocket>\n"},
        {"core_keeps_its_order", "core/base/a.h", "#include \"core/domain/gym.h\"\n"},
        {"core_keeps_its_order", "core/domain/a.h", "#include \"core/numerics/rank.h\"\n"},
        {"core_keeps_its_order", "core/numerics/a.h", "#include \"core/domain/gym.h\"\n"},
        {"core_keeps_its_order", "core/analysis/a.h", "#include \"core/storage/database.h\"\n"},
        {"core_keeps_its_order", "core/flags/a.h", "#include \"core/book/book.h\"\n"},
        {"core_keeps_its_order", "core/planning/a.h", "#include \"core/flags/registry.h\"\n"},
        {"core_keeps_its_order", "core/trials/a.h", "#include \"core/edits/edit.h\"\n"},
        {"core_keeps_its_order", "core/sheets/a.h", "#include \"core/storage/database.h\"\n"},
        {"core_keeps_its_order", "core/storage/a.h", "#include \"core/edits/edit.h\"\n"},
        {"core_keeps_its_order", "core/edits/a.h", "#include \"core/book/book.h\"\n"},
        {"core_keeps_its_order", "core/book/a.h", "#include \"core/exchange/csv.h\"\n"},
        {"core_keeps_its_order", "core/exchange/a.h", "#include \"core/care/sealed_file.h\"\n"},
        {"every_module_has_a_law", "core/novelty/a.h", "#include <vector>\n"},
        {"ui_knows_no_app", "ui/shell/a.cpp", "#include \"app/desktop/composition.h\"\n"},
        {"pages_stand_alone", "ui/pages/week/a.cpp", "#include \"ui/pages/lifter/page.h\"\n"},
        {"paper_has_no_widgets", "ui/print/a.cpp", "#include <QtWidgets/QTableView>\n"},
        {"paper_has_no_widgets", "ui/print/b.cpp", "#include <QtPrintSupport/QPrinter>\n"},
        {"console_has_no_screen", "app/console/a.cpp", "#include <QtGui/QPainter>\n"},
        {"painter_has_no_widgets", "app/paper/a.cpp", "#include \"ui/shell/window.h\"\n"},
        {"includes_name_their_module", "core/domain/b.cpp", "#include <QWidget>\n"},
        {"includes_name_their_module", "ui/shell/b.cpp", "#  include <qwidget.h>\n"},
        {"includes_are_rooted", "core/analysis/b.cpp", "#include \"../storage/database.h\"\n"},
        {"includes_are_rooted", "core/analysis/c.cpp", "#include \"core/analysis/../storage/database.h\"\n"},
        {"sql_only_in_storage", "core/edits/b.cpp", "#include <QtSql/QSqlQuery>\n"},
        {"sql_only_in_storage", "ui/models/b.cpp", "class QSqlDatabase;\n"},
        {"sqlite_only_in_storage", "core/exchange/csv.cpp", "#include <sqlite3.h>\n"},
        {"glpk_only_in_the_bound", "core/planning/solver/plan_search.cpp", "#include <glpk.h>\n"},
        {"sodium_only_in_seals", "core/exchange/book_export.cpp", "#include <sodium.h>\n"},
        {"keychain_only_in_its_place", "ui/shell/k.cpp", "#include <qt6keychain/keychain.h>\n"},
        {"qrencode_only_in_the_code", "ui/print/sheet_painter.cpp", "#include <qrencode.h>\n"},
        {"boxes_only_in_prompt", "ui/shell/c.cpp", "void f() { QMessageBox::about(nullptr, a, b); }\n"},
        {"boxes_only_in_prompt", "ui/pages/week/c.cpp", "QFileDialog* dialog = nullptr;\n"},
        {"boxes_only_in_prompt", "ui/pages/floor/c.cpp", "QPrintPreviewDialog* dialog = nullptr;\n"},
        {"time_only_from_clock", "core/book/c.cpp", "auto d = QDate::currentDate();\n"},
        {"time_only_from_clock", "core/book/d.cpp", "auto d = QDateTime::currentDateTimeUtc();\n"},
        {"time_only_from_clock", "ui/shell/d.cpp", "auto t = std::chrono::system_clock::now();\n"},
        {"no_nested_loops", "ui/jobs/a.cpp", "int f() { QEventLoop loop; return loop.exec(); }\n"},
        {"no_nested_loops", "ui/jobs/b.cpp", "/* a */ QCoreApplication::processEvents();\n"},
        {"no_singletons", "core/flags/c.cpp", "auto& r = Registry::instance();\n"},
        {"no_singletons", "core/flags/d.h", "struct R { static R& instance(); };\n"},
        {"no_string_connections", "ui/shell/e.cpp", "connect(a, SIGNAL(b()), c, SLOT(d()));\n"},
        {"sql_takes_no_text", "core/edits/sql.cpp",
         "auto st = db.prepare(\"SELECT id FROM athlete WHERE name = '\"\n    + name.toStdString() + \"'\");\n"},
        {"sql_takes_no_text", "core/book/sql.cpp",
         "db.execute(QStringLiteral(\"DELETE FROM athlete WHERE name = %1\").arg(name));\n"},
        {"files_stay_short", "core/domain/long.cpp", QByteArray("int a;\n").repeated(501)},
    };
}

TEST(SourceLaws, EachCatchesAPlantedViolation)
{
    for (const Planted& planted : plantedViolations()) {
        const testing_support::TempDir dir;
        (void)dir.write(QString::fromLatin1(planted.file), planted.content);
        const auto found = checkSources(QDir(dir.path()));
        EXPECT_TRUE(std::ranges::any_of(found,
                                        [&](const Violation& v) {
                                            return v.law == QString::fromLatin1(planted.law)
                                                   && v.file == QString::fromLatin1(planted.file);
                                        }))
            << planted.law << " did not catch " << planted.content.left(200).toStdString() << "found: " << told(found);
    }
}

TEST(SourceLaws, HaveNoLawWithoutAPlantedViolation)
{
    std::set<QString> planted;
    for (const Planted& one : plantedViolations()) planted.insert(QString::fromLatin1(one.law));
    for (const QString& law : allLaws()) EXPECT_TRUE(planted.contains(law)) << law.toStdString();
}

TEST(SourceLaws, LeaveWhatIsAllowedAlone)
{
    const testing_support::TempDir dir;
    (void)dir.write(u"core/base/clock.cpp", "#include \"core/base/clock.h\"\nauto d = QDate::currentDate();\n");
    (void)dir.write(u"core/storage/database.cpp", "#include <QtSql/QSqlQuery>\n#include <sqlite3.h>\n");
    (void)dir.write(u"core/planning/a.cpp", "#include \"core/analysis/athlete_log.h\"\n");
    (void)dir.write(u"core/exchange/a.cpp", "#include \"core/book/book.h\"\n// QEventLoop, SIGNAL( in a comment\n");
    (void)dir.write(u"core/domain/a.cpp", "auto s = \"not a \\\" QMessageBox\"; int n = 1'000; /* QSqlQuery */\n");
    (void)dir.write(u"ui/prompt/box.cpp", "#include <QtWidgets/QMessageBox>\n");
    (void)dir.write(u"ui/pages/week/a.cpp",
                    "#include \"ui/pages/week/b.h\"\nauto* a = QCoreApplication::instance();\n");
    (void)dir.write(u"ui/print/a.cpp", "#include <QtGui/QPainter>\n");
    (void)dir.write(u"core/domain/full.cpp", QByteArray("int a;\n").repeated(500));
    const auto found = checkSources(QDir(dir.path()));
    EXPECT_TRUE(found.empty()) << told(found);
}

}  // namespace
}  // namespace steelyard::architecture
