#!/usr/bin/env bash
# Schedules of medicines made at random, laid out by us and by python-dateutil.
set -euo pipefail
schedules=$OUT/schedules.json
# Cargo's own count would be added to that of the schedules.
KINSHEAF_SCHEDULES=$schedules cargo test --locked --lib schedule::random 2>&1 | sed 's/^/cargo: /'
"$KIT/python/bin/python" tests/outside/recurrences.py "$schedules"
