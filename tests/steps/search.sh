#!/usr/bin/env bash
# The search beside SQLite asked by hand, over a few hundred pages; all 20,000 are in tests/long.
set -euo pipefail
python3 tests/outside/search.py "$TARGET/debug/kinsheaf" 400
