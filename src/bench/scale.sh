#!/usr/bin/env bash
# Import, yield and month on shops of growing size, beside the sqlite3 shell doing the same import and a group-by of the same cells.
# usage: [SALVEDGE=./salvedge] [SIZES="10000 100000 1000000"] [ROUNDS=1] [PYTHON=python3] src/bench/scale.sh
set -euo pipefail
cd "$(dirname "$0")/../.."
SALVEDGE=${SALVEDGE:-$PWD/salvedge} SIZES=${SIZES:-10000 100000 1000000} ROUNDS=${ROUNDS:-1} PYTHON=${PYTHON:-python3} work=$PWD/target/bench
mkdir -p "$work"
"$SALVEDGE" --help >/dev/null   # builds, untimed
for n in $SIZES; do
  p=$work/package-$n
  [ -f "$p/datapackage.json" ] || "$PYTHON" src/bench/make_package.py "$n" "$p" 1
  [ -f "$p.db" ] || src/bench/import_sqlite.sh "$p" "$p.db"
  rm -rf "$work/shop-$n"; mkdir "$work/shop-$n"
  "$SALVEDGE" --shop "$work/shop-$n" init >/dev/null
  echo "== $n sets"
  printf '%s\t%s\n' "sqlite3 import" "src/bench/import_sqlite.sh $p $work/again.db" "salvedge import" "$SALVEDGE --shop $work/shop-$n import $p" | "$PYTHON" src/bench/race.py 1 900
  printf '%s\t%s\n' \
    "sqlite3 group by" "sqlite3 $p.db '.read src/bench/group_by.sql'" \
    "salvedge yield" "$SALVEDGE --shop $work/shop-$n yield --by family,fault,fix --format json" \
    "salvedge month" "$SALVEDGE --shop $work/shop-$n month 2022-03" | "$PYTHON" src/bench/race.py "$ROUNDS" 900
done
