// Goes through every page and view of a window with a club, and stops at each.
//
//   tourPages(window, [&](const QString& where) { … });
#pragma once

#include "ui/shell/actions.h"
#include "ui/shell/book_view.h"
#include "ui/shell/main_window.h"

#include <QtTest/QTest>

#include <functional>

namespace steelyard::testing_support {

inline void tourPages(MainWindow& window, const std::function<void(const QString&)>& at)
{
    const std::vector<std::pair<const char*, QStringList>> stops{
        {"week", {QString(), QStringLiteral("week.why"), QStringLiteral("week.picture")}},
        {"lifter",
         {QStringLiteral("lifter.progress"), QStringLiteral("lifter.compare"), QStringLiteral("lifter.curve"),
          QStringLiteral("lifter.ratings"), QStringLiteral("lifter.training"), QStringLiteral("lifter.decisions"),
          QStringLiteral("lifter.logbook"), QStringLiteral("lifter.body"), QStringLiteral("lifter.repetitions"),
          QStringLiteral("lifter.trials"), QStringLiteral("lifter.why")}},
        {"block", {QString(), QStringLiteral("block.day")}},
        {"floor",
         {QString(), QStringLiteral("floor.key"), QStringLiteral("floor.key.back"), QStringLiteral("floor.rack")}},
    };
    for (const auto& [place, actions] : stops)
        for (const QString& action : actions) {
            window.view()->showPlace(QString::fromLatin1(place));
            if (!action.isEmpty()) window.perform(action);
            ASSERT_TRUE(QTest::qWaitFor([&] { return window.isSettled(); }, 60000));
            QTest::qWait(1);
            at(QStringLiteral("%1 %2").arg(QString::fromLatin1(place), action));
        }
}

}  // namespace steelyard::testing_support
