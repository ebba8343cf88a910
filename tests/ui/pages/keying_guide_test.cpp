// What the guide says can be typed can be typed.
#include "core/keying/keyed_line.h"

#include <QtCore/QFile>
#include <QtCore/QRegularExpression>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(KeyingGuide, EveryLineThatItShowsIsReadAsASet)
{
    QFile file(QStringLiteral(":/guide/keying.md"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(file.readAll());
    const LiftLine lift{Id<Athlete>(1), Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};
    SetEntry planned;
    planned.load = *Load::parse(u"40", MassUnit::kg);
    planned.reps = 12;
    KeyingSheet sheet{Id<Athlete>(1), QDate(2027, 3, 8), MassUnit::kg, SetKind::Work, {{lift, {}, {{1, planned, {}}}}}};
    static const QRegularExpression row(QStringLiteral("^\\| (`.*`) \\|"), QRegularExpression::MultilineOption);
    static const QRegularExpression typed(QStringLiteral("`([^`]+)`"));
    int seen = 0;
    for (auto line = row.globalMatch(text); line.hasNext();)
        for (auto example = typed.globalMatch(line.next().captured(1)); example.hasNext(); ++seen) {
            const QString written = example.next().captured(1);
            const auto set = readKeyedLine(written, sheet.exercises[0], 0, sheet);
            EXPECT_TRUE(set) << qPrintable(written) << ": " << (set ? "" : qPrintable(set.error().text));
        }
    EXPECT_GE(seen, 15);
}

}  // namespace
}  // namespace steelyard
