// The log likelihood of a local level, which a search for variances asks for again and again: nanoseconds an observation,
// against R's compiled KalmanLike doing the same number of evaluations and, where it is installed, statsmodels.
//
//   local_level_benchmark
//
// Series: the Nile's hundred years; 10,000 simulated values; the same with every tenth missing, where our filter's variance
// never comes to rest and has to be worked out at every step as theirs always are. All take the least of five rounds of
// processor time. Any side that gives another likelihood stops the run.
#include "core/numerics/local_level.h"
#include "tests/benchmarks/benchmark_support.h"

#include <QtCore/QFile>
#include <QtCore/QProcess>
#include <QtCore/QStandardPaths>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <random>

namespace steelyard {
namespace {

constexpr double kObservationsARound = 4e6;
constexpr int kRounds = 5;
const LocalLevel kModel{.levelVariance = 1469.1, .noiseVariance = 15099};

struct Series {
    const char* name;
    std::vector<std::optional<double>> values;
    int evaluations = 0;
    double logLikelihood = 0;
    double seconds = std::numeric_limits<double>::infinity();
};

std::vector<std::optional<double>> nile()
{
    QFile file(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/reference/nile_local_level.csv"));
    if (!file.open(QIODevice::ReadOnly)) qFatal("the Nile's series is missing");
    std::vector<std::optional<double>> values;
    for (const QByteArray& line : file.readAll().split('\n')) {
        bool isYear = false;
        line.left(4).toInt(&isYear);
        if (isYear) values.emplace_back(line.split(',').at(1).toDouble());
    }
    return values;
}

std::vector<std::optional<double>> simulated(int count)
{
    std::mt19937 random(1);
    std::normal_distribution<double> normal;
    std::vector<std::optional<double>> values;
    double level = 1000;
    for (int t = 0; t < count; ++t) {
        level += std::sqrt(kModel.levelVariance) * normal(random);
        values.emplace_back(level + std::sqrt(kModel.noiseVariance) * normal(random));
    }
    return values;
}

void timeOurs(Series& series)
{
    series.logLikelihood = logLikelihood(kModel, series.values).value();
    double sum = 0;
    for (int round = 0; round < kRounds; ++round) {
        const benchmark::Stopwatch watch;
        for (int i = 0; i < series.evaluations; ++i) sum += *logLikelihood(kModel, series.values);
        series.seconds = std::min(series.seconds, watch.processorSeconds());
    }
    const double expected = series.logLikelihood * series.evaluations * kRounds;
    if (std::abs(sum / expected - 1) > 1e-9) qFatal("the likelihood changed between evaluations");
}

QByteArray written(const std::vector<Series>& all)
{
    const auto number = [](double value) { return QByteArray::number(value, 'g', 17) + '\n'; };
    QByteArray text = number(kModel.levelVariance) + number(kModel.noiseVariance) + number(kModel.startVariance);
    for (const Series& series : all) {
        text += number(series.evaluations) + number(static_cast<double>(series.values.size()));
        for (const auto& value : series.values) text += value ? number(*value) : QByteArray("NA\n");
    }
    return text;
}

// What the other side prints: a line a series, its last word the likelihood. Empty when it isn't there.
std::vector<std::vector<double>> answers(const QString& program, const char* script, const std::vector<Series>& all)
{
    const QString path = QStandardPaths::findExecutable(program);
    if (path.isEmpty()) return {};
    QProcess process;
    process.start(path, {QStringLiteral(STEELYARD_SOURCE_DIR "/tests/benchmarks/") + QString::fromLatin1(script)});
    process.write(written(all));
    process.closeWriteChannel();
    if (!process.waitForFinished(-1) || process.exitCode() != 0)
        qFatal("%s", process.readAllStandardError().constData());
    const QByteArray output = process.readAllStandardOutput().trimmed();
    if (output == "missing") return {};
    std::vector<std::vector<double>> lines;
    for (const QByteArray& line : output.split('\n')) {
        std::vector<double>& words = lines.emplace_back();
        for (const QByteArray& word : line.simplified().split(' ')) words.push_back(word.toDouble());
    }
    if (lines.size() != all.size()) qFatal("%s said: %s", script, output.constData());
    for (std::size_t i = 0; i < all.size(); ++i)
        if (!(std::abs(lines[i].back() / all[i].logLikelihood - 1) < 1e-9))
            qFatal("%s: %.12g, ours %.12g", script, lines[i].back(), all[i].logLikelihood);
    return lines;
}

void print(const char* what, double seconds, const Series& series)
{
    const double observations = static_cast<double>(series.values.size()) * series.evaluations;
    std::printf("  %-48s %8.2f %8.2f\n", what, 1e9 * seconds / observations, seconds / series.seconds);
}

int compare()
{
    std::vector<Series> all{{"Nile", nile()}, {"simulated", simulated(10'000)}, {"simulated, gaps", simulated(10'000)}};
    for (std::size_t i = 0; i < all.back().values.size(); i += 10) all.back().values[i].reset();
    for (Series& series : all) {
        series.evaluations = static_cast<int>(kObservationsARound / static_cast<double>(series.values.size()));
        timeOurs(series);
    }
    const auto r = answers(QStringLiteral("Rscript"), "local_level_benchmark.R", all);
    // The system's Python, whose package it is, may stand behind another one in the search path.
    auto statsmodels = answers(QStringLiteral("python3"), "local_level_benchmark.py", all);
    if (statsmodels.empty()) statsmodels = answers(QStringLiteral("/usr/bin/python3"), "local_level_benchmark.py", all);
    std::printf("%-50s %8s %8s\n", "log likelihood of a local level", "ns/value", "to ours");
    for (std::size_t i = 0; i < all.size(); ++i) {
        std::printf("%s: %zu values, %d evaluations\n", all[i].name, all[i].values.size(), all[i].evaluations);
        print("ours", all[i].seconds, all[i]);
        if (!r.empty()) {
            print("R, KalmanLike", r[i].at(0), all[i]);
            print("R, the C code of KalmanLike alone", r[i].at(1), all[i]);
        }
        if (!statsmodels.empty()) print("statsmodels, loglike", statsmodels[i].at(0), all[i]);
    }
    if (r.empty()) std::puts("R: not installed");
    if (statsmodels.empty()) std::puts("statsmodels: not installed");
    return 0;
}

}  // namespace
}  // namespace steelyard

int main()
{
    return steelyard::compare();
}
