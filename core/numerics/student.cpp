#include "core/numerics/student.h"

#include <boost/math/distributions/students_t.hpp>

namespace steelyard {
namespace {

// Without the detour through long double, which takes ten times as long.
using PlainPolicy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using PlainStudent = boost::math::students_t_distribution<double, PlainPolicy>;

}  // namespace

double studentCdf(double t, double freedom)
{
    return boost::math::cdf(PlainStudent(freedom), t);
}

double studentQuantile(double probability, double freedom)
{
    return boost::math::quantile(PlainStudent(freedom), probability);
}

}  // namespace steelyard
