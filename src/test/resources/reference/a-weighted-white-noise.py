"""Level of white noise of total power 1 at a sample rate, from 20 Hz to 20 kHz or half the rate, plain and A-weighted.

Numerical integration of the analytic curve of IEC 61672-1:2013 Annex E. Made with scipy 1.17.1:
python3 a-weighted-white-noise.py > a-weighted-white-noise.csv
"""
import numpy as np
from scipy.integrate import quad

F1, F2, F3, F4 = 20.598997057618, 107.652648643046, 737.862230736290, 12194.217147998012


def power(f):
    r = F4**2 * f**4 / ((f * f + F1 * F1) * np.sqrt((f * f + F2 * F2) * (f * f + F3 * F3)) * (f * f + F4 * F4))
    return r * r


print("# units: Hz and dB; white noise of total power 1, integrated from 20 Hz to 20 kHz or half the sample rate; a-weighted-white-noise.py")
print("sample_rate_hz,plain_db,a_weighted_db")
for rate in (8000, 16000, 44100, 48000, 96000, 192000):
    top = min(20000, rate / 2)
    weighted = quad(lambda f: power(f) / power(1000), 20, top, limit=500, epsabs=0, epsrel=1e-10)[0] / (rate / 2)
    print(f"{rate},{10 * np.log10((top - 20) / (rate / 2)):.4f},{10 * np.log10(weighted):.4f}")
