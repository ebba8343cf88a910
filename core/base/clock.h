// The only place that knows the current time. Everything that needs it is handed a Clock.
#pragma once

#include <QtCore/QDate>
#include <QtCore/QDateTime>

namespace steelyard {

class Clock {
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual QDate today() const = 0;       // the coach's calendar day
    [[nodiscard]] virtual QDateTime nowUtc() const = 0;  // for stamps on stored changes
};

class SystemClock final : public Clock {
public:
    [[nodiscard]] QDate today() const override;
    [[nodiscard]] QDateTime nowUtc() const override;
};

// A day that does not move: `--as-of`, demo books and tests.
class FixedClock final : public Clock {
public:
    explicit FixedClock(QDate today) : m_today(today) {}
    [[nodiscard]] QDate today() const override { return m_today; }
    [[nodiscard]] QDateTime nowUtc() const override;

private:
    QDate m_today;
};

}  // namespace steelyard
