#!/usr/bin/env bash
# Every script can be read by its language: bash (and shellcheck for its traps), Node, Python.
set -u
failed=0

look() { # COMMAND .. FILE
  "$@" || { echo "FAIL $*"; failed=1; }
}

while read -r file; do
  case $file in
    *.mjs) look node --check "$file" ;;
    *.py) look python3 -c 'import ast, sys; ast.parse(open(sys.argv[1]).read(), sys.argv[1])' "$file" ;;
    *) look bash -n "$file" && look shellcheck --severity=warning --shell=bash "$file" ;;
  esac
done < <(find .ci/run tests/run tests/long tests/steps tests/browser tests/outside -type f ! -path '*/__pycache__/*')
exit "$failed"
