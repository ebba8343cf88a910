#include "core/analysis/parameter_fit.h"

#include "core/analysis/fit_coordinates.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace steelyard {
namespace {

struct ParameterFitText {
    Q_DECLARE_TR_FUNCTIONS(ParameterFitText)
};

constexpr double kRidgeSd = 0.5;
constexpr double kMostOffset = 2.5;
constexpr double kFirstStep = 0.25;
constexpr double kLongestStep = 1;
constexpr double kLeastStep = 0.01;
// A round that gains less than this is the last but for finer steps.
constexpr double kRoundGain = 0.05;

// A place in the search and what it is worth.
struct FitPoint {
    ReadingParameters parameters;
    double logLikelihood = 0;
    double penalised = -std::numeric_limits<double>::infinity();
};

class CoordinateSearch {
public:
    CoordinateSearch(std::span<const FitLine> lines, const FitOptions& options, const Progress& progress)
        : m_lines(lines), m_options(options), m_progress(progress), m_coordinates(fitCoordinates(lines))
    {
        m_steps.assign(m_coordinates.size(), kFirstStep);
    }

    // False when asked to stop, here and below.
    [[nodiscard]] bool startAt(const ReadingParameters& start)
    {
        const auto point = evaluate(start);
        if (point) m_best = *point;
        return point.has_value();
    }

    [[nodiscard]] bool run()
    {
        while (mayGoOn()) {
            const double before = m_best.penalised;
            for (std::size_t i = 0; i < m_coordinates.size() && mayGoOn(); ++i)
                if (!improve(i)) return false;
            if (m_best.penalised - before >= kRoundGain) continue;
            if (std::ranges::all_of(m_steps, [](double step) { return std::abs(step) <= kFirstStep / 2; })) break;
            for (double& step : m_steps) step /= 2;
        }
        m_progress.report(1);
        return true;
    }

    [[nodiscard]] const FitPoint& best() const { return m_best; }
    [[nodiscard]] int evaluations() const { return m_evaluations; }

private:
    [[nodiscard]] bool mayGoOn() const { return m_evaluations < m_options.mostEvaluations; }

    std::optional<FitPoint> evaluate(const ReadingParameters& parameters)
    {
        const auto each = logLikelihoodOf(m_lines, parameters, m_options.threads, m_progress);
        if (!each) return std::nullopt;
        ++m_evaluations;
        m_progress.report(static_cast<double>(m_evaluations) / m_options.mostEvaluations);
        FitPoint point{parameters, std::accumulate(each->begin(), each->end(), 0.0)};
        if (!std::isfinite(point.logLikelihood)) return point;
        double ridge = 0;
        for (const FitCoordinate& one : m_coordinates) {
            const double offset = one.offset(parameters) / kRidgeSd;
            ridge += 0.5 * offset * offset;
        }
        point.penalised = point.logLikelihood - ridge;
        return point;
    }

    // The penalised likelihood a step away, kept when it is better; no step over the bounds, and none beyond the budget.
    struct Tried {
        bool stopped = false;
        bool better = false;
        double penalised = -std::numeric_limits<double>::infinity();
    };
    Tried trial(const FitCoordinate& coordinate, double step)
    {
        const double offset = coordinate.offset(m_best.parameters);
        const double within = std::clamp(offset + step, -kMostOffset, kMostOffset) - offset;
        if (within * step <= 0 || !mayGoOn()) return {};
        ReadingParameters moved = m_best.parameters;
        coordinate.move(moved, within);
        const auto point = evaluate(moved);
        if (!point) return {.stopped = true};
        const Tried tried{false, point->penalised > m_best.penalised, point->penalised};
        if (tried.better) m_best = *point;
        return tried;
    }

    bool improve(std::size_t at)
    {
        const FitCoordinate& coordinate = m_coordinates[at];
        double& step = m_steps[at];
        const double here = m_best.penalised;
        const Tried forth = trial(coordinate, step);
        if (forth.stopped) return false;
        if (forth.better) {
            step = std::clamp(1.6 * step, -kLongestStep, kLongestStep);
            return true;
        }
        const Tried back = trial(coordinate, -step);
        if (back.stopped) return false;
        if (back.better) {
            step = -step;
            return true;
        }
        // The best lies between: where a parabola through the three places has its top.
        const double bend = 2 * here - forth.penalised - back.penalised;
        double top = std::isfinite(bend) && bend > 0 ? 0.5 * step * (forth.penalised - back.penalised) / bend : 0;
        step = std::copysign(std::max({std::abs(top), 0.4 * std::abs(step), kLeastStep}), step);
        if (std::abs(top) < kLeastStep) return true;
        return !trial(coordinate, top).stopped;
    }

    std::span<const FitLine> m_lines;
    const FitOptions& m_options;
    const Progress& m_progress;
    std::vector<FitCoordinate> m_coordinates;
    std::vector<double> m_steps;
    FitPoint m_best;
    int m_evaluations = 0;
};

}  // namespace

bool isLongEnough(const FitLine& line)
{
    return line.weeksHeard() >= kLeastFitWeeks;
}

Result<ParameterFit> fitParameters(std::span<const FitLine> all, const ReadingParameters& start,
                                   const FitOptions& options, const Progress& progress)
{
    std::vector<FitLine> lines;
    std::ranges::copy_if(all, std::back_inserter(lines), isLongEnough);
    ParameterFit fit;
    fit.lines = static_cast<int>(lines.size());
    for (const FitLine& line : lines) fit.sets += line.setsHeard();
    if (fit.lines < kLeastFitLines) {
        fit.kept = u"too_few_lines";
        return fit;
    }
    const auto stopped = [] { return fail(ErrorCode::Cancelled, ParameterFitText::tr("Learning was stopped.")); };
    CoordinateSearch search(lines, options, progress);
    if (!search.startAt(start)) return stopped();
    fit.logLikelihoodBefore = search.best().logLikelihood;
    fit.penalisedBefore = search.best().penalised;
    if (!search.run()) return stopped();
    fit.logLikelihoodAfter = search.best().logLikelihood;
    fit.penalisedAfter = search.best().penalised;
    fit.evaluations = search.evaluations();
    if (fit.penalisedAfter - fit.penalisedBefore < kLeastFitGain)
        fit.kept = u"no_gain";
    else
        fit.fitted = search.best().parameters;
    return fit;
}

}  // namespace steelyard
