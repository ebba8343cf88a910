#include "tests/architecture/source_laws.h"

#include <QtCore/QDirIterator>
#include <QtCore/QFile>
#include <QtCore/QRegularExpression>
#include <QtCore/QStringList>

#include <algorithm>
#include <map>
#include <span>
#include <array>

namespace steelyard::architecture {
namespace {

constexpr int kMostLines = 500;
// Files that may be longer, each with its reason beside it. Empty, and meant to stay so.
constexpr std::array<const char*, 0> kLongFiles{};

// What a folder of core may include of core: folders, or single headers.
struct ModuleLaw {
    const char* folder;
    const char* mayInclude;
    const char* qtModules;
};
constexpr ModuleLaw kModules[] = {
    {"core/base/", "core/base/", "QtCore"},
    {"core/domain/", "core/base/ core/domain/", "QtCore"},
    {"core/numerics/", "core/base/ core/numerics/", ""},
    {"core/analysis/", "core/base/ core/domain/ core/numerics/ core/analysis/", "QtCore"},
    {"core/flags/", "core/base/ core/domain/ core/numerics/ core/analysis/ core/flags/", "QtCore"},
    {"core/planning/", "core/base/ core/domain/ core/numerics/ core/analysis/ core/trials/ core/planning/", "QtCore"},
    {"core/trials/", "core/base/ core/domain/ core/numerics/ core/analysis/ core/trials/", "QtCore"},
    {"core/sheets/", "core/base/ core/domain/ core/numerics/ core/analysis/ core/trials/ core/planning/ core/sheets/",
     "QtCore"},
    {"core/keying/",
     "core/base/ core/domain/ core/numerics/ core/analysis/ core/flags/ core/planning/ core/sheets/ core/keying/",
     "QtCore"},
    {"core/storage/", "core/base/ core/domain/ core/analysis/athlete_log.h core/storage/", "QtCore QtSql"},
    {"core/edits/", "core/base/ core/domain/ core/analysis/athlete_log.h core/storage/ core/edits/", "QtCore"},
    {"core/book/",
     "core/base/ core/domain/ core/analysis/ core/flags/ core/trials/ core/planning/ core/sheets/ core/keying/ "
     "core/storage/ core/edits/ core/book/",
     "QtCore"},
    {"core/exchange/",
     "core/base/ core/domain/ core/analysis/ core/flags/ core/keying/ core/storage/ core/edits/ core/book/ "
     "core/exchange/",
     "QtCore"},
    {"core/care/", "core/base/ core/domain/ core/storage/ core/edits/ core/book/ core/exchange/ core/care/", "QtCore"},
    {"core/samples/",
     "core/base/ core/domain/ core/trials/ core/planning/ core/storage/ core/edits/ core/book/ core/samples/",
     "QtCore"},
};

// What a folder must not include, as a pattern on the included name.
struct IncludeLaw {
    const char* key;
    const char* folder;
    const char* forbidden;
};
constexpr IncludeLaw kIncludes[] = {
    {"core_knows_no_screen", "core/", "^(ui/|app/|Qt(Gui|Widgets|Charts|PrintSupport|Svg|SvgWidgets|OpenGL)\\b)"},
    {"ui_knows_no_app", "ui/", "^app/"},
    {"paper_has_no_widgets", "ui/print/", "^(Qt(Widgets|Charts|PrintSupport|SvgWidgets)\\b|ui/(?!print/|format/))"},
    {"console_has_no_screen", "app/console/", "^(ui/|Qt(Gui|Widgets|Charts|PrintSupport|Svg)\\b)"},
    {"painter_has_no_widgets", "app/paper/", "^(Qt(Widgets|Charts|PrintSupport)\\b|ui/(?!print/|format/))"},
    {"includes_name_their_module", "", "^(Q[A-Z]\\w*|q(?!rencode)[a-z0-9]+\\.h)$"},
};

// A word that belongs to one place: a folder, or the start of a file's name.
struct WordLaw {
    const char* key;
    const char* pattern;
    const char* allowedIn;  // separated by spaces; empty: nowhere
};
constexpr WordLaw kWords[] = {
    {"sql_only_in_storage", "\\b(QSql\\w*|QtSql)\\b", "core/storage/"},
    {"sqlite_only_in_storage", "\\bsqlite3\\.h\\b", "core/storage/"},
    {"glpk_only_in_the_bound", "\\bglpk\\.h\\b", "core/planning/solver/plan_bound"},
    {"sodium_only_in_seals", "\\bsodium\\.h\\b",
     "core/care/passphrase. core/care/sealed_file core/care/lock_secret core/care/suggested_passphrase"},
    {"keychain_only_in_its_place", "\\bkeychain\\.h\\b", "app/keychain/"},
    {"qrencode_only_in_the_code", "\\bqrencode\\.h\\b", "ui/print/scan_code"},
    {"boxes_only_in_prompt", "\\b(QMessageBox|QFileDialog|QPrintDialog|QPrintPreviewDialog)\\b", "ui/prompt/"},
    {"time_only_from_clock",
     "\\b(currentDate|currentDateTime|currentDateTimeUtc|currentSecsSinceEpoch|currentMSecsSinceEpoch|"
     "QTime::currentTime|system_clock::now|time\\((nullptr|NULL|0)\\))",
     "core/base/clock"},
    {"no_nested_loops", "\\b(processEvents|QEventLoop)\\b", ""},
    {"no_singletons", "\\b(?!Q[A-Z])\\w+::instance\\(|\\bstatic\\s+[\\w:<>]+\\s*[&*]\\s*instance\\s*\\(", ""},
    {"no_string_connections", "\\b(SIGNAL|SLOT)\\s*\\(", ""},
};

// The same for a statement, up to its semicolon. What people type is a QString, so no QString is pasted into SQL: it is bound.
constexpr WordLaw kStatements[] = {
    {"sql_takes_no_text",
     "\\b(prepare|prepareRaw|execute|integer)\\(\\s*[\\w:]*\\(?u?\"[^;]*\\b(toStdString|toUtf8|toLatin1|qPrintable|"
     "qUtf8Printable|arg)\\(",
     // Names of tables and columns, out of the program's own schema, quoted.
     "core/care/salvage. core/care/salvage_links core/storage/row_rescue"},
};
constexpr qsizetype kLongestStatement = 6;  // in lines

bool startsWithAny(const QString& name, const char* starts)
{
    const QStringList list = QString::fromLatin1(starts).split(u' ', Qt::SkipEmptyParts);
    return std::ranges::any_of(list, [&](const QString& start) { return name.startsWith(start); });
}

// Blanks comments, and what string literals hold when `strings` is set; line breaks stay where they were.
QString withoutComments(const QString& text, bool strings)
{
    QString out;
    out.reserve(text.size());
    enum class In { Code, Line, Block, Text, Letter } in = In::Code;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text.at(i);
        const QChar next = i + 1 < text.size() ? text.at(i + 1) : QChar();
        const bool digitBefore = i > 0 && text.at(i - 1).isLetterOrNumber();  // 1'000 and u'x'
        if (in == In::Code) {
            if (c == u'/' && (next == u'/' || next == u'*')) {
                in = next == u'/' ? In::Line : In::Block;
                out += u' ';
                continue;
            }
            if (c == u'"') in = In::Text;
            if (c == u'\'' && !(digitBefore && next.isDigit())) in = In::Letter;
            out += c;
        } else if (c == u'\n') {
            if (in != In::Block) in = In::Code;
            out += c;
        } else if (in == In::Line || in == In::Block) {
            if (in == In::Block && c == u'*' && next == u'/') {
                in = In::Code;
                ++i;
            }
        } else if (c == u'\\') {
            if (!strings) out += QString(c) + next;
            ++i;
        } else {
            const bool ends = (in == In::Text && c == u'"') || (in == In::Letter && c == u'\'');
            if (ends) in = In::Code;
            if (ends || !strings) out += c;
        }
    }
    return out;
}

// Once for every line of every file.
const QRegularExpression& compiled(const char* pattern)
{
    static std::map<const char*, QRegularExpression> known;
    const auto found = known.find(pattern);
    if (found != known.end()) return found->second;
    return known.emplace(pattern, QRegularExpression(QString::fromLatin1(pattern))).first->second;
}

class FileCheck {
public:
    FileCheck(QString file, std::vector<Violation>& found) : m_file(std::move(file)), m_found(found) {}

