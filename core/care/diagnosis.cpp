#include "core/care/diagnosis.h"

#include "core/care/event_log.h"

#include <QtCore/QFileInfo>
#include <QtCore/QLocale>
#include <QtCore/QSettings>
#include <QtCore/QSysInfo>
#include <QtCore/QTimeZone>

#include <array>

namespace steelyard {
namespace {

// Numbers and switches only. What a coach named, and where files stand, is not among them.
constexpr std::array kSaidSettings{"lock/minutes", "lock/failures", "view/initials"};

// Tables whose size says what a book is like; words of the program, none of the coach's.
constexpr std::array kCountedTables{"athlete",  "exercise", "variant", "lift_line", "session",  "set_entry",
                                    "decision", "block",    "slot",    "trial",     "edit_step"};

QString countWords(Database& book, const char* table)
{
    const auto exists =
        book.integer("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = '" + std::string(table) + "'");
    if (!exists || *exists == 0) return QStringLiteral("no such table");
    const auto count = book.integer("SELECT count(*) FROM " + std::string(table));
    return count ? QString::number(*count) : QStringLiteral("unreadable");
}

QStringList bookLines(Database& book)
{
    const auto pragma = [&](const char* words) {
        const auto value = book.integer(words);
        return value ? QString::number(*value) : QStringLiteral("unreadable");
    };
    QStringList lines{QStringLiteral("book: version %1, %2 bytes, %3 pages of which %4 are free, %5")
                          .arg(pragma("PRAGMA user_version"), QString::number(QFileInfo(book.path()).size()),
                               pragma("PRAGMA page_count"), pragma("PRAGMA freelist_count"),
                               book.isReadOnly() ? QStringLiteral("read only") : QStringLiteral("writable"))};
    for (const char* table : kCountedTables)
        lines << QStringLiteral("  %1: %2").arg(QString::fromLatin1(table), countWords(book, table));
    return lines;
}

}  // namespace

QString diagnosisOf(Database* book, const DiagnosisSurroundings& around, const QSettings& settings,
                    const QStringList& logLines)
{
    QStringList lines{QStringLiteral("Steelyard %1, Qt %2 (built with %3)")
                          .arg(around.version, QString::fromLatin1(qVersion()), QStringLiteral(QT_VERSION_STR)),
                      QStringLiteral("system: %1, kernel %2 %3, %4")
                          .arg(QSysInfo::prettyProductName(), QSysInfo::kernelType(), QSysInfo::kernelVersion(),
                               QSysInfo::currentCpuArchitecture()),
                      QStringLiteral("locale: %1, decimal mark %2").arg(QLocale().name(), QLocale().decimalPoint()),
                      QStringLiteral("style: %1").arg(around.style)};
    for (const QString& screen : around.screens) lines << QStringLiteral("screen: ") + screen;
    for (const char* key : kSaidSettings) {
        const QVariant value = settings.value(QString::fromLatin1(key));
        bool isNumber = false;
        const int number = value.toString() == QStringLiteral("true")    ? (isNumber = true, 1)
                           : value.toString() == QStringLiteral("false") ? (isNumber = true, 0)
                                                                         : value.toInt(&isNumber);
        lines << QStringLiteral("setting %1: %2")
                     .arg(QString::fromLatin1(key), isNumber ? QString::number(number) : QStringLiteral("usual"));
    }
    lines << QStringLiteral("lock: %1")
                 .arg(settings.contains(QStringLiteral("lock/secret")) ? QStringLiteral("set")
                                                                       : QStringLiteral("none"));
    lines += book ? bookLines(*book) : QStringList{QStringLiteral("book: none is open")};
    lines << QStringLiteral("log, oldest first:");
    // Once more: a log file could have been written by something else.
    for (const QString& line : logLines) lines << QStringLiteral("  ") + withoutPersonalWords(line);
    return lines.join(u'\n') + u'\n';
}

}  // namespace steelyard
