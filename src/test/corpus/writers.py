"""Writes books (book.py) through other people's programs, and by hand. Each writer takes a path and the sheets."""

import datetime
import html
import json
import os
import re
import shutil
import struct
import subprocess
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
EPOCH = datetime.datetime(2026, 1, 1)


def still(path):
    """Sets the entries' times of a zip to one moment, in place: the same book gives the same bytes, the container stays the writer's."""
    data = bytearray(Path(path).read_bytes())
    stamp = struct.pack("<HH", 0, (2026 - 1980) << 9 | 1 << 5 | 1)
    at = data.rfind(b"PK\5\6")
    count, _, start = struct.unpack_from("<HII", data, at + 10)
    for _ in range(count):
        n, e, c = struct.unpack_from("<HHH", data, start + 28)
        local = struct.unpack_from("<I", data, start + 42)[0]
        data[start + 12:start + 16] = stamp
        data[local + 10:local + 14] = stamp
        start += 46 + n + e + c
    Path(path).write_bytes(data)


def a1(row, col):
    s = ""
    col += 1
    while col:
        col, r = divmod(col - 1, 26)
        s = chr(65 + r) + s
    return f"{s}{row + 1}"


def date_of(cell):
    return datetime.datetime.fromisoformat(cell["date"])


def openpyxl_(path, sheets, tweak=None):
    import openpyxl

    wb = openpyxl.Workbook()
    wb.remove(wb.active)
    wb.properties.created = wb.properties.modified = EPOCH
    for sh in sheets:
        ws = wb.create_sheet(sh.name)
        ws.sheet_state = "hidden" if sh.hidden else "visible"
        for r, row in enumerate(sh.rows, 1):
            for c, v in enumerate(row, 1):
                if v is None:
                    continue
                cell = ws.cell(r, c)
                if not isinstance(v, dict):
                    cell.value = v
                    if isinstance(v, str):
                        cell.data_type = "s"
                elif "date" in v:
                    cell.value = date_of(v)
                elif "f" in v:
                    cell.value = "=" + v["f"]
                elif "err" in v:
                    cell.value = v["err"]
                    cell.data_type = "e"
                elif "rich" in v:
                    cell.value = "".join(v["rich"])
                else:
                    cell.value = v["v"]
                if isinstance(v, dict) and "fmt" in v:
                    cell.number_format = v["fmt"]
        for m in sh.merges:
            ws.merge_cells(m)
        for r in sh.hidden_rows:
            ws.row_dimensions[r].hidden = True
        for c in sh.hidden_cols:
            ws.column_dimensions[c].hidden = True
    if tweak:
        tweak(wb)
    wb.active = next(i for i, s in enumerate(sheets) if not s.hidden)
    wb.save(path)
    still(path)


def xlsxwriter_(path, sheets, **options):
    import xlsxwriter

    wb = xlsxwriter.Workbook(str(path), {"strings_to_formulas": False, "strings_to_urls": False, **options})
    wb.set_properties({"created": EPOCH})
    formats = {}

    def fmt(f):
        return formats.setdefault(f, wb.add_format({"num_format": f} if f else {}))

    for sh in sheets:
        ws = wb.add_worksheet(sh.name)
        if sh.hidden:
            ws.hide()
        for r, row in enumerate(sh.rows):
            for c, v in enumerate(row):
                if v is None:
                    continue
                if isinstance(v, str):
                    ws.write_string(r, c, v)
                elif isinstance(v, bool):
                    ws.write_boolean(r, c, v)
                elif not isinstance(v, dict):
                    ws.write_number(r, c, v)
                elif "date" in v:
                    ws.write_datetime(r, c, date_of(v), fmt(v.get("fmt", "yyyy-mm-dd")))
                elif "f" in v:
                    ws.write_formula(r, c, "=" + v["f"], fmt(v.get("fmt")), v.get("c", 0))
                elif "err" in v:
                    ws.write_formula(r, c, "=" + v.get("by", "1/0"), None, v["err"])
                elif "rich" in v:
                    bold = wb.add_format({"bold": True})
                    parts = []
                    for i, t in enumerate(v["rich"]):
                        parts += [bold, t] if i % 2 == 0 else [t]
                    ws.write_rich_string(r, c, *parts)
                elif isinstance(v["v"], str):
                    ws.write_string(r, c, v["v"], fmt(v.get("fmt")))
                else:
                    ws.write_number(r, c, v["v"], fmt(v.get("fmt")))
        for m in sh.merges:
            first = m.split(":")[0]
            col = 0
            for ch in re.match("[A-Z]+", first).group():
                col = col * 26 + ord(ch) - 64
            v = sh.rows[int(re.sub("[A-Z]", "", first)) - 1][col - 1]
            ws.merge_range(m, v)
        for r in sh.hidden_rows:
            ws.set_row(r - 1, None, None, {"hidden": True})
        for c in sh.hidden_cols:
            ws.set_column(f"{c}:{c}", None, None, {"hidden": True})
    wb.close()
    still(path)


JOBS = {"poi": [], "js": [], "js2": []}


