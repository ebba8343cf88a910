// Pieces of a coach's work, small enough to be done thousands of times with a fault at another place each time, and what must hold
// afterwards whatever failed: nothing that was acknowledged is lost, nothing stands half, and the book can be worked on.
#pragma once

#include "core/base/clock.h"

#include <QtCore/QString>
#include <QtCore/QTemporaryDir>

#include <string>
#include <vector>

namespace steelyard::test {

class SmallWork {
public:
    virtual ~SmallWork() = default;
    // Anew, in that folder.
    virtual void lay(const QString& folder) = 0;
    // Never fails: what the book refuses is remembered.
    virtual void perform() = 0;
    // Empty, or what is wrong now that nothing fails any more.
    [[nodiscard]] virtual std::string check() = 0;
    // All went well in perform().
    [[nodiscard]] virtual bool isDone() const = 0;
};

struct NamedWork {
    const char* name;
    std::unique_ptr<SmallWork> (*make)();
};

// Opening a book and typing sets; importing a file; saving a copy over an older one; bringing an older book up to date.
[[nodiscard]] const std::vector<NamedWork>& smallWorks();

}  // namespace steelyard::test
