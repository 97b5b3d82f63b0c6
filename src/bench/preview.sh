#!/usr/bin/env bash
# Times `preview` on a sheet of 100,000 rows and 12 columns beside a bare event reader and openpyxl, by turns; prints medians and ratios.
# usage: [SALVEDGE="command line"] [ROWS=100000] [ROUNDS=3] [PYTHON=python3] src/bench/preview.sh        exit 1 = a target is missed
# Targets: CPU at most 1.8 times the event reader's, wall time at most 0.9 of openpyxl's, peak memory at most 400 MiB.
set -euo pipefail
cd "$(dirname "$0")/../.."
ROWS=${ROWS:-100000} ROUNDS=${ROUNDS:-3} PYTHON=${PYTHON:-python3} work=$PWD/target/bench
mkdir -p "$work/classes"
if [ -z "${SALVEDGE:-}" ]; then
  [ -d target/lib ] || mvn -B -q -DskipTests package
  if [ -x ./salvedge ]; then SALVEDGE=$PWD/salvedge; else SALVEDGE="java -jar $PWD/target/salvedge.jar"; fi
fi
[ -d target/lib ] || mvn -B -q dependency:copy-dependencies -DincludeScope=runtime -DoutputDirectory=target/lib
javac -d "$work/classes" -cp 'target/lib/*' src/bench/java/*.java
cp="$work/classes:$PWD/target/lib/*"
sheet=$work/list-$ROWS.xlsx
[ -f "$sheet" ] || java -Xmx1g -cp "$cp" MakeSheet "$sheet" "$ROWS"
{ $SALVEDGE preview "$sheet" --format json || [ $? = 1 ]; } >"$work/preview-answer.json"   # untimed: is the answer right?
"$PYTHON" -c 'import json, sys; got = len(json.load(open(sys.argv[1]))["sets"]); sys.exit(0 if got == int(sys.argv[2]) else f"preview found {got} sets of {sys.argv[2]}")' "$work/preview-answer.json" "$ROWS"
export RACE_RESULTS=$work/preview.json
printf '%s\t%s\n' \
  "POI event reader" "java -cp $cp EventReader $sheet" \
  "salvedge preview" "$SALVEDGE preview $sheet --format json" \
  "openpyxl" "$PYTHON src/bench/read_openpyxl.py $sheet" |
  "$PYTHON" src/bench/race.py "$ROUNDS" 300
"$PYTHON" - <<'PY'
import json, os, sys
r = json.load(open(os.environ["RACE_RESULTS"]))
tool, floor, peer = r["salvedge preview"], r["POI event reader"], r["openpyxl"]
checks = [("CPU to the event reader", tool[1] / floor[1], 1.8), ("wall to openpyxl", tool[0] / peer[0], 0.9), ("peak memory, MiB", tool[2], 400)]
for name, got, most in checks:
    print(f"{name:26}{got:8.2f}  at most {most:g}  {'met' if got <= most else 'MISSED'}")
sys.exit(any(got > most for _, got, most in checks))
PY
