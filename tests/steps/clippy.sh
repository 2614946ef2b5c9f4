#!/usr/bin/env bash
# Clippy over everything, and in the same reading of the source: the checked queries kept in .sqlx are those that the
# migrations and the source give today, none stale, missing or left over.
set -euo pipefail
fresh=$OUT/sqlx
mkdir -p "$fresh"
cat migrations/*.sql | sqlite3 "$OUT/queries.db"
# A change of schema alone rebuilds nothing.
touch src/lib.rs
DATABASE_URL=sqlite:$OUT/queries.db SQLX_OFFLINE_DIR=$fresh cargo clippy --locked --all-targets -- -D warnings
told=$(diff -rq "$fresh" .sqlx) || { printf 'FAIL .sqlx is not what the source asks for (the fresh one lies in %s)\n%s\n' "$fresh" "$told"; exit 1; }
