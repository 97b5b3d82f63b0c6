"""Tuning group: files to be refused, files with a damaged part, files that lie about themselves."""

import io
import zipfile
from pathlib import Path

from book import Col, Sheet, Truth, any_of, fill, header, table
from common import *
from words import tune
import hostile
import writers as w

NUMBERS = [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Size (in)", whole), Col("serial", "Serial"), Col("claimed", "Fault"), Col("asking", "Price")]


def parts(path, change):
    """Rewrites a zip: change(name, bytes) gives the new bytes, or None to leave the part out."""
    out = io.BytesIO()
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for e in old.infolist():
            data = change(e.filename, old.read(e))
            if data is not None:
                new.writestr(zipfile.ZipInfo(e.filename, (2026, 1, 1, 0, 0, 0)), data, zipfile.ZIP_DEFLATED, 9)
    path.write_bytes(out.getvalue())


def book(path, seed, n=10, **options):
    t, g = Truth(""), tune(seed)
    sh = Sheet("Sheet1")
    sets = g.sets(n)
    table(sh, t, NUMBERS, sets, True)
    w.xlsxwriter_(path, [sh], **options)
    return t, sh, sets


def replace(part, old, new, count=1):
    def change(name, data):
        if name != part:
            return data
        assert old in data, (part, old)
        return data.replace(old, new, count)

    return change


SHEET = "xl/worksheets/sheet1.xml"


def missing_string(path):
    t, sh, sets = book(path, 270)
    t.about = "one cell points at a shared string that is not there"
    row = 5
    import re

    def change(name, data):
        return re.sub(rb'(<c r="B5" t="s"><v>)\d+', rb"\g<1>99999", data) if name == SHEET else data

    parts(path, change)
    t.sets[row - 2]["model"] = None
    t.report(sh, row, "shared string missing")
    return t


def missing_sheet(path):
    t, _, _ = book(path, 271)
    parts(path, lambda n, d: None if n == SHEET else d)
    return hostile.refused("the part that holds the sheet is missing")


def false_dimension(path):
    t, _, _ = book(path, 272)
    t.about = "claims a dimension of seventeen thousand million cells and a million styles that are not there"
    parts(path, replace(SHEET, b'<dimension ref="A1:F11"/>', b'<dimension ref="A1:XFD1048576"/>'))
    parts(path, replace("xl/styles.xml", b'<cellXfs count="1">', b'<cellXfs count="4000000000">'))
    return t


def beyond_reason(path):
    t, sh, sets = book(path, 273)
    t.about = "prices that are infinite or beyond reason as numbers"
    import re

    def change(name, data):
        if name == SHEET:
            for cell, value in (("F3", b"1E+999"), ("F6", b"1.7E+308"), ("F9", b"-250")):
                data = re.sub(rb'(<c r="%s"><v>)[^<]*' % cell.encode(), rb"\g<1>" + value, data)
        return data

    parts(path, change)
    for row in (3, 6, 9):
        t.sets[row - 2]["asking"] = None
        t.report(sh, row, "price not readable")
    t.sets[7]["asking"] = any_of(None, -250.0)
    return t


def entity(path):
    t, sh, _ = book(path, 274)
    parts(path, replace("xl/sharedStrings.xml", b"<sst ", b'<!DOCTYPE sst [<!ENTITY x SYSTEM "file:///etc/hostname">]><sst '))
    t.about = "a document type declaration in the shared strings: refused, or reported"
    t.exit = [1, 3]
    for s in t.sets:
        s["optional"] = True
    t.allow(sh, 0, "document type declaration")
    for row in range(1, len(sh.rows) + 1):
        t.allow(sh, row, "document type declaration")
    t.sets_total, t.asking_total = any_of(*range(len(sh.rows))), False
    return t


def swelling(path):
    book(path, 275)
    parts(path, replace(SHEET, b"<sheetData>", b"<sheetData>" + b" " * 48_000_000))
    t = Truth("a sheet that swells a thousandfold when unpacked: refused, or read in time")
    t.exit = [0, 1, 3]
    sh, g = Sheet("Sheet1"), tune(275)
    table(sh, t, NUMBERS, g.sets(10), True)
    t.allow(sh, 0, "swells")
    return t


def binary_workbook(path):
    book(path, 276)
    names = {SHEET: "xl/worksheets/sheet1.bin", "xl/workbook.xml": "xl/workbook.bin"}
    out = io.BytesIO()
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for e in old.infolist():
            data = old.read(e).replace(b"workbook.xml", b"workbook.bin").replace(b"sheet1.xml", b"sheet1.bin").replace(b"spreadsheetml.sheet.main+xml", b"ms-excel.sheet.binary.macroEnabled.main")
            data = b"\x83\x01\x00\x81\x01\x00\x82\x01\x00\x84\x01\x00" if e.filename in names else data
            new.writestr(zipfile.ZipInfo(names.get(e.filename, e.filename), (2026, 1, 1, 0, 0, 0)), data)
    path.write_bytes(out.getvalue())
    return hostile.refused("the binary variant of XLSX")


def picture(path):
    import struct
    import zlib

    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    path.write_bytes(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", 8, 8, 8, 0, 0, 0, 0)) + chunk(b"IDAT", zlib.compress(b"\0" * 72)) + chunk(b"IEND", b""))
    return hostile.refused("a picture under .xls")


def letter_document(path):
    with zipfile.ZipFile(path, "w") as z:
        for name, data in (("[Content_Types].xml", '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/word/document.xml" ContentType="application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml"/></Types>'),
                           ("_rels/.rels", '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="word/document.xml"/></Relationships>'),
                           ("word/document.xml", '<?xml version="1.0"?><w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"><w:body><w:p><w:r><w:t>Brand Model Size Price</w:t></w:r></w:p></w:body></w:document>')):
            z.writestr(zipfile.ZipInfo(name, (2026, 1, 1, 0, 0, 0)), data)
    return hostile.refused("a letter of an office program under .xlsx")


def wrong_extension(path):
    t, sh, _ = book(Path(path), 280)
    t.about = "a workbook under .csv: may be read"
    t.exit = [0, 3]
    return t


def text_as_workbook(path):
    t, g = Truth("delimited text under .xlsx: may be read", named=False), tune(281)
    sh = Sheet("")
    table(sh, t, hostile.BASIC, g.sets(8), True)
    w.text(path, sh.rows)
    t.exit = [0, 3]
    return t


def numbers_only(path):
    path.write_text("".join(f"{i},{i * 7 % 91},{i * 13 % 77},{i * 5}\n" for i in range(1, 30)), encoding="utf-8")
    return hostile.refused("numbers without a header")


def header_line(path):
    t = Truth("a header line and nothing under it", named=False)
    sh = Sheet("")
    header(sh, t, hostile.BASIC, True)
    t.may += [{"row": 0, "why": "no rows"}, {"row": 1, "why": "no rows"}]
    w.text(path, sh.rows)
    t.exit = [1, 3]
    return t


def old_password(path):
    sh = Sheet("Sheet1")
    table(sh, Truth(""), NUMBERS, tune(284).sets(8), True)
    w.poi(path, [sh], password="letmein")
    return hostile.refused("an old binary workbook under a password")


def empty_book(path):
    w.openpyxl_(path, [Sheet("Sheet1")])
    return hostile.refused("a workbook without a cell")


def mark_only(path):
    path.write_bytes(b"\xef\xbb\xbf")
    return hostile.refused("a byte order mark and nothing else")


def bytes_of_chance(path):
    import random

    path.write_bytes(random.Random(5).randbytes(3000))
    return hostile.refused("bytes of chance under .csv")


def stray_quote(path):
    t, g = Truth("German: a quote opened in the third record and closed in the last; NUL bytes in the second", named=False), tune(288)
    sh = Sheet("")
    cols = [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Zoll", whole), Col("claimed", "Fehler"), Col("serial", "Seriennummer"), Col("asking", "Preis", german)]
    sets = g.sets(9, "de")
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:1])
    row = sh.add(sets[1]["maker"], sets[1]["model"] + "\0", *[c.cell(sets[1], 0) for c in cols[2:]])
    t.report(sh, row, "NUL bytes")
    t.sets.append({"line": row, "maker": sets[1]["maker"], "model": any_of(sets[1]["model"], sets[1]["model"] + "\0", sets[1]["model"] + "\ufffd", sets[1]["model"] + "\u2400", None), "inches": any_of(sets[1]["inches"], None), "serial": any_of(sets[1]["serial"], None),
                   "claimed": any_of(sets[1]["claimed"], "other", "untested"), "asking": any_of(sets[1]["asking"], None), "optional": True})
    fill(sh, t, cols, sets[2:7])
    bad = sets[7]
    row = sh.add(bad["maker"], bad["model"], whole(bad, 0), {"raw": '"' + bad["claimed_text"]}, bad["serial"], german(bad, 0))
    t.report(sh, row, "quote not closed")
    t.sets.append({"line": row, "maker": bad["maker"], "model": bad["model"], "inches": any_of(bad["inches"], None), "serial": any_of(bad["serial"], None), "claimed": any_of(bad["claimed"], "other", "untested"), "asking": any_of(bad["asking"], None), "optional": True})
    t.about = "German: NUL bytes in the second record, a quote never closed in the last"
    t.sets_total = any_of(6, 7, 8)
    w.text(path, sh.rows, ";", "cp1252")
    return t


def torn_binary(path):
    """Half of a file that another function of the group writes."""
    import tuning_sheets

    tuning_sheets.FILES["t15-two-languages.xls"](path)
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])
    return hostile.refused("half of an old binary workbook")


FILES = {
    "t70-missing-string.xlsx": missing_string, "t71-missing-sheet.xlsx": missing_sheet, "t72-false-dimension.xlsx": false_dimension, "t73-beyond-reason.xlsx": beyond_reason, "t74-entity.xlsx": entity,
    "t75-swelling.xlsx": swelling, "t76-binary-workbook.xlsb": binary_workbook, "t77-picture.xls": picture, "t78-letter.xlsx": letter_document, "t79-torn.xls": torn_binary, "t80-wrong-extension.csv": wrong_extension,
    "t81-text.xlsx": text_as_workbook, "t82-numbers.csv": numbers_only, "t83-header-line.csv": header_line, "t84-password.xls": old_password, "t85-empty.xlsx": empty_book, "t86-mark-only.csv": mark_only,
    "t87-chance.csv": bytes_of_chance, "t88-stray-quote.csv": stray_quote,
}
