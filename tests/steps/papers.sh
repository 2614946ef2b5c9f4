#!/usr/bin/env bash
# Papers made with noise and a little crooked, read by tesseract, their kinds proposed; then scikit-learn over the counts.
# Then letters photographed twice, told from others that look much like them.
#
#   papers.sh            a few of each kind
#   papers.sh 60 140 60  so many confirmed, so many held out, so many letters twice
set -euo pipefail
papers=$OUT/papers
rm -rf "$papers"
"$KIT/python/bin/python" tests/outside/papers_made.py "$papers" --confirmed "${1:-12}" --held-out "${2:-12}"
# Cargo's own count would be added to that of the logarithms.
KINSHEAF_PAPERS=$papers KINSHEAF_KINDS=$OUT/kinds.json \
  cargo test --locked --lib papers_that_are_made -- --ignored --nocapture 2>&1 | sed 's/^/cargo: /'
"$KIT/python/bin/python" tests/outside/kinds.py "$OUT/kinds.json"

alike=$OUT/alike
rm -rf "$alike"
"$KIT/python/bin/python" tests/outside/papers_alike.py "$alike" --letters "${3:-12}"
KINSHEAF_ALIKE=$alike \
  cargo test --locked --lib letters_that_are_photographed -- --ignored --nocapture 2>&1 | sed 's/^/cargo: /'
