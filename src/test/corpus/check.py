#!/usr/bin/env python3
"""Opens every file with a program other than its writer and looks for what is expected: each set's maker, model and serial in the row named,
each row to be reported or passed over within the sheet. usage: check.py [-v] FOLDER   (-v prints the grids)"""

import csv
import io
import json
import subprocess
import sys
import tempfile
import unicodedata
from pathlib import Path


def office(path, kind):
    """Sheets as LibreOffice shows them: display formats applied."""
    with tempfile.TemporaryDirectory() as tmp:
        source = Path(tmp) / f"book.{kind}"
        source.write_bytes(path.read_bytes())
        subprocess.run(["soffice", "--headless", f"-env:UserInstallation=file://{tempfile.gettempdir()}/corpus-office", *(["--infilter=HTML (StarCalc)"] if kind == "html" else []), "--convert-to",
                        'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true,false,false,-1', "--outdir", tmp + "/out", str(source)],
                       check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        return {p.stem[len("book-"):]: list(csv.reader(p.open(encoding="utf-8", newline=""))) for p in sorted(Path(tmp, "out").glob("*.csv"))}


def python_book(path):
    import openpyxl

    with open(path, "rb") as f:
        wb = openpyxl.load_workbook(f)
    return {ws.title: [[("" if v is None else str(v)) for v in row] for row in ws.iter_rows(values_only=True)] for ws in wb}


def delimited(data):
    for bom, enc in ((b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"), (b"\xef\xbb\xbf", "utf-8-sig")):
        if data.startswith(bom):
            body = data.decode(enc)
            break
    else:
        try:
            body = data.decode("utf-8")
        except UnicodeDecodeError:
            body = data.decode("cp1252")
    if body.startswith("sep="):
        body = body.split("\n", 1)[1]
    head = body.split("\n")[0]
    sep = max("\t;|,", key=head.count)
    return {"": list(csv.reader(io.StringIO(body.replace("\0", ""), newline=""), delimiter=sep))}


def grids(path):
    data = path.read_bytes()
    if data[:2] == b"PK":
        kind = "ods" if b"opendocument" in data[:100] else "xlsx"
        found = [office(path, kind)]
        if kind == "xlsx":
            found.append(python_book(path))
        return found
    if data[:4] == b"\xd0\xcf\x11\xe0":
        return [office(path, "xls")]
    if data.lstrip()[:1] == b"<":
        return [office(path, "html" if b"<html" in data[:200].lower() else "xls")]
    return [delimited(data)]


def flat(s):
    return "".join(unicodedata.normalize("NFC", str(s)).replace("\u00a0", " ").split()).casefold()


def options(v):
    return v["any_of"] if isinstance(v, dict) else [v]


def check(path, truth, verbose):
    faults = []
    for found in grids(path):
        if verbose:
            for name, rows in found.items():
                print(f"-- {name}")
                for i, r in enumerate(rows, 1):
                    print(i, r)
        names = truth.get("sheet")
        for s in truth["sets"]:
            rows = found.get(s.get("sheet", ""), next(iter(found.values())))
            if s["line"] > len(rows):
                faults.append(f"no row {s['line']}")
                continue
            line = flat(" ".join(rows[s["line"] - 1]))
            for f in ("model", "serial", "claimed_text"):
                if s.get(f) is not None and not s.get("optional") and not any(o is None or flat(o) in line or f != "claimed_text" and flat(o).lstrip("0") in line for o in options(s[f])):
                    faults.append(f"row {s['line']}: {f} {s[f]!r} is not in {rows[s['line'] - 1]}")
        for e in truth["problems"]["must"] + truth["ignored"]:
            rows = found.get(e.get("sheet", ""), next(iter(found.values())))
            if e["row"] > len(rows) and e["why"] not in ("blank",):
                faults.append(f"no row {e['row']} ({e['why']})")
        listed = {(s.get("sheet"), s["line"]) for s in truth["sets"]} | {(e.get("sheet"), e["row"]) for k in ("must", "may") for e in truth["problems"][k]} | {(e.get("sheet"), e["row"]) for e in truth["ignored"]}
        for name, rows in found.items():
            first = 0 if names and name not in names else max(truth.get("header_row", [0]))
            for i in range(first + 1, len(rows) + 1):
                key = (name if any(k[0] for k in listed) else None, i)
                if key not in listed and any(x.strip() for x in rows[i - 1]) and not (names and name not in names):
                    faults.append(f"row {i} of {name!r} is neither set, problem nor passed over: {rows[i - 1]}")
    return faults


def main(*args):
    verbose = "-v" in args
    bad = 0
    for folder in [a for a in args if a != "-v"]:
        for j in sorted(Path(folder).glob("*.expected.json")) if Path(folder).is_dir() else [Path(folder)]:
            truth = json.loads(j.read_text(encoding="utf-8"))
            if 3 in truth["exit"] and 0 not in truth["exit"]:
                continue
            if verbose:
                print("==", truth["file"])
            for f in check(j.parent / truth["file"], truth, verbose):
                bad += 1
                print(f"{truth['file']}: {f}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
