#!/usr/bin/env bash
# Restore, format check, build, test, notebooks. Ends with "N passed, N failed, N skipped".
# Usage: ./build.sh              all but the slowest tests, which are skipped; with FARMECONOMICS_SLOW=1 those too
#        ./build.sh --no-format  without the format check
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT=1

echo "== restore"
dotnet restore FarmEconomics.sln
dotnet tool restore

if [ "${1:-}" != "--no-format" ]; then
  echo "== format (rules of style and analyzers fail the build itself)"
  dotnet format whitespace . --folder --verify-no-changes
fi

echo "== build"
dotnet build FarmEconomics.sln --no-restore -c Release

echo "== test (the notebooks run among the end-to-end tests)"
results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT
status=0
# Each test program runs itself, one after another: side by side they make each other slow, and between a test program and `dotnet test`
# stands a pipe that a busy machine now and then closes before the last words are through.
for name in FarmEconomics.Tests FarmEconomics.WholeWay.Tests FarmEconomics.Recount.Tests FarmEconomics.EndToEnd.Tests; do
  "tests/$name/bin/Release/net10.0/$name" -noLogo -noColor -result-trx "$results/$name.trx" || status=$?
done

passed=0 failed=0 skipped=0
for trx in "$results"/*.trx; do
  [ -e "$trx" ] || continue
  counters=$(grep -o '<Counters [^>]*>' "$trx" | head -n 1)
  number() { printf '%s' "$counters" | sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p"; }
  total=$(number total) executed=$(number executed)
  passed=$((passed + $(number passed)))
  failed=$((failed + $(number failed)))
  skipped=$((skipped + total - executed))
done
if [ $((passed + failed)) -eq 0 ]; then
  echo "no test ran" >&2
  exit 1
fi
echo "$passed passed, $failed failed, $skipped skipped"
exit "$status"
