// Thresholds of the review's rules that the coach changed, by rule id and parameter name. What is absent has the rule's
// own default; unknown names are kept, they may be a newer program's.
#pragma once

#include <QtCore/QString>

#include <map>
#include <utility>

namespace steelyard {

using RuleSettings = std::map<std::pair<QString, QString>, double>;

}  // namespace steelyard
