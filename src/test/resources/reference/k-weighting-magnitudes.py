"""Magnitudes of the two K-weighting stages at seven sample rates, from the coefficients of k-weighting.csv.

Run in this folder: python3 k-weighting-magnitudes.py > k-weighting-magnitudes.csv   (made with scipy 1.17.1)
The 48 kHz figures agree with a second computation of the same response to the four decimals that one gives.
"""
import csv
import numpy as np
import scipy
from scipy.signal import freqz

FREQUENCIES = [20, 31.5, 38.1355, 50, 63, 100, 125, 200, 250, 500, 997, 1000, 1500, 1682, 2000, 3000, 4000, 6300,
               8000, 10000, 12500, 16000, 20000]

print(f"# dB against frequency in Hz; scipy.signal.freqz of scipy {scipy.__version__} on the coefficients of k-weighting.csv")
print("fs_hz,frequency_hz,stage1_db,stage2_db,k_db")
with open("k-weighting.csv") as lines:
    for row in csv.DictReader(line for line in lines if not line.startswith("#")):
        fs = int(row["fs_hz"])
        frequencies = [f for f in FREQUENCIES if f < fs / 2]
        one = freqz([float(row[k]) for k in ("s1_b0", "s1_b1", "s1_b2")],
                    [1, float(row["s1_a1"]), float(row["s1_a2"])], worN=frequencies, fs=fs)[1]
        two = freqz([1, -2, 1], [1, float(row["s2_a1"]), float(row["s2_a2"])], worN=frequencies, fs=fs)[1]
        for f, a, b in zip(frequencies, 20 * np.log10(abs(one)), 20 * np.log10(abs(two))):
            print(f"{fs},{f},{a:.6f},{b:.6f},{a + b:.6f}")
