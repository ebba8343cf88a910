// What validation found: the field by its stable name, and a sentence that says how to mend it.
#pragma once

#include <QtCore/QString>

#include <vector>

namespace steelyard {

struct Problem {
    QString field;
    QString text;
    friend bool operator==(const Problem&, const Problem&) = default;
};

using Problems = std::vector<Problem>;

}  // namespace steelyard
