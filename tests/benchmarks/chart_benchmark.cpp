// How long the progress chart of a line of five years takes to draw, against plain QPainter lines through as many points
// into an image of the same size.
//
//   chart_benchmark
//
// "another line" is what a step from line to line costs: the reading as a chart's content, laid out and drawn. "redraw" is
// the same content again; "another session" a step from session to session; "zoom" and "pan" are steps in time.
// Then the same of made-up lines of 1,000 and of 10,000 sets, three a session. A frame of a screen lasts 16 ms.
#include "core/analysis/regime_engine.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/benchmarks/benchmark_club.h"
#include "tests/support/log_builder.h"
#include "ui/charts/progress_chart.h"

#include <QtCore/QTemporaryDir>
#include <QtGui/QImage>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QApplication>

#include <algorithm>
#include <cstdio>
#include <functional>

namespace steelyard {
namespace {

using benchmark::must;
using benchmark::Stopwatch;

constexpr QSize kSize(1100, 520);

// Milliseconds of the middle one of many runs: as many as two seconds have room for, from 11 to 101.
double typicalMs(const std::function<void(int)>& work)
{
    constexpr int least = 11;
    constexpr int most = 101;
    const Stopwatch all;
    std::vector<double> times;
    for (int i = 0; i < most && (i < least || all.seconds() < 2); ++i) {
        const Stopwatch watch;
        work(i);
        times.push_back(1000 * watch.seconds());
    }
    const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
    std::ranges::nth_element(times, middle);
    return *middle;
}

AthleteLog fiveYears(const QString& path)
{
    benchmark::needClub(path, 1);
    const auto db = must(Database::openReader(path));
    const Library library = must(LibraryRepository(*db).read());
    return must(readAthleteLog(*db, library, must(AthleteRepository(*db).all()).front().id));
}

void paintPlainly(QImage& image, const std::vector<ChartPoint>& points)
{
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(Qt::black, 1));
    const double step = static_cast<double>(kSize.width()) / static_cast<double>(points.size());
    for (std::size_t i = 1; i < points.size(); ++i) {
        const auto x = static_cast<double>(i) * step;
        painter.drawLine(QPointF(x - step, points[i - 1].value), QPointF(x, points[i].value));
    }
}

void print(const char* what, double ms, double plainMs)
{
    std::printf("%-44s %8.2f %8.2f\n", what, ms, ms / plainMs);
}

void compareLine(const AthleteLog& log, std::size_t at)
{
    const RegimeEngine engine({}, {}, {}, ReadingDepth::Course);
    LifterTracker state(engine.parameters(), engine.thresholds(), log.athlete.value.experience);
    const auto readings = engine.readAll(log, benchmark::clubDay(), state);
    const LineRecord& line = log.lines[at];
    const ProgressSource source{readings[at],
                                log.blocks,
                                log.decisions,
                                line.id,
                                line.exercise.value.name,
                                &line,
                                nullptr,
                                engine.ahead(line, log, readings[at], state, benchmark::clubDay())};
    const ProgressSpec spec = buildProgressSpec(source, {});
    ProgressChart chart;
    chart.resize(kSize);
    chart.ensurePolished();
    QImage image(kSize, QImage::Format_ARGB32_Premultiplied);
    QWidget& widget = chart;  // QGraphicsView's own render() paints the scene alone
    const auto draw = [&] { widget.render(&image); };
    const auto press = [&](int key, Qt::KeyboardModifiers keys) {
        QKeyEvent event(QEvent::KeyPress, key, keys);
        QApplication::sendEvent(&chart, &event);
        draw();
    };
    chart.setSpec(spec);
    draw();
    const double plain = typicalMs([&](int) { paintPlainly(image, spec.reps.points); });
    const double again = typicalMs([&](int) { draw(); });
    const double hover = typicalMs([&](int i) {
        chart.select(spec.reps.points[static_cast<std::size_t>(i) % spec.reps.points.size()].exposure);
        draw();
    });
    const double zoom = typicalMs([&](int i) { press(i % 2 == 0 ? Qt::Key_Plus : Qt::Key_Minus, {}); });
    press(Qt::Key_Plus, {});
    press(Qt::Key_Plus, {});
    const double pan = typicalMs([&](int i) { press(i % 2 == 0 ? Qt::Key_Left : Qt::Key_Right, Qt::ControlModifier); });
    const double another = typicalMs([&](int) {
        chart.setSpec(buildProgressSpec(source, {}));
        draw();
    });
    std::printf("%zu sessions of one line, %zu sets, %d x %d\n", spec.reps.points.size(), spec.sets.size(),
                kSize.width(), kSize.height());
    std::printf("%-44s %8s %8s\n", "", "ms", "ratio");
    print("plain lines through as many points", plain, plain);
    print("redraw", again, plain);
    print("another session selected", hover, plain);
    print("zoom", zoom, plain);
    print("pan, zoomed in", pan, plain);
    print("another line: content, layout, drawing", another, plain);
    std::printf("\n");
}

void compareFiveYears()
{
    const QTemporaryDir folder;
    const AthleteLog log = fiveYears(folder.filePath(QStringLiteral("club.steelyard")));
    const auto longest =
        std::ranges::max_element(log.lines, {}, [](const LineRecord& record) { return record.exposures.size(); });
    compareLine(log, static_cast<std::size_t>(longest - log.lines.begin()));
}

void compareSets(int sets)
{
    using testing_support::MadeSet;
    testing_support::LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    const int sessions = sets / 3;
    for (int i = 0; i < sessions; ++i) {
        const double load = 40 + 2.5 * (i % 3);
        const int reps = 13 - 2 * (i % 3) + i % 5 / 3;
        builder.exposure(benchmark::clubDay().addDays(3 * (i - sessions + 1)),
                         {MadeSet{.load = load, .reps = reps, .off = 0, .rir = 2},
                          MadeSet{.load = load, .reps = reps - 1, .off = i % 4 == 0 ? 1 : 0, .rir = 1},
                          MadeSet{.load = load, .reps = reps - 2, .rir = i % 2 + 1.0}});
    }
    compareLine(builder.build(), 0);
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::keepFreedMemory();  // as every program does
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication app(argc, argv);
    steelyard::compareFiveYears();
    for (const int sets : {1'000, 10'000}) steelyard::compareSets(sets);
    return 0;
}
