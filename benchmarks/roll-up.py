"""pandas' roll-up of the same files as the benchmark's roll-up verb."""
import sys
import time

import pandas

start = time.perf_counter()
sales = pandas.read_csv(sys.argv[1] + "/sales.csv", usecols=["date", "crop", "quantity", "amount"])
harvests = pandas.read_csv(sys.argv[1] + "/harvests.csv", usecols=["date", "crop", "quantity"])
sales["year"] = sales["date"].str[:4]
harvests["year"] = harvests["date"].str[:4]
left = sales.groupby(["crop", "year"])[["quantity", "amount"]].sum()
picked = harvests.groupby(["crop", "year"])[["quantity"]].sum().rename(columns={"quantity": "picked"})
joined = left.join(picked, how="inner")
print(f"seconds={time.perf_counter() - start:.3f} cpu={time.process_time():.2f} sales={joined['amount'].sum():.2f} groups={len(joined)} pandas={pandas.__version__}")
