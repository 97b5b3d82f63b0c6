"""A workbook as plain data, the reading expected of it, and the table that fills both at once.

A cell is None, a str, a number, or a dict:
  {"v": 7, "fmt": "00000"}        a value under a display format
  {"date": "2043-10-01", "fmt": "mmm-yy"}
  {"f": "B2*C2", "c": 12.5}       a formula; without "c" it has no stored value where the writer allows that
  {"err": "#REF!"}                an error value
  {"rich": ["a", "b"]}            runs of rich text
"""

import json


def any_of(*values):
    return {"any_of": list(values)}


def cm(value, nominal):
    """The two readings of a size in centimetres."""
    return any_of(round(value / 2.54, 1), float(nominal))


class Sheet:
    def __init__(self, name, hidden=False):
        self.name, self.hidden = name, hidden
        self.rows, self.merges, self.hidden_rows, self.hidden_cols = [], [], [], []

    def add(self, *cells):
        """Appends a row; its number counts from 1."""
        self.rows.append(list(cells))
        return len(self.rows)

    @property
    def next(self):
        return len(self.rows) + 1

    def data(self):
        return dict(name=self.name, hidden=self.hidden, rows=self.rows, merges=self.merges,
                    hiddenRows=self.hidden_rows, hiddenCols=self.hidden_cols)


class Truth:
    """What a careful person reads in the file. `named` = problems and sets carry the name of their sheet."""

    def __init__(self, about, named=True):
        self.about, self.named = about, named
        self.sheet, self.header_row, self.columns = [], [], {}
        self.sets, self.must, self.may, self.ignored = [], [], [], []
        self.exit, self.line_shift, self.sets_total, self.asking_total = None, None, None, None

    def where(self, sheet, key, row):
        return {**({"sheet": sheet.name} if self.named else {}), key: row}

    def report(self, sheet, row, why):
        self.must.append({**self.where(sheet, "row", row), "why": why})

    def allow(self, sheet, row, why):
        self.may.append({**self.where(sheet, "row", row), "why": why})

    def allow_sheet(self, sheet, why):
        """Rows of a sheet that is no manifest; 0 = the sheet as a whole."""
        for row in range(0, len(sheet.rows) + 1):
            self.allow(sheet, row, why)

    def pass_over(self, sheet, row, why):
        self.ignored.append({**self.where(sheet, "row", row), "why": why})

    def note(self, sheet, *cells, why="note"):
        """A row of the table's neighbourhood that gives neither set nor problem."""
        row = sheet.add(*cells)
        self.pass_over(sheet, row, why)
        return row

    def head(self, sheet, row, columns):
        """Header of the first manifest."""
        if self.named:
            self.sheet.append(sheet.name)
        self.header_row = row if isinstance(row, list) else [row]
        self.columns = {f: v if isinstance(v, list) else [v] for f, v in columns.items()}

    def text(self, name):
        must, may = self.must, self.may
        exit = self.exit or ([1] if must else [0, 1] if may else [0])
        out = {"file": name, "about": self.about, "exit": exit}
        out["sets_total"] = self.sets_total if self.sets_total is not None else len(self.sets)
        if self.asking_total is False:
            pass
        elif self.asking_total is not None:
            out["asking_total"] = self.asking_total
        else:
            prices = [s["asking"] for s in self.sets]
            # A total that depends on which of two readings was taken is not compared.
            if not any(isinstance(p, dict) for p in prices):
                out["asking_total"] = round(sum(p or 0 for p in prices), 2)
        if self.sheet:
            out["sheet"] = self.sheet
        if self.header_row:
            out["header_row"] = self.header_row
        if self.columns:
            out["columns"] = self.columns
        if self.line_shift:
            out["line_shift"] = self.line_shift
        lines = [f" {json.dumps(k)}: {dump(v)}" for k, v in out.items()]
        lines.append(' "sets": ' + listed(self.sets, " "))
        lines.append(' "problems": {\n  "must": ' + listed(must, "  ") + ',\n  "may": ' + listed(may, "  ") + "\n }")
        lines.append(' "ignored": ' + listed(self.ignored, " "))
        return "{\n" + ",\n".join(lines) + "\n}\n"


def dump(v):
    return json.dumps(v, ensure_ascii=False)


def listed(items, indent):
    if not items:
        return "[]"
    return "[\n" + ",\n".join(f"{indent} {dump(i)}" for i in items) + f"\n{indent}]"


FIELDS = ("maker", "model", "inches", "serial", "claimed", "asking", "claimed_text")


class Col:
    """A column: field (None = one that no field needs), header text, and how a set's cell is written."""

    def __init__(self, field, header, how=None):
        self.field, self.header, self.how = field, header, how

    def cell(self, s, n):
        for key in (self.header, self.field):
            if key is not None and key in s.get("cells", {}):
                return s["cells"][key]
        if s.get("skip"):
            return None
        if self.how:
            return self.how(s, n)
        return s["claimed_text"] if self.field == "claimed" else s.get(self.field)


def header(sheet, truth, cols, first=False):
    """A header row; the first one of the file is described, a later one passed over."""
    row = sheet.add(*[c.header for c in cols])
    if first:
        seen = {}
        for c in cols:
            if c.field:
                seen.setdefault(c.field, []).append(" ".join(str(c.header).split()))
        names = {f: [" + ".join(h)] for f, h in seen.items()}
        truth.head(sheet, row, {f: names.get(f, [None]) for f in FIELDS[:6]})
    else:
        truth.pass_over(sheet, row, "header again")
    return row


def fill(sheet, truth, cols, sets, start=1):
    """Rows of sets. A set is a dict of FIELDS, with `cells` (field or header: what is written instead), `want` (what is to be
    read instead), `must`/`may` (why its row is reported), `serials` (one for each set of the line), `skip` (gives no set)."""
    for n, s in enumerate(sets, start):
        row = sheet.add(*[c.cell(s, n) for c in cols])
        expect(sheet, truth, row, s)


def expect(sheet, truth, row, s):
    if not s.get("skip"):
        for serial in s.get("serials", [s.get("serial")]):
            e = {**truth.where(sheet, "line", row), **{f: s.get(f) for f in FIELDS}, "serial": serial, **s.get("want", {})}
            if s.get("optional"):
                e["optional"] = True
            truth.sets.append(e)
    if s.get("must"):
        truth.report(sheet, row, s["must"])
    if s.get("may"):
        truth.allow(sheet, row, s["may"])


def table(sheet, truth, cols, sets, first=False, start=1):
    header(sheet, truth, cols, first)
    fill(sheet, truth, cols, sets, start)
