"""numpy drawing the same seasons as the benchmark's draws verb: forty crops, triangular price and yield joined by a Gaussian copula and shared weather."""
import math
import sys
import time

import numpy

draws, crops = int(sys.argv[1]), 40


def rank(x):
    """The normal distribution function; numpy has none, so erf is Abramowitz and Stegun's 7.1.26 (error below 1.5e-7)."""
    z = numpy.abs(x) / math.sqrt(2.0)
    t = 1.0 / (1.0 + 0.3275911 * z)
    erf = 1.0 - t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) * numpy.exp(-z * z)
    return 0.5 * (1.0 + numpy.sign(x) * erf)


def triangular(u, low, mode, high):
    cut = (mode - low) / (high - low)
    return numpy.where(u < cut, low + numpy.sqrt(u * (high - low) * (mode - low)), high - numpy.sqrt((1.0 - u) * (high - low) * (high - mode)))


def run(draws):
    random = numpy.random.default_rng(2025)
    season = random.standard_normal(draws)
    shared = math.sqrt(0.25)
    farm = numpy.zeros(draws)
    for crop in range(crops):
        grown = shared * season + math.sqrt(1.0 - shared * shared) * random.standard_normal(draws)
        sold = -0.3 * grown + math.sqrt(1.0 - 0.3 * 0.3) * random.standard_normal(draws)
        farm += triangular(rank(sold), 0.7, 1.0, 1.2) * triangular(rank(grown), 0.6, 1.0, 1.2) * (4000.0 + 100.0 * crop)
    return farm


run(1000)
start = time.perf_counter()
farm = run(draws)
mean = farm.mean()
seconds = time.perf_counter() - start
print(f"seconds={seconds:.3f} cpu={time.process_time():.2f} mean={mean:.2f} draws_per_second={draws * crops / seconds:.0f} numpy={numpy.__version__}")
