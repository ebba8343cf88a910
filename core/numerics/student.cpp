#include "core/numerics/student.h"

#include <boost/math/distributions/students_t.hpp>

namespace steelyard {

double studentCdf(double t, double freedom)
{
    // Without the detour through long double, which takes ten times as long.
    using Plain = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return boost::math::cdf(boost::math::students_t_distribution<double, Plain>(freedom), t);
}

}  // namespace steelyard
