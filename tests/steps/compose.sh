#!/usr/bin/env bash
# docker-compose.yml and what stands in it, read by Compose, hadolint, Caddy and our own program. No image is built: that
# needs an engine.
set -euo pipefail
python3 tests/outside/compose.py "$KIT/compose" "$TARGET/debug/kinsheaf"
