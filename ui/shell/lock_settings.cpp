#include "ui/shell/lock_settings.h"

#include <QtCore/QSettings>

#include <algorithm>

namespace steelyard {
namespace {

const QString kLockSecret = QStringLiteral("lock/secret");
const QString kLockMinutes = QStringLiteral("lock/minutes");
const QString kLockFailures = QStringLiteral("lock/failures");
constexpr int kUsualMinutes = 10;
constexpr int kFreeFailures = 2;
constexpr int kMostWait = 60;

}  // namespace

std::optional<LockSecret> LockSettings::secret() const
{
    return LockSecret::fromText(m_settings.value(kLockSecret).toString());
}

void LockSettings::set(const LockSecret& secret)
{
    m_settings.setValue(kLockSecret, secret.text());
    setFailures(0);
}

void LockSettings::remove()
{
    m_settings.remove(kLockSecret);
    setFailures(0);
}

int LockSettings::minutes() const
{
    return std::clamp(m_settings.value(kLockMinutes, kUsualMinutes).toInt(), 0, kMostMinutes);
}

void LockSettings::setMinutes(int minutes)
{
    m_settings.setValue(kLockMinutes, minutes);
}

int LockSettings::failures() const
{
    return std::max(0, m_settings.value(kLockFailures, 0).toInt());
}

void LockSettings::setFailures(int failures)
{
    m_settings.setValue(kLockFailures, failures);
    m_settings.sync();  // ending the program must not give the tries back
}

QString LockSettings::file() const
{
    return m_settings.fileName();
}

std::chrono::seconds waitAfterFailures(int failures)
{
    if (failures <= kFreeFailures) return std::chrono::seconds(0);
    const int doublings = std::min(failures - kFreeFailures, 6);
    return std::chrono::seconds(std::min(1 << doublings, kMostWait));
}

}  // namespace steelyard
