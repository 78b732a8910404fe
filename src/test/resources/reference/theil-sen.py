# Makes theil-sen.csv: python3 theil-sen.py > theil-sen.csv
# Series come from a linear congruential generator so that the test makes the same ones.
import numpy as np, scipy
from scipy.stats import theilslopes

def series(seed, n, slope, ties):
    x = seed
    def uniform():
        nonlocal x
        x = (1103515245 * x + 12345) % 2147483648
        return x / 2147483648
    days, values, day = [], [], 0.0
    for _ in range(n):
        day += 0 if ties and uniform() < 0.3 else 1 + 3 * uniform()
        noise = uniform() + uniform() + uniform() - 1.5
        value = slope * day + 2 * noise
        days.append(day)
        values.append(round(value) if ties else value)
    return np.array(days), np.array(values, dtype=float)

print("# scipy %s theilslopes(y, x, alpha=confidence): slope and its interval per day" % scipy.__version__)
print("seed,n,slope,ties,confidence,medslope,low,high")
for seed, n, slope, ties, confidence in [(1, 8, 0.0, False, 0.95), (2, 12, -0.1, False, 0.99), (3, 40, 0.05, False, 0.99), (4, 25, 0.2, True, 0.99), (5, 100, -0.01, True, 0.95), (6, 299, 0.003, False, 0.995)]:
    x, y = series(seed, n, slope, ties)
    r = theilslopes(y, x, alpha=confidence)
    print("%d,%d,%r,%s,%r,%r,%r,%r" % (seed, n, slope, str(ties).lower(), confidence, float(r[0]), float(r[2]), float(r[3])))
