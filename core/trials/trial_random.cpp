#include "core/trials/trial_random.h"

#include "core/numerics/distribution.h"

namespace steelyard {

double TrialRandom::normal()
{
    return normalQuantile(uniform());
}

}  // namespace steelyard
