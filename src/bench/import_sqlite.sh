#!/usr/bin/env bash
# A history package into SQLite by its own shell: types, keys, foreign keys, one transaction, synchronous = FULL. usage: import_sqlite.sh PACKAGE DB
set -euo pipefail
package=$1 db=$2
rm -f "$db" "$db-wal" "$db-shm"
key() { case $1 in lots) echo '"lot"' ;; units) echo '"unit"' ;; attempts) echo '"attempt"' ;; *) echo '"unit", "on"' ;; esac; }
type_of() { case $1 in attempt | line | passed | arrived | restocked) echo INTEGER ;; price | premium | freight | inches | *_minutes | minutes | *_cost | cost | gross | fees | shipping | refund) echo REAL ;; *) echo TEXT ;; esac; }
{
  echo "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA temp_store=MEMORY; BEGIN;"
  echo ".mode csv"
  for t in lots units attempts exits comebacks; do
    IFS=, read -ra columns < <(head -1 "$package/$t.csv" | tr -d '\r')
    typed= raw= values=
    for c in "${columns[@]}"; do
      typed+="\"$c\" $(type_of "$c"), " raw+="\"$c\" TEXT, "
      case $c in passed | arrived | restocked) values+="CASE \"$c\" WHEN 'true' THEN 1 WHEN 'false' THEN 0 END, " ;; *) values+="nullif(\"$c\", ''), " ;; esac
    done
    refers=; [ "$t" = units ] && refers=', FOREIGN KEY ("lot") REFERENCES lots'; case $t in attempts | exits | comebacks) refers=', FOREIGN KEY ("unit") REFERENCES units' ;; esac
    echo "CREATE TABLE $t (${typed}PRIMARY KEY ($(key "$t"))$refers);"
    echo "CREATE TEMP TABLE raw_$t (${raw%, });"
    echo ".import --skip 1 --schema temp $package/$t.csv raw_$t"
    echo "INSERT INTO $t SELECT ${values%, } FROM raw_$t; DROP TABLE raw_$t;"
  done
  echo "CREATE INDEX attempts_unit ON attempts (unit); COMMIT; PRAGMA wal_checkpoint(TRUNCATE);"
} | sqlite3 -bail "$db" >/dev/null
