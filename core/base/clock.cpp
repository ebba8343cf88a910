#include "core/base/clock.h"

#include <QtCore/QTime>
#include <QtCore/QTimeZone>

namespace steelyard {

QDate SystemClock::today() const
{
    return QDate::currentDate();
}

QDateTime SystemClock::nowUtc() const
{
    return QDateTime::currentDateTimeUtc();
}

QDateTime FixedClock::nowUtc() const
{
    return QDateTime(m_today, QTime(12, 0), Qt::UTC);
}

}  // namespace steelyard
