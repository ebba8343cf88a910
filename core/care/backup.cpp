#include "core/care/backup.h"

#include <QtCore/QFileInfo>
#include <QtCore/QRegularExpression>

#include <set>

namespace steelyard {
namespace {

constexpr std::size_t kDays = 7;
constexpr std::size_t kWeeks = 4;
constexpr std::size_t kMonths = 12;
constexpr std::size_t kOthers = 10;

constexpr QStringView kStamp = u"yyyyMMdd'T'HHmmss'Z'";

// Takes the newest of every run of equal keys, as many runs as there is room for.
template <class KeyOf>
void keepRuns(const std::vector<Backup>& newestFirst, std::size_t room, std::set<qint64>& kept, KeyOf keyOf)
{
    std::optional<decltype(keyOf(QDate()))> before;
    for (const Backup& backup : newestFirst) {
        const auto key = keyOf(backup.madeAt.toUTC().date());
        if (before == key) continue;
        before = key;
        if (room-- == 0) return;
        kept.insert(backup.number);
    }
}

}  // namespace

QString backupName(qint64 number, const QDateTime& madeAt, BackupReason reason)
{
    return QStringLiteral("%1-%2-%3.steelyard")
        .arg(madeAt.toUTC().toString(kStamp), QString::number(number).rightJustified(6, u'0'), toText(reason));
}

std::optional<Backup> backupNamed(const QString& path)
{
    static const QRegularExpression form(QStringLiteral(R"(^(\d{8}T\d{6}Z)-(\d{6,12})-([a-z]+)\.steelyard$)"));
    const QFileInfo file(path);
    const auto match = form.match(file.fileName());
    if (!match.hasMatch()) return std::nullopt;
    QDateTime madeAt = QDateTime::fromString(match.captured(1), kStamp);
    madeAt.setTimeSpec(Qt::UTC);
    const auto reason = fromKey<BackupReason>(match.capturedView(3));
    if (!madeAt.isValid() || !reason) return std::nullopt;
    return Backup{path, match.captured(2).toLongLong(), madeAt, *reason, file.size()};
}

std::vector<Backup> surplusBackups(const std::vector<Backup>& newestFirst)
{
    std::set<qint64> kept;
    if (!newestFirst.empty()) kept.insert(newestFirst.front().number);
    keepRuns(newestFirst, kDays, kept, [](QDate date) { return date; });
    keepRuns(newestFirst, kWeeks, kept, [](QDate date) { return date.addDays(1 - date.dayOfWeek()); });
    keepRuns(newestFirst, kMonths, kept, [](QDate date) { return date.year() * 12 + date.month(); });
    std::size_t room = kOthers;
    for (const Backup& backup : newestFirst)
        if (backup.reason != BackupReason::Daily && room > 0) {
            kept.insert(backup.number);
            --room;
        }
    std::vector<Backup> surplus;
    for (const Backup& backup : newestFirst)
        if (!kept.contains(backup.number)) surplus.push_back(backup);
    return surplus;
}

}  // namespace steelyard
