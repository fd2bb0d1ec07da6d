# The plain balance of soil water (FAO-56, Eq. 84 to 88) of as many sowings over as many days, in numpy: no list, no money, no limit.
# Usage: balance.py SOWINGS DAYS
import sys
import time

import numpy

sowings, days = int(sys.argv[1]), int(sys.argv[2])
random = numpy.random.default_rng(20251125)
need = random.uniform(2, 6, (days, sowings))
put = numpy.where(random.uniform(size=(days, sowings)) < 0.2, 15.0, 0.0)
total = random.uniform(30, 90, sowings)
best = float("inf")
for _ in range(5):
    start = time.perf_counter()
    depletion = numpy.zeros(sowings)
    missed = 0.0
    for day in range(days):
        stress = numpy.clip((total - depletion) / (0.6 * total), 0, 1)
        used = numpy.minimum(stress * need[day], numpy.maximum(0, total - depletion + put[day]))
        missed += float((need[day] - used).sum())
        depletion = numpy.maximum(0, depletion + used - put[day])
    best = min(best, time.perf_counter() - start)
print(f"seconds={best:.3f} missed={missed:.1f}")
