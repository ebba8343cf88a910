// What the guide says can be typed can be typed.
#include "core/keying/keyed_line.h"
#include "core/keying/repetition_notation.h"

#include <QtCore/QFile>
#include <QtCore/QRegularExpression>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

// The examples in the first column of a page's tables.
QStringList examplesOf(const QString& page)
{
    QFile file(QStringLiteral(":/guide/") + page);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(file.readAll());
    static const QRegularExpression row(QStringLiteral("^\\| (`.*`) \\|"), QRegularExpression::MultilineOption);
    static const QRegularExpression typed(QStringLiteral("`([^`]+)`"));
    QStringList examples;
    for (auto line = row.globalMatch(text); line.hasNext();)
        for (auto example = typed.globalMatch(line.next().captured(1)); example.hasNext();)
            examples << example.next().captured(1);
    return examples;
}

TEST(KeyingGuide, EveryLineThatItShowsIsReadAsASet)
{
    const LiftLine lift{Id<Athlete>(1), Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};
    SetEntry planned;
    planned.load = *Load::parse(u"40", MassUnit::kg);
    planned.reps = 12;
    KeyingSheet sheet{Id<Athlete>(1), QDate(2027, 3, 8), MassUnit::kg, SetKind::Work, {{lift, {}, {{1, planned, {}}}}}};
    const QStringList examples = examplesOf(QStringLiteral("keying.md"));
    EXPECT_GE(examples.size(), 15);
    for (const QString& written : examples) {
        const auto set = readKeyedLine(written, sheet.exercises[0], 0, sheet);
        EXPECT_TRUE(set) << qPrintable(written) << ": " << (set ? "" : qPrintable(set.error().text));
    }
}

TEST(KeyingGuide, EveryRepetitionThatItShowsIsReadAsOne)
{
    const QStringList examples = examplesOf(QStringLiteral("repetitions.md"));
    EXPECT_GE(examples.size(), 7);
    for (const QString& written : examples) {
        const auto read = readRepetitionLine(written, {});
        EXPECT_TRUE(read) << qPrintable(written) << ": " << (read ? "" : qPrintable(read.error().text));
    }
}

}  // namespace
}  // namespace steelyard
