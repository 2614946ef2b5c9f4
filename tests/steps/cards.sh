#!/usr/bin/env bash
# Contacts as vCards, as the program writes them, read by other people's programs.
set -euo pipefail
cards=$OUT/cards
mkdir -p "$cards"
# Cargo's own count would be added to that of the cards.
KINSHEAF_CARDS=$cards cargo test --locked --lib contacts::card 2>&1 | sed 's/^/cargo: /'
"$KIT/python/bin/python" tests/outside/vcards.py "$cards" "$KIT/npm"
