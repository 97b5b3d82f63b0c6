"""Files that are to be refused, and files of which part is damaged."""

from book import Col, Sheet, Truth, any_of, fill, header, table
from common import *
import writers as w

BASIC = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", mark('"')), Col("serial", "Serial"), Col("claimed", "Condition"), Col("asking", "Price", plain)]


def refused(about):
    t = Truth(about)
    t.exit = [3]
    return t


def password(path, g, word="opensesame"):
    sh = Sheet("Sheet1")
    table(sh, Truth(""), BASIC, g.sets(8), True)
    w.poi(path, [sh], password=word)
    return refused("a workbook under a password")


def pdf(path):
    objects = ["<< /Type /Catalog /Pages 2 0 R >>", "<< /Type /Pages /Kids [3 0 R] /Count 1 >>", "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R >>",
               "<< /Length 44 >>\nstream\nBT /F1 12 Tf 72 720 Td (Lot 9: 14 sets) Tj ET\nendstream"]
    out = b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n"
    offsets = []
    for i, o in enumerate(objects, 1):
        offsets.append(len(out))
        out += f"{i} 0 obj\n{o}\nendobj\n".encode()
    start = len(out)
    out += f"xref\n0 {len(objects) + 1}\n0000000000 65535 f \n".encode() + b"".join(f"{o:010d} 00000 n \n".encode() for o in offsets)
    out += f"trailer\n<< /Size {len(objects) + 1} /Root 1 0 R >>\nstartxref\n{start}\n%%EOF\n".encode()
    path.write_bytes(out)
    return refused("a page description under .xlsx")


def torn(path, g, keep=0.6):
    sh = Sheet("Sheet1")
    table(sh, Truth(""), BASIC, g.sets(40), True)
    w.xlsxwriter_(path, [sh])
    data = path.read_bytes()
    path.write_bytes(data[: int(len(data) * keep)])
    return refused("a download that stopped half way")


def prose(path):
    path.write_text("Dear buyer,\nthank you for asking. We can offer a truck of mixed goods next week.\nThe list follows by separate mail.\n\nKind regards\nThe yard\n", encoding="utf-8")
    return refused("a letter: no header")


def header_only(path):
    t = Truth("a header with nothing under it")
    sh = Sheet("Sheet1")
    header(sh, t, BASIC, True)
    t.allow(sh, 0, "no rows")
    t.allow(sh, 1, "no rows")
    w.openpyxl_(path, [sh])
    t.exit = [1, 3]
    return t


def nul_and_quote(path, g):
    """NUL bytes in one record, an unbalanced quote in the last but one."""
    t = Truth("NUL bytes in one row; a quote that is never closed swallows the end", named=False)
    sh = Sheet("")
    sets = g.sets(12)
    cols = [Col(c.field, c.header, mark("in") if c.field == "inches" else c.how) for c in BASIC]
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:4])
    row = sh.add("Fjordal", "FJ.\0\0.U7", "55in", g.serial(), "not tested", "210.00")
    t.report(sh, row, "NUL bytes")
    t.sets.append({"line": row, "maker": any_of("Fjordal", None), "model": any_of("FJ..U7", "FJ.", "FJ.  .U7", "FJ. .U7", "FJ.\u2400\u2400.U7", "FJ.\ufffd\ufffd.U7", "FJ.\0\0.U7", None), "inches": any_of(55.0, None),
                   "serial": any_of(sh.rows[-1][3], None), "claimed": any_of("untested", "other"), "asking": any_of(210.0, None), "optional": True})
    fill(sh, t, cols, sets[4:10])
    bad = sets[10]
    row = sh.add(bad["maker"], bad["model"], mark("in")(bad, 0), bad["serial"], {"raw": '"box torn, ' + bad["claimed_text"]}, plain(bad, 0))
    t.report(sh, row, "quote not closed")
    last = sh.add(*[c.cell(sets[11], 0) for c in cols])
    t.allow(sh, last, "swallowed by the quote")
    for line, s in ((row, bad), (last, sets[11])):
        t.sets.append({"line": line, "maker": s["maker"], "model": s["model"], "inches": any_of(s["inches"], None), "serial": any_of(s["serial"], None), "claimed": any_of(s["claimed"], "other", "untested"),
                       "asking": any_of(s["asking"], None), "optional": True})
    t.sets_total = any_of(10, 11, 12, 13)
    w.text(path, sh.rows)
    return t


def empty(path):
    path.write_bytes(b"")
    return refused("an empty file")
