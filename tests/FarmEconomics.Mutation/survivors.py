"""Tells the mutation tester to try only what survived an earlier run: its spans, file by file, as --mutate has them."""

import json
import sys

report, room = sys.argv[1:]
with open(report, encoding="utf-8") as file:
    files = json.load(file)["files"]
for name, told in files.items():
    if f"/{room}/" not in name.replace("\\", "/"):
        continue
    starts = [0]
    for line in told["source"].splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    place = lambda at: starts[at["line"] - 1] + at["column"] - 1
    spans = sorted({
        (place(one["location"]["start"]), place(one["location"]["end"]))
        for one in told["mutants"]
        if one["status"] in ("Survived", "NoCoverage")
    })
    if spans:
        path = room + name.replace("\\", "/").split(f"/{room}", 1)[1]
        print("--mutate")
        print(path + "".join(f"{{{start}..{end}}}" for start, end in spans))
