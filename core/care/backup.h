// One backup of a book: a whole copy, one file, whose name says when and why it was made.
//
//   20270301T180512Z-000042-import.steelyard            and beside it, as `b2sum -c` reads it:
//   20270301T180512Z-000042-import.steelyard.blake2b
//
// The number tells which is newer; the time is what the clock said, and clocks are set back. Nobody's name stands in it.
#pragma once

#include "core/base/enum_text.h"

#include <QtCore/QDateTime>

#include <vector>

namespace steelyard {

enum class BackupReason { Daily, Asked, Update, Import, Restore, Bulk, Erase };

template <>
struct EnumText<BackupReason> {
    static constexpr auto table = std::to_array<EnumKey<BackupReason>>({{BackupReason::Daily, "daily"},
                                                                        {BackupReason::Asked, "asked"},
                                                                        {BackupReason::Update, "update"},
                                                                        {BackupReason::Import, "import"},
                                                                        {BackupReason::Restore, "restore"},
                                                                        {BackupReason::Bulk, "bulk"},
                                                                        {BackupReason::Erase, "erase"}});
};

struct Backup {
    QString path;
    qint64 number = 0;  // from 1, in the order of making
    QDateTime madeAt;   // UTC
    BackupReason reason = BackupReason::Daily;
    qint64 bytes = 0;
    friend bool operator==(const Backup&, const Backup&) = default;
};

[[nodiscard]] QString backupName(qint64 number, const QDateTime& madeAt, BackupReason reason);
// Nothing for a file that is called otherwise.
[[nodiscard]] std::optional<Backup> backupNamed(const QString& path);

// Which of them nobody needs any more. Given and answered newest first. Kept are the last of each of the newest 7 days, 4 weeks and
// 12 months that have any (UTC; weeks from Monday), the newest 10 that weren't made by the calendar, and the newest of all. A day
// ends where the next backup has another date, whichever way: a clock that is set back takes no place of what was there before.
[[nodiscard]] std::vector<Backup> surplusBackups(const std::vector<Backup>& newestFirst);

}  // namespace steelyard
