#!/usr/bin/env bash
# docker-compose.yml and the Dockerfile in it, read by Compose and hadolint. Nothing is built: that needs an engine.
set -euo pipefail
python3 tests/outside/compose.py "$KIT/compose"
