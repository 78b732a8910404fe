"""Writes band-levels.csv: mean square per third octave of a known noise, by scipy filters on all of it.
Run: python3 band-levels.py"""
import numpy as np
import scipy
from scipy import signal

ORDER = 8  # steep: nearly the ideal band, and wider than it for noise only by
NOISE_WIDTH = (np.pi / (2 * ORDER)) / np.sin(np.pi / (2 * ORDER))

with open("band-levels.csv", "w") as out:
    out.write(f"# dBFS (plain RMS) per band; scipy {scipy.__version__}, butter(8, band-pass) at twice the rate of interest; made by band-levels.py\n")
    out.write("sample_rate_hz,index_x,level_dbfs\n")
    for rate in (44100, 48000):
        n = rate * 30
        state = 1
        white = np.empty(n)
        for i in range(n):
            state = (1664525 * state + 1013904223) % 2**32  # Numerical Recipes' quick generator
            white[i] = state / 2**31 - 1
        sound = np.float32(0.5 * signal.lfilter([0.1], [1, -0.9], white)).astype(float)
        doubled = signal.resample_poly(sound, 2, 1, window=("kaiser", 12.0))  # so that the bilinear transform bends no band
        for x in range(-13, 13):
            edges = [1000 * 10 ** ((x - 0.5) / 10), 1000 * 10 ** ((x + 0.5) / 10)]
            band = signal.sosfilt(signal.butter(ORDER, edges, "bandpass", fs=2 * rate, output="sos"), doubled)
            out.write(f"{rate},{x},{10 * np.log10(np.mean(band ** 2) / NOISE_WIDTH):.4f}\n")
