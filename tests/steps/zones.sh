#!/usr/bin/env bash
# The wall times that the zone tests read are what Python's zoneinfo says today. The first line names versions and may differ.
set -euo pipefail
python3 tests/outside/zone_cases.py | grep -v '^#' >"$OUT/zone_cases.csv"
grep -v '^#' tests/suite/fixtures/zone_cases.csv | diff - "$OUT/zone_cases.csv"
echo "$(wc -l <"$OUT/zone_cases.csv") lines agree"
