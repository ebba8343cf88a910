// What is kept of the lock between two runs: the hash of its passphrase (never the passphrase), how long nobody has to be there
// before it locks by itself, and how many tries failed in a row.
//
//   LockSettings lock(settings);
//   if (lock.secret()) cover();
//
// Units: minutes; 0 means never. A hash that can't be read counts as none.
#pragma once

#include "core/care/lock_secret.h"

#include <chrono>

class QSettings;

namespace steelyard {

class LockSettings {
public:
    static constexpr int kMostMinutes = 240;
    explicit LockSettings(QSettings& settings) : m_settings(settings) {}

    [[nodiscard]] std::optional<LockSecret> secret() const;
    void set(const LockSecret& secret);
    void remove();
    [[nodiscard]] int minutes() const;
    void setMinutes(int minutes);
    [[nodiscard]] int failures() const;
    void setFailures(int failures);
    [[nodiscard]] QString file() const;

private:
    QSettings& m_settings;
};

// How long the next try has to wait after so many that failed in a row: nothing for two, then twice as long each time, at most
// a minute.
[[nodiscard]] std::chrono::seconds waitAfterFailures(int failures);

}  // namespace steelyard
