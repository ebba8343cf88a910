// The consistency of repetitions against R: its functions sd, diff, log, median and qnorm on the same numbers.
#include "core/analysis/repetition_consistency.h"

#include "tests/support/r_script.h"

#include <random>

namespace steelyard {
namespace {

constexpr const char* kScript = R"(
x <- scan(file('stdin'), quiet = TRUE)
set <- rep(seq_len(length(x) / 8), each = 8)
steps <- unlist(tapply(x, set, diff))
shares <- unlist(tapply(log(x), set, diff))
error <- sd(steps) / sqrt(2)
cat(format(c(median(x), error, exp(sd(shares) / sqrt(2)) - 1, qnorm(0.95) * error * sqrt(2)), digits = 17))
)";

TEST(RepetitionConsistencyInR, GivesTheSameNumbers)
{
    std::mt19937 engine(11);
    std::vector<double> values;
    std::vector<std::vector<Repetition>> sets(6);
    for (auto& set : sets)
        for (int number = 1; number <= 8; ++number) {
            const Decimal mm = Decimal::fromScaled(4'300 + static_cast<int>(engine() % 1'400), 1);
            set.push_back({.number = number, .source = RepetitionSource::Measured, .travelMm = mm});
            values.push_back(mm.toDouble());
        }
    const auto ours = repetitionConsistency(sets, RepetitionQuantity::Travel);
    const auto theirs = testing_support::runR(kScript, values);
    ASSERT_TRUE(ours);
    ASSERT_EQ(theirs.size(), 4U);
    EXPECT_NEAR(ours->median, theirs[0], 1e-9);
    EXPECT_NEAR(ours->typicalError, theirs[1], 1e-9);
    EXPECT_NEAR(ours->variation, theirs[2], 1e-12);
    EXPECT_NEAR(ours->realChange, theirs[3], 1e-8);
}

}  // namespace
}  // namespace steelyard