    void run(const QString& text)
    {
        checkLength(text);
        const QStringList lines = withoutComments(text, false).split(u'\n');
        const QStringList words = withoutComments(text, true).split(u'\n');
        static const QRegularExpression include(QStringLiteral(R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])"));
        for (m_line = 1; m_line <= lines.size(); ++m_line) {
            const auto match = include.match(lines.at(m_line - 1));
            if (match.hasMatch()) checkInclude(match.captured(2), match.captured(1) == QLatin1String("\""));
            checkWords(match.hasMatch() ? match.captured(2) : words.at(m_line - 1), kWords);
            checkWords(words.mid(m_line - 1, kLongestStatement).join(u' ').section(u';', 0, 0), kStatements);
        }
    }

private:
    void report(const QString& law, const QString& what) { m_found.push_back({m_file, m_line, law, what}); }

    void checkLength(const QString& text)
    {
        const auto lines = text.count(u'\n');
        const bool exempt =
            std::ranges::any_of(kLongFiles, [&](const char* name) { return m_file == QString::fromLatin1(name); });
        if (lines > kMostLines && !exempt) report(QStringLiteral("files_stay_short"), QString::number(lines));
    }

    void checkInclude(const QString& name, bool quoted)
    {
        static const QRegularExpression rooted(QStringLiteral("^(app|core|ui)/(?!.*\\.\\./)|\\.moc$"));
        if (quoted && !rooted.match(name).hasMatch()) report(QStringLiteral("includes_are_rooted"), name);
        for (const IncludeLaw& law : kIncludes)
            if (m_file.startsWith(QLatin1String(law.folder)) && compiled(law.forbidden).match(name).hasMatch())
                report(QString::fromLatin1(law.key), name);
        checkModule(name);
        checkPages(name);
    }

