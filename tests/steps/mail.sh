#!/usr/bin/env bash
# Reminders that are due, sent by our program to other people's mail servers, with kills between.
#   mail.sh [MEMBERSxMEDICINES]   300 reminders where nothing else is said
set -euo pipefail
many=${1:-10x30}
folder=$OUT/reminders
rm -rf "$folder"
mkdir -p "$folder"
# Cargo's own count would be added to that of the checks.
KINSHEAF_REMINDERS=$folder KINSHEAF_REMINDERS_MANY=$many \
  cargo test --locked --test suite a_folder_with_reminders -- --nocapture 2>&1 | sed 's/^/cargo: /'
echo $((${many%x*} * ${many#*x})) >"$folder/count"
"$KIT/python/bin/python" tests/outside/mail.py "$TARGET/debug/kinsheaf" "$folder" "$KIT/npm"
