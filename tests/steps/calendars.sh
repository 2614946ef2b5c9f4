#!/usr/bin/env bash
# Series made at random, written by us as calendars, read and expanded by PyPI icalendar and recurring-ical-events.
set -euo pipefail
calendars=$OUT/calendars.json
# Cargo's own count would be added to that of the series.
KINSHEAF_CALENDARS=$calendars cargo test --locked --lib calendar::random 2>&1 | sed 's/^/cargo: /'
"$KIT/python/bin/python" tests/outside/calendars.py "$calendars"