    void checkModule(const QString& name)
    {
        if (!m_file.startsWith(QLatin1String("core/"))) return;
        const auto* const law = std::ranges::find_if(
            kModules, [&](const ModuleLaw& row) { return m_file.startsWith(QLatin1String(row.folder)); });
        if (law == std::end(kModules)) return report(QStringLiteral("every_module_has_a_law"), m_file);
        if (name.startsWith(QLatin1String("core/")) && !startsWithAny(name, law->mayInclude))
            report(QStringLiteral("core_keeps_its_order"), name);
        static const QRegularExpression qt(QStringLiteral("^(Qt[A-Z]\\w*)/"));
        const auto match = qt.match(name);
        if (match.hasMatch() && !QString::fromLatin1(law->qtModules).split(u' ').contains(match.captured(1)))
            report(QStringLiteral("core_names_its_qt"), name);
    }

    void checkPages(const QString& name)
    {
        static const QRegularExpression page(QStringLiteral("^ui/pages/([^/]+)/"));
        const auto here = page.match(m_file);
        const auto there = page.match(name);
        if (here.hasMatch() && there.hasMatch() && here.captured(1) != there.captured(1))
            report(QStringLiteral("pages_stand_alone"), name);
    }

    void checkWords(const QString& line, std::span<const WordLaw> laws)
    {
        for (const WordLaw& law : laws) {
            if (startsWithAny(m_file, law.allowedIn)) continue;
            const auto match = compiled(law.pattern).match(line);
            if (match.hasMatch()) report(QString::fromLatin1(law.key), match.captured());
        }
    }

    QString m_file;
    int m_line = 1;
    std::vector<Violation>& m_found;
};

}  // namespace

std::vector<QString> allLaws()
{
    std::vector<QString> keys = {QStringLiteral("files_stay_short"),     QStringLiteral("includes_are_rooted"),
                                 QStringLiteral("core_keeps_its_order"), QStringLiteral("every_module_has_a_law"),
                                 QStringLiteral("core_names_its_qt"),    QStringLiteral("pages_stand_alone")};
    for (const IncludeLaw& law : kIncludes) keys.push_back(QString::fromLatin1(law.key));
    for (const WordLaw& law : kWords) keys.push_back(QString::fromLatin1(law.key));
    for (const WordLaw& law : kStatements) keys.push_back(QString::fromLatin1(law.key));
    return keys;
}

std::vector<QString> sourcesUnder(const QDir& root)
{
    std::vector<QString> files;
    for (const char* folder : {"app", "core", "ui"}) {
        QDirIterator it(root.filePath(QString::fromLatin1(folder)), {QStringLiteral("*.h"), QStringLiteral("*.cpp")},
                        QDir::Files, QDirIterator::Subdirectories);
        while (it.hasNext()) files.push_back(root.relativeFilePath(it.next()));
    }
    std::ranges::sort(files);
    return files;
}

std::vector<Violation> checkSources(const QDir& root)
{
    std::vector<Violation> found;
    for (const QString& name : sourcesUnder(root)) {
        QFile file(root.filePath(name));
        if (!file.open(QIODevice::ReadOnly)) {
            found.push_back({name, 1, QStringLiteral("readable"), file.errorString()});
            continue;
        }
        FileCheck(name, found).run(QString::fromUtf8(file.readAll()));
    }
    return found;
}

}  // namespace steelyard::architecture
