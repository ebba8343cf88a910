# The statsmodels side of local_level_benchmark. The same input as local_level_benchmark.R; out, a line a series: seconds, the
# least of five rounds, and the log likelihood. It is so much slower that it does a tenth of the evaluations; the seconds are
# for all. Says "missing" where statsmodels isn't installed.
import sys
import time

try:
    import numpy as np
    from statsmodels.tsa.statespace.structural import UnobservedComponents
except ImportError:
    print("missing")
    sys.exit(0)


def seconds(count, work):
    start = time.process_time()
    for _ in range(count):
        work()
    return time.process_time() - start


v = np.array([float(word) for word in sys.stdin.read().replace("NA", "nan").split()])
(q, h, p), at = v[:3], 3
while at < len(v):
    count, n = int(v[at]), int(v[at + 1])
    y, at = v[at + 2 : at + 2 + n], at + 2 + n
    model = UnobservedComponents(y, "llevel")
    model.update([h, q])
    model.ssm.initialize_known(np.array([0.0]), np.array([[p]]))
    model.ssm.loglikelihood_burn = 0
    tenth = max(1, count // 10)
    least = min(seconds(tenth, model.ssm.loglike) for _ in range(5))
    print(least * count / tenth, model.ssm.loglike())
