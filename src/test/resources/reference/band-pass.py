"""Writes band-pass.csv: third-octave Butterworth band-passes of scipy, response in dB. Run: python3 band-pass.py"""
import numpy as np
import scipy
from scipy import signal

with open("band-pass.csv", "w") as out:
    out.write(f"# response in dB of scipy.signal.butter(3, edges, 'bandpass', output='sos'), scipy {scipy.__version__}; made by band-pass.py\n")
    out.write("sample_rate_hz,lower_hz,upper_hz,frequency_hz,response_db\n")
    for rate, index in [(1500, -13), (1500, -10), (1500, -7), (1378.125, -12), (2000, -6), (48000, 0)]:
        centre = 1000 * 10 ** (index / 10)
        lower, upper = 1000 * 10 ** ((index - 0.5) / 10), 1000 * 10 ** ((index + 0.5) / 10)
        sos = signal.butter(3, [lower, upper], "bandpass", fs=rate, output="sos")
        hz = np.array([h for h in centre * np.array([0.25, 0.5, 0.8, 0.891251, 0.95, 1.0, 1.05, 1.122018, 1.25, 2, 3]) if h < rate / 2])
        _, h = signal.sosfreqz(sos, hz, fs=rate)
        for f, db in zip(hz, 20 * np.log10(abs(h))):
            out.write(f"{rate},{lower!r},{upper!r},{f!r},{db:.9f}\n".replace("np.float64(", "").replace(")", ""))
