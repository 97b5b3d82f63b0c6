#!/usr/bin/env python3
"""Runs `preview --format json` on every file of a folder and compares with the readings expected. usage: judge.py [-v] FOLDER -- COMMAND ...
Sets are matched by sheet, line and model; text without regard to case, white space and Unicode composition; inches to 0.05, prices to half a cent."""

import json
import subprocess
import sys
import unicodedata
from collections import Counter
from pathlib import Path

FIELDS = ["maker", "model", "inches", "serial", "claimed", "asking"]


def flat(v):
    return " ".join(unicodedata.normalize("NFC", str(v)).split()).casefold()


def options(v):
    return v["any_of"] if isinstance(v, dict) else [v]


def same(field, got, wanted):
    for w in options(wanted):
        if w is None or got in (None, ""):
            if w is None and got in (None, ""):
                return True
        elif field in ("inches", "asking"):
            if abs(float(got) - float(w)) <= (0.0501 if field == "inches" else 0.00501):
                return True
        elif field == "claimed_text":
            if flat(w) in flat(got):
                return True
        elif flat(got) == flat(w):
            return True
    return False


def closeness(got, want):
    return sum(same(f, got.get(f), want.get(f)) for f in FIELDS) + 3 * same("model", got.get("model"), want.get("model"))


def pair(got, wanted, shift):
    """Pairs of (expected, found or None), and what was found besides."""
    left = list(got)
    pairs = []
    for want in wanted:
        near = [g for g in left if g.get("line") == want["line"] + shift and ("sheet" not in want or g.get("sheet") in (None, want["sheet"]))]
        best = max(near, key=lambda g: closeness(g, want), default=None)
        if best is not None:
            left.remove(best)
        pairs.append((want, best))
    return pairs, left


def judge(path, truth, command, score, say):
    try:
        run = subprocess.run([*command, "preview", str(path), "--format", "json"], capture_output=True, timeout=60, stdin=subprocess.DEVNULL)
    except subprocess.TimeoutExpired:
        score["status", False] += 1
        return say("no end after 60 s")
    good = run.returncode in truth["exit"]
    score["status", good] += 1
    if not good:
        say(f"status {run.returncode}, expected {truth['exit']}: {run.stderr.decode(errors='replace').strip()[:300]}")
    if run.returncode == 3 and 3 in truth["exit"]:
        if not run.stderr.strip() or path.name.encode() not in run.stderr:
            say("refused without naming the file")
        return
    try:
        answer = json.loads(run.stdout, parse_constant=lambda c: sys.exit(f"{path}: {c} is no JSON"))
    except ValueError:
        answer = {}
        say("no JSON on standard output")
    shifts = range(truth.get("line_shift", 0) + 1)
    pairs, extra = min((pair(answer.get("sets", []), truth["sets"], s) for s in shifts), key=lambda p: sum(g is None for _, g in p[0]))
    for want, got in pairs:
        if got is None:
            if not want.get("optional"):
                score["sets found", False] += 1
                say(f"no set for {want}")
            continue
        score["sets found", True] += 1
        for f in FIELDS + ["claimed_text"]:
            if f in want:
                ok = same(f, got.get(f), want[f]) or f == "claimed_text" and want[f] is None
                score[f, ok] += 1
                if not ok:
                    say(f"line {want['line']}: {f} is {got.get(f)!r}, expected {want[f]!r}")
    score["sets real", True] += len(pairs)
    score["sets real", False] += len(extra)
    for g in extra:
        say(f"a set that is none: {g}")
    rows = {(p.get("sheet"), p.get("row")) for p in answer.get("problems", [])}

    def reported(e):
        return any(r == e["row"] + s and ("sheet" not in e or sheet in (None, e["sheet"])) for sheet, r in rows for s in shifts)

    for e in truth["problems"]["must"]:
        score["problems told", reported(e)] += 1
        if not reported(e):
            say(f"row {e['row']} is not reported ({e['why']})")
    told = truth["problems"]["must"] + truth["problems"]["may"]
    for sheet, r in sorted(rows, key=str):
        alarm = not any(r == e["row"] + s and ("sheet" not in e or sheet in (None, e["sheet"])) for e in told for s in shifts)
        score["problems true", not alarm] += 1
        if alarm:
            say(f"false alarm: {[p for p in answer['problems'] if p.get('row') == r][:1]}")
    if bool(answer.get("problems")) != (run.returncode == 1):
        say(f"status {run.returncode} with {len(answer.get('problems', []))} problems")
    for key in ("sheet", "header_row"):
        if key in truth and truth["sets"]:
            ok = any(str(answer.get(key)) == str(w) or key == "header_row" and answer.get(key) in [w + s for s in shifts] for w in truth[key])
            score[key, ok] += 1
            if not ok:
                say(f"{key} is {answer.get(key)!r}, expected {truth[key]}")
    for f, names in truth.get("columns", {}).items():
        if truth["sets"]:
            got = answer.get("columns", {}).get(f)
            ok = any((got is None and n is None) or (got is not None and n is not None and flat(got) == flat(n)) for n in names)
            score["columns", ok] += 1
            if not ok:
                say(f"column of {f} is {got!r}, expected {names}")


def main(*args):
    cut = args.index("--")
    folders, command = [a for a in args[:cut] if a != "-v"], args[cut + 1:]
    for folder in folders:
        score, lost = Counter(), []
        for j in sorted(Path(folder).glob("*.expected.json")):
            truth = json.loads(j.read_text(encoding="utf-8"))
            said = []
            judge(j.parent / truth["file"], truth, command, score, said.append)
            if said:
                lost.append(truth["file"])
                if "-v" in args:
                    print(f"{truth['file']}:", *said[:12], sep="\n   ")
        print(f"{folder}: {len(lost)} files with a difference")
        for key in dict.fromkeys(k for k, _ in score):
            good, bad = score[key, True], score[key, False]
            print(f"   {key:16}{good:6} of {good + bad:6}  {100 * good / (good + bad):6.1f} %")


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
