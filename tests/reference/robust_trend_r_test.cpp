// Theil-Sen, Sen's interval and Mann-Kendall against base R, which gets there by other ways: outer() for the slopes,
// cor.test() for the test.
#include "core/numerics/robust_trend.h"

#include <QtCore/QProcess>
#include <QtCore/QStandardPaths>

#include <gtest/gtest.h>

#include <cstdlib>
#include <random>

namespace steelyard {
namespace {

const char* const kScript = R"(
x <- scan(file("stdin"), quiet = TRUE); n <- length(x) / 2; y <- x[(n + 1):(2 * n)]; x <- x[1:n]
up <- upper.tri(diag(n)); dx <- outer(x, x, "-")[up]; dy <- outer(y, y, "-")[up]
b <- sort(dy[dx != 0] / dx[dx != 0]); S <- sum(sign(dx) * sign(dy))
z <- suppressWarnings(unname(cor.test(x, y, method = "kendall", exact = FALSE, continuity = TRUE)$statistic))
r <- qnorm(.95) * (abs(S) - 1) / abs(z); N <- length(b)
cat(format(c(median(b), S, z, b[round((N - r) / 2)], b[round((N + r) / 2) + 1]), digits = 15), "\n")
)";

TEST(RobustTrendAgainstR, SlopeTestAndIntervalAgreeOnRandomSeriesWithTies)
{
    const QString program = QStandardPaths::findExecutable(QStringLiteral("Rscript"));
    ASSERT_FALSE(program.isEmpty()) << "Rscript is missing: install the package r-base-core";
    std::mt19937 random(7);
    for (int round = 0; round < 8; ++round) {
        std::vector<double> x, y;
        for (int i = 0; i < 12 + 4 * round; ++i) {
            x.push_back(static_cast<double>(random() % 40) / 2);
            y.push_back(x.back() * 0.5 + static_cast<double>(random() % 20));
        }
        QByteArray input;
        for (const auto* values : {&x, &y})
            for (const double value : *values) input += QByteArray::number(value, 'g', 17) + '\n';
        QProcess r;
        r.start(program, {QStringLiteral("--vanilla"), QStringLiteral("-e"), QString::fromLatin1(kScript)});
        r.write(input);
        r.closeWriteChannel();
        ASSERT_TRUE(r.waitForFinished(60'000));
        const auto fields = r.readAllStandardOutput().simplified().split(' ');
        ASSERT_EQ(fields.size(), 5) << r.readAllStandardError().toStdString();
        const auto test = mannKendall(x, y);
        ASSERT_NE(std::abs(test->s), 1) << "the interval above divides by |S| - 1";
        EXPECT_NEAR(theilSen(x, y)->slope, fields[0].toDouble(), 1e-9) << round;
        EXPECT_NEAR(static_cast<double>(test->s), fields[1].toDouble(), 1e-9) << round;
        EXPECT_NEAR(test->z, fields[2].toDouble(), 1e-9) << round;
        const auto interval = senInterval(x, y, 0.90);
        EXPECT_NEAR(interval->low, fields[3].toDouble(), 1e-9) << round;
        EXPECT_NEAR(interval->high, fields[4].toDouble(), 1e-9) << round;
    }
}

}  // namespace
}  // namespace steelyard