def later(kind):
    """Programs that are slow to start write all their books in one run (see flush)."""

    def write(path, sheets, **options):
        JOBS[kind].append(dict(path=str(path), sheets=[s.data() for s in sheets], **options))

    return write


poi, exceljs, write_excel_file = later("poi"), later("js"), later("js2")


def flush():
    """Runs the books put off. POI_CLASSPATH and NODE_PATH say where Apache POI's jars and the npm packages lie."""
    with tempfile.TemporaryDirectory() as tmp:
        for kind, jobs in JOBS.items():
            if not jobs:
                continue
            spec = Path(tmp) / f"{kind}.json"
            spec.write_text(json.dumps(jobs), encoding="utf-8")
            if kind == "poi":
                run("java", "-Xmx512m", "-cp", os.environ["POI_CLASSPATH"], str(HERE / "PoiBook.java"), str(spec))
            else:
                run("node", str(HERE / f"{kind}_book.cjs"), str(spec))
            for j in jobs:
                if j["path"].endswith(".xlsx") and not j.get("password"):
                    still(j["path"])
            jobs.clear()


def run(*command):
    subprocess.run(command, check=True)


def libreoffice(path, sheets, filter=None, **options):
    """Through openpyxl's file, converted by LibreOffice to what the name says (or `kind`)."""
    kind = options.pop("kind", Path(path).suffix[1:])
    with tempfile.TemporaryDirectory() as tmp:
        source = Path(tmp) / "book.xlsx"
        openpyxl_(source, sheets)
        to = kind + (":" + filter if filter else "")
        subprocess.run(["soffice", "--headless", f"-env:UserInstallation=file://{tempfile.gettempdir()}/corpus-office",
                        "--convert-to", to, "--outdir", tmp + "/out", str(source)],
                       check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        shutil.copy(f"{tmp}/out/book.{kind}", path)


def text(path, rows, sep=",", encoding="utf-8", eol="\n", quote='"', always=False, before="", end=True):
    """Delimited text. A cell {"raw": ...} is written as it stands."""
    lines = []
    for row in rows:
        cells = []
        for v in row:
            if isinstance(v, dict):
                cells.append(v["raw"])
                continue
            v = "" if v is None else str(v)
            if quote and (always and v != "" or any(x in v for x in (sep, quote, "\n", "\r"))):
                v = quote + v.replace(quote, quote * 2) + quote
            cells.append(v)
        lines.append(sep.join(cells))
    body = before + eol.join(lines) + (eol if end else "")
    Path(path).write_bytes(body.encode(encoding))


def spreadsheetml(path, sheets, encoding="utf-8"):
    """The XML table of 2003 by hand; blank rows are skipped with ss:Index, merges are ss:MergeAcross and ss:MergeDown."""
    out = [f'<?xml version="1.0" encoding="{encoding}"?>', '<?mso-application progid="Excel.Sheet"?>',
           '<Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet" xmlns:ss="urn:schemas-microsoft-com:office:spreadsheet">']
    for sh in sheets:
        out.append(f' <Worksheet ss:Name="{html.escape(sh.name)}"><Table>')
        spans, covered = {}, set()
        for m in sh.merges:
            (c1, r1), (c2, r2) = [split_a1(x) for x in m.split(":")]
            spans[r1, c1] = (c2 - c1, r2 - r1)
            covered |= {(r, c) for r in range(r1, r2 + 1) for c in range(c1, c2 + 1)} - {(r1, c1)}
        skipped = False
        for r, row in enumerate(sh.rows):
            if not any(v is not None for v in row):
                skipped = True
                continue
            hidden = ' ss:Hidden="1"' if r + 1 in sh.hidden_rows else ""
            out.append(f'  <Row{f" ss:Index={chr(34)}{r + 1}{chr(34)}" if skipped else ""}{hidden}>')
            skipped = gap = False
            for c, v in enumerate(row):
                if v is None or (r, c) in covered:
                    gap = True
                    continue
                at = f' ss:Index="{c + 1}"' if gap else ""
                gap = False
                if (r, c) in spans:
                    across, down = spans[r, c]
                    at += f' ss:MergeAcross="{across}" ss:MergeDown="{down}"'
                if isinstance(v, dict) and "f" in v:
                    out.append(f'   <Cell{at} ss:Formula="={html.escape(v["f"])}"><Data ss:Type="Number">{v["c"]}</Data></Cell>')
                elif isinstance(v, str):
                    out.append(f'   <Cell{at}><Data ss:Type="String">{html.escape(v)}</Data></Cell>')
                else:
                    out.append(f'   <Cell{at}><Data ss:Type="Number">{v}</Data></Cell>')
            out.append("  </Row>")
        out.append(" </Table></Worksheet>")
    out.append("</Workbook>")
    Path(path).write_bytes("\n".join(out).encode(encoding))


def split_a1(ref):
    letters = re.match("[A-Z]+", ref).group()
    col = 0
    for ch in letters:
        col = col * 26 + ord(ch) - 64
    return col - 1, int(ref[len(letters):]) - 1
