// Asks one rule about a record.
//
//   EXPECT_EQ(askRule(u"stalled", log, asOf).size(), 1u);
#pragma once

#include "core/analysis/regime_engine.h"
#include "core/flags/registry.h"
#include "tests/support/log_builder.h"

namespace steelyard::testing_support {

inline std::vector<Flag> askRule(QStringView id, const AthleteLog& log, QDate asOf, const RuleSettings& settings = {},
                                 const Wording& wording = {})
{
    const FlagRule* rule = findRule(id);
    if (!rule) qFatal("No rule %s", qPrintable(id.toString()));
    const RegimeEngine engine({}, {}, wording);
    std::vector<Flag> flags;
    rule->check(takeSnapshot(log, engine, asOf, wording), RuleParameters(*rule, settings), flags);
    return flags;
}

// Up and down by turns: no trend over any number of sessions, and not the same number twice running.
inline double wobble(int i)
{
    return i % 2 == 0 ? 0.5 : -0.5;
}

}  // namespace steelyard::testing_support
