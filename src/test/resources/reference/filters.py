"""Writes filters.csv: responses of equaliser stages in dB, by scipy. Run: python3 filters.py

Shelves, peaks and notches: the cookbook's ANALOGUE prototypes, discretised by scipy.signal.bilinear_zpk with the corner
pre-warped, so nothing of the digital formulas is used. Pass filters: scipy.signal.butter.
"""
import numpy as np
import scipy
from scipy import signal


def prototype(kind, gain_db, q):
    a = 10 ** (gain_db / 40)
    r = np.sqrt(a)
    return {
        "PEAK": ([1, a / q, 1], [1, 1 / (a * q), 1]),
        "NOTCH": ([1, 0, 1], [1, 1 / q, 1]),
        "LOW_SHELF": ([a, a * r / q, a * a], [a, r / q, 1]),
        "HIGH_SHELF": ([a * a, a * r / q, a], [1, r / q, a]),
    }[kind]


def response(kind, f0, q, gain_db, order, fs, hz):
    if kind in ("HIGH_PASS", "LOW_PASS"):
        sos = signal.butter(order, f0, "highpass" if kind == "HIGH_PASS" else "lowpass", fs=fs, output="sos")
        return signal.sosfreqz(sos, hz, fs=fs)[1]
    b, a = prototype(kind, gain_db, q)
    warped = 1 / np.tan(np.pi * f0 / fs)  # s -> warped * (z-1)/(z+1) puts the corner exactly at f0
    bz, az = signal.bilinear(b, a, fs=warped / 2)
    return signal.freqz(bz, az, hz, fs=fs)[1]


with open("filters.csv", "w") as out:
    out.write(f"# response in dB, scipy {scipy.__version__}; made by filters.py\n")
    out.write("kind,frequency_hz,q,gain_db,order,sample_rate_hz,at_hz,response_db\n")
    cases = [(k, f0, q, g, 2) for k in ("PEAK", "LOW_SHELF", "HIGH_SHELF") for f0 in (80, 420, 2500, 9000)
             for q in (0.5, 0.7071067811865476, 2, 6) for g in (-12, -3, 4, 10)]
    cases += [("NOTCH", f0, q, 0, 2) for f0 in (110, 440, 3000) for q in (1, 10, 30)]
    cases += [(k, f0, 0.7071067811865476, 0, n) for k in ("HIGH_PASS", "LOW_PASS") for f0 in (40, 100, 5000) for n in (1, 2, 3, 4)]
    for kind, f0, q, g, n in cases:
        for fs in (44100, 48000, 96000):
            hz = np.array([30, 100, 430, 1000, 2700, 8000, 15000])
            for f, h in zip(hz, response(kind, f0, q, g, n, fs, hz)):
                out.write(f"{kind},{f0},{q},{g},{n},{fs},{f},{20 * np.log10(max(abs(h), 1e-12)):.9f}\n")
