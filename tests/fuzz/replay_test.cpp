// What fuzzers found worth keeping, gone through once more by the ordinary suite. A finding is added to the corpus with its mend.
#include "tests/fuzz/faults_of_input.h"

#include <QtCore/QDir>
#include <QtCore/QFile>

#include <gtest/gtest.h>

namespace steelyard::test {
namespace {

struct Fuzzed {
    const char* name;
    std::string (*fault)(const QByteArray& input);
};

class Corpus : public testing::TestWithParam<Fuzzed> {};

TEST_P(Corpus, HoldsNothingThatGoesWrong)
{
    const QDir folder(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/fuzz/corpus/") + QLatin1String(GetParam().name));
    const QStringList names = folder.entryList(QDir::Files);
    ASSERT_GT(names.size(), 50) << "the corpus is gone from " << folder.path().toStdString();
    for (const QString& name : names) {
        QFile file(folder.filePath(name));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_EQ(GetParam().fault(file.readAll()), "") << name.toStdString();
    }
}

INSTANTIATE_TEST_SUITE_P(All, Corpus,
                         testing::Values(Fuzzed{"notation", notationFault}, Fuzzed{"logbook", logbookFault}),
                         [](const auto& test) { return std::string(test.param.name); });

}  // namespace
}  // namespace steelyard::test
