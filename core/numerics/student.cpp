#include "core/numerics/student.h"

#include <boost/math/distributions/students_t.hpp>

namespace steelyard {

double studentCdf(double t, double freedom)
{
    return boost::math::cdf(boost::math::students_t(freedom), t);
}

}  // namespace steelyard
