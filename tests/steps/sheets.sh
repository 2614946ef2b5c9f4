#!/usr/bin/env bash
# Sheets as the program prints them, looked at by other people's readers of PDF.
set -euo pipefail
samples=$OUT/samples
mkdir -p "$samples"
# Cargo's own count would be added to that of the sheets.
KINSHEAF_SAMPLES=$samples cargo test --locked --lib samples 2>&1 | sed 's/^/cargo: /'
"$KIT/python/bin/python" tests/outside/sheets.py "$samples"
