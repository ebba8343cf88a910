#include "core/numerics/least_squares.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard {
namespace {

constexpr double kConvergedCosine = 1e-6;
constexpr double kConvergedStep = 1e-8;
// How far the sum of squares may rise, by rounding alone, while the solution is polished.
constexpr double kRoundingRise = 1e-9;
constexpr double kFirstDamping = 1e-3;
constexpr double kLeastDamping = 1e-16;
constexpr double kMostDamping = 1e16;
// Columns of length 1 that lie closer to each other's plane than this don't tell their parameters apart.
constexpr double kSingular = 1e-12;

using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

// The residuals and derivatives at one choice of parameters.
struct Point {
    Eigen::VectorXd parameters;
    Eigen::VectorXd residuals;
    RowMajor derivatives;
    double sumOfSquares = 0;
    bool finite = false;
};

class LeastSquaresSearch {
public:
    LeastSquaresSearch(const ResidualFunction& evaluate, std::size_t observations, const std::vector<double>& start)
        : m_evaluate(evaluate),
          m_observations(static_cast<Eigen::Index>(observations)),
          m_count(static_cast<Eigen::Index>(start.size())),
          m_scale(Eigen::VectorXd::Zero(m_count))
    {
        m_here = at(Eigen::Map<const Eigen::VectorXd>(start.data(), m_count));
    }

    [[nodiscard]] std::optional<LeastSquaresFit> run()
    {
        if (!m_here.finite) return std::nullopt;
        for (m_steps = 0; m_steps < kMostSteps; ++m_steps) {
            growScale();
            if (isConverged()) {
                polish();
                return solution();
            }
            if (!improve()) return std::nullopt;
        }
        return std::nullopt;
    }

private:
    [[nodiscard]] Point at(Eigen::VectorXd parameters) const
    {
        Point point;
        point.parameters = std::move(parameters);
        point.residuals.resize(m_observations);
        point.derivatives.resize(m_observations, m_count);
        const auto size = [](const auto& matrix) { return static_cast<std::size_t>(matrix.size()); };
        m_evaluate({point.parameters.data(), size(point.parameters)}, {point.residuals.data(), size(point.residuals)},
                   {point.derivatives.data(), size(point.derivatives)});
        point.sumOfSquares = point.residuals.squaredNorm();
        point.finite =
            point.parameters.allFinite() && std::isfinite(point.sumOfSquares) && point.derivatives.allFinite();
        return point;
    }

    // Marquardt's scale: the longest that each column of derivatives has been makes the search blind to units.
    void growScale()
    {
        m_scale = m_scale.cwiseMax(m_here.derivatives.colwise().norm().transpose());
        for (double& scale : m_scale)
            if (scale == 0.0) scale = 1.0;
    }

    // The step that would be the last if the residuals were straight in the parameters.
    [[nodiscard]] Eigen::VectorXd straightStep(const Point& point) const
    {
        const RowMajor scaled = point.derivatives * m_scale.cwiseInverse().asDiagonal();
        const Eigen::VectorXd step = scaled.colPivHouseholderQr().solve(-point.residuals);
        return step.cwiseQuotient(m_scale);
    }

    [[nodiscard]] bool isConverged() const
    {
        const Eigen::VectorXd step = straightStep(m_here);
        const double takenOff = (m_here.derivatives * step).norm();
        const double stepLength = step.cwiseProduct(m_scale).norm();
        const double length = m_here.parameters.cwiseProduct(m_scale).norm();
        return takenOff <= kConvergedCosine * std::sqrt(m_here.sumOfSquares) || stepLength <= kConvergedStep * length;
    }

    // The sum of squares is flat around its bottom: it tells only half of the digits. Straight steps bring the others, as
    // long as each leaves a shorter one.
    void polish()
    {
        Eigen::VectorXd step = straightStep(m_here);
        for (; m_steps < kMostSteps; ++m_steps) {
            Point there = at(m_here.parameters + step);
            const double bound = m_here.sumOfSquares * (1.0 + kRoundingRise);
            if (!there.finite || there.sumOfSquares > bound) return;
            Eigen::VectorXd next = straightStep(there);
            if (!(next.cwiseProduct(m_scale).norm() < step.cwiseProduct(m_scale).norm())) return;
            m_here = std::move(there);
            step = std::move(next);
        }
    }

    [[nodiscard]] Eigen::VectorXd dampedStep() const
    {
        Eigen::MatrixXd matrix(m_observations + m_count, m_count);
        matrix << m_here.derivatives, (std::sqrt(m_damping) * m_scale).asDiagonal().toDenseMatrix();
        Eigen::VectorXd right = Eigen::VectorXd::Zero(m_observations + m_count);
        right.head(m_observations) = -m_here.residuals;
        return matrix.householderQr().solve(right);
    }

    // Moves to a point with a smaller sum of squares; false when there is none in the direction of any damping.
    [[nodiscard]] bool improve()
    {
        for (double growth = 2.0; m_damping <= kMostDamping; growth *= 2.0) {
            const Eigen::VectorXd step = dampedStep();
            Point there = at(m_here.parameters + step);
            if (there.finite && there.sumOfSquares < m_here.sumOfSquares) {
                const double promised =
                    m_here.sumOfSquares - (m_here.residuals + m_here.derivatives * step).squaredNorm();
                const double kept = (m_here.sumOfSquares - there.sumOfSquares) / promised;
                const double factor = promised > 0.0 ? 1.0 - std::pow(2.0 * std::min(kept, 1.0) - 1.0, 3) : 1.0;
                m_damping = std::max(kLeastDamping, m_damping * std::max(1.0 / 3.0, factor));
                m_here = std::move(there);
                return true;
            }
            m_damping *= growth;
        }
        return false;
    }

    [[nodiscard]] std::optional<LeastSquaresFit> solution() const
    {
        const Eigen::VectorXd lengths = m_here.derivatives.colwise().norm().transpose();
        if ((lengths.array() == 0.0).any()) return std::nullopt;
        Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(m_here.derivatives * lengths.cwiseInverse().asDiagonal());
        qr.setThreshold(kSingular);
        if (qr.rank() < m_count) return std::nullopt;
        // The covariance is that of the residuals times (R'R)^-1, so its diagonal holds the squared rows of R^-1.
        const Eigen::MatrixXd r = qr.matrixR().topRows(m_count);
        const Eigen::MatrixXd inverse =
            qr.colsPermutation()
            * r.triangularView<Eigen::Upper>().solve(Eigen::MatrixXd::Identity(m_count, m_count)).eval();
        LeastSquaresFit fit;
        fit.residualSumOfSquares = m_here.sumOfSquares;
        fit.residualSd = std::sqrt(m_here.sumOfSquares / static_cast<double>(m_observations - m_count));
        const Eigen::VectorXd errors = fit.residualSd * inverse.rowwise().norm().cwiseQuotient(lengths);
        fit.parameters.assign(m_here.parameters.begin(), m_here.parameters.end());
        fit.standardErrors.assign(errors.begin(), errors.end());
        fit.steps = m_steps;
        return fit;
    }

    const ResidualFunction& m_evaluate;
    Eigen::Index m_observations;
    Eigen::Index m_count;
    Eigen::VectorXd m_scale;
    Point m_here;
    double m_damping = kFirstDamping;
    int m_steps = 0;
};

}  // namespace

std::optional<LeastSquaresFit> leastSquares(const ResidualFunction& evaluate, std::size_t observations,
                                            const std::vector<double>& start)
{
    if (start.empty() || observations <= start.size()) return std::nullopt;
    return LeastSquaresSearch(evaluate, observations, start).run();
}

}  // namespace steelyard
