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
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree


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
    """Sheets as openpyxl reads them: stored values, merged cells spread out."""
    import openpyxl

    with open(path, "rb") as f:
        wb = openpyxl.load_workbook(f, data_only=True)
    out = {}
    for ws in wb:
        rows = [[("" if v is None else str(v)) for v in row] for row in ws.iter_rows(values_only=True)]
        for m in ws.merged_cells.ranges:
            for r in range(m.min_row, m.max_row + 1):
                for c in range(m.min_col, m.max_col + 1):
                    rows[r - 1][c - 1] = rows[m.min_row - 1][m.min_col - 1]
        out[ws.title] = rows
    return out


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
        try:
            return found + ([python_book(path)] if kind == "xlsx" else [])
        except (IndexError, KeyError, ValueError) as e:
            print(f"{path.name}: openpyxl gives up: {e!r}")
            return found
    if data[:4] == b"\xd0\xcf\x11\xe0":
        return [office(path, "xls")]
    if data.lstrip()[:5] == b"<?xml":
        return [xml_table(path)]
    if data.lstrip()[:1] == b"<":
        return [office(path, "html"), web_table(data)]
    return [delimited(data)]


def xml_table(path):
    """An XML table of 2003 with ElementTree: index attributes followed."""
    ss, out = "{urn:schemas-microsoft-com:office:spreadsheet}", {}
    for sheet in ElementTree.parse(path).iter(ss + "Worksheet"):
        rows = out[sheet.get(ss + "Name")] = []
        for row in sheet.iter(ss + "Row"):
            at = int(row.get(ss + "Index", len(rows) + 1))
            rows.extend([] for _ in range(at - len(rows)))
            for cell in row.iter(ss + "Cell"):
                col = int(cell.get(ss + "Index", len(rows[-1]) + 1))
                rows[-1].extend("" for _ in range(col - len(rows[-1])))
                rows[-1][-1] = "".join(cell.itertext())
    return out


def web_table(data):
    """Rows of a page with html.parser; cells are not told apart."""

    class Rows(HTMLParser):
        rows = []

        def handle_starttag(self, tag, attrs):
            if tag == "tr":
                self.rows.append([""])

        def handle_data(self, text):
            if self.rows:
                self.rows[-1][0] += text

    parser = Rows()
    parser.rows = []
    parser.feed(data.decode("cp1252" if b"windows-1252" in data[:300] else "utf-8"))
    return {"": parser.rows}


def flat(s):
    return "".join(unicodedata.normalize("NFC", str(s)).replace("\u00a0", " ").split()).casefold()


def options(v):
    return v["any_of"] if isinstance(v, dict) else [v]


def row_of(grid, sheet, number):
    rows = grid.get(sheet or "", next(iter(grid.values()), []))
    return rows[number - 1] if number <= len(rows) else []


def seen(value, line):
    for o in options(value):
        if o is None or flat(o) in line or flat(o).lstrip("0") in line:
            return True
    return False


def check(path, truth, verbose):
    """A text expected has to be in its row as at least one of the other programs shows it; a formula's or a merged cell's value only some show."""
    faults = []
    found = grids(path)
    if verbose:
        for grid in found:
            for name, rows in grid.items():
                print(f"-- {name}")
                for i, r in enumerate(rows, 1):
                    print(i, r)
    for s in truth["sets"]:
        lines = [flat(" ".join(row_of(g, s.get("sheet"), s["line"]))) for g in found]
        if s.get("optional"):
            continue
        for f in ("model", "serial", "claimed_text"):
            if not any(seen(s.get(f), line) for line in lines):
                faults.append(f"row {s['line']}: {f} {s[f]!r} is not in {lines}")
    for e in truth["problems"]["must"] + [i for i in truth["ignored"] if i["why"] != "blank"]:
        if not any("".join(row_of(g, e.get("sheet"), e["row"])).strip() for g in found):
            faults.append(f"row {e['row']} ({e['why']}) is blank")
    known = [(s.get("sheet"), s["line"]) for s in truth["sets"]] + [(e.get("sheet"), e["row"]) for e in truth["problems"]["must"] + truth["problems"]["may"] + truth["ignored"]]
    manifests = {k[0] for k in known if k[0]}
    head = max(truth.get("header_row", [0]))
    for name, rows in found[0].items():
        if manifests and name not in manifests:
            faults.append(f"sheet {name!r} is not mentioned")
        own = name if manifests else None
        first = min([r for n, r in known if n == own], default=0) if name not in truth.get("sheet", [name]) else head
        for i, row in enumerate(rows, 1):
            if i > max(first, 1) and "".join(row).strip() and (own, i) not in known:
                faults.append(f"row {i} of {name!r} is neither set, problem nor passed over: {row}")
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
