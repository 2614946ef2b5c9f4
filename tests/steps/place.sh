# Where the checks find and put things; read by tests/run and tests/long from the top of the project.
#   $TARGET  cargo's folder, the same for every step     $KIT  packages the checks need, kept between runs
#   $OUT     logs, pages and papers of the last run

# No setting of the one who calls may decide a check; only where pictures go is hers to say.
for name in "${!KINSHEAF_@}" DATABASE_URL SQLX_OFFLINE SQLX_OFFLINE_DIR; do
  [ "$name" = KINSHEAF_SHOTS ] || unset "$name"
done

TARGET=${CARGO_TARGET_DIR:-target}
[ "${TARGET#/}" != "$TARGET" ] || TARGET=$PWD/$TARGET
export TARGET KIT=$TARGET/test-kit OUT=$TARGET/test-out
# A cargo-deny that the first step installs is found by a later one.
export PATH=$PATH:${CARGO_HOME:-$HOME/.cargo}/bin
