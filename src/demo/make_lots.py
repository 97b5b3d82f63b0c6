#!/usr/bin/env python3
"""Writes the manifests of the invented shop into lots/, from tidy to ugly. usage: make_lots.py OUT
Needs openpyxl, and LibreOffice (soffice) for the old binary workbook. Makers, models, suppliers and serials do not exist.
The families are those of org.salvedge.demo.DemoFamily."""
import csv, datetime, io, os, random, subprocess, sys, tempfile
from openpyxl import Workbook
from openpyxl.styles import Alignment, Font, PatternFill

FAMILIES = [("Kestrel", "KX-55", 55, 236, 10), ("Kestrel", "KX-43", 43, 158, 8), ("Kestrel", "KX-65", 65, 322, 6), ("Orlan", "43U", 43, 149, 9),
            ("Orlan", "50U", 50, 188, 8), ("Orlan", "32H", 32, 84, 7), ("Vesper", "VS49", 49, 141, 6), ("Vesper", "VS55", 55, 224, 7),
            ("Brennick", "BR40", 40, 112, 6), ("Brennick", "BR75", 75, 468, 3), ("Ustra", "U5-55", 55, 214, 6), ("Ustra", "U5-32", 32, 92, 5),
            ("Maroq", "MQ50", 50, 179, 5), ("Maroq", "MQ65", 65, 305, 3)]
ENDINGS = ["A1", "B2", "C", "S", "20"]
CLAIMS = [("horizontal lines", "waagerechte Streifen", 14), ("vertical lines", "senkrechte Linien", 6), ("half screen dark", "halber Bildschirm dunkel", 7),
          ("sound no picture", "kein Bild, Ton ok", 16), ("no power", "geht nicht an", 13), ("stuck on logo", "bleibt beim Logo haengen", 8),
          ("no sound", "kein Ton", 4), ("cracked screen", "Display gebrochen", 5), ("untested", "ungeprüft", 20), ("customer return", "Kundenretoure", 14),
          ("patchy light", "Hintergrundbeleuchtung ungleichmäßig", 4), ("HDMI port loose", "HDMI-Buchse wackelt", 3)]
STAMP = datetime.datetime(2026, 1, 5, 8, 0, 0)


class Draw(random.Random):
    def set(self):
        maker, beginning, inches, price, _ = self.choices(FAMILIES, [f[4] for f in FAMILIES])[0]
        return maker, beginning + self.choice(ENDINGS), inches, round(price * self.uniform(2.0, 2.5))

    def claim(self, german=False):
        return self.choices(CLAIMS, [c[2] for c in CLAIMS])[0][1 if german else 0]

    def serial(self):
        return "".join(self.choice("ABCDEFGHKLMNPRSTUVWX") for _ in range(2)) + f"{self.randrange(10 ** 8):08d}"


def book():
    wb = Workbook()
    wb.properties.created = wb.properties.modified = STAMP
    wb.properties.creator = "seller"
    return wb, wb.active


def tidy(path, seed, n, title=None):
    r = Draw(seed)
    wb, ws = book()
    ws.title = "Sheet1"
    if title:
        ws.append([title])
        ws["A1"].font = Font(bold=True, size=14)
        ws.append([])
    ws.append(["Line", "Brand", "Model", "Size", "Serial", "Condition", "Retail"])
    for c in ws[ws.max_row]:
        c.font = Font(bold=True)
    for i in range(1, n + 1):
        maker, model, inches, price = r.set()
        ws.append([i, maker, model, f'{inches}"', r.serial(), r.claim(), price])
        ws.cell(ws.max_row, 7).number_format = "#,##0.00"
    for c, w in zip("ABCDEFG", (6, 12, 12, 7, 14, 22, 10)):
        ws.column_dimensions[c].width = w
    wb.save(path)


def harbour(path, seed, n):
    """118 sets as in the guide: a model never seen before, two rows that are no sets."""
    r = Draw(seed)
    wb, ws = book()
    ws.title = "Sheet1"
    ws.append(["Harbour sale 12 March - televisions, faulty, as seen"])
    ws.append([])
    ws.append(["No.", "Make", "Model no.", "Diag. in", "Reported fault", "Serial", "RRP EUR"])
    for i in range(1, n + 1):
        maker, model, inches, price = ("Vesper", "VQ65X", 65, 690) if i % 20 == 7 else r.set()
        ws.append([i, maker, model, inches, r.claim(), r.serial(), price])
    ws.append([n + 1, "Maroq", "SB200", None, "soundbar, no remote", r.serial(), 89])
    ws.append([None, None, None, None, "Total", None, f"=SUM(G4:G{n + 4})"])
    wb.save(path)


def german(path, seed, n):
    r = Draw(seed)
    out = io.StringIO()
    w = csv.writer(out, delimiter=";", lineterminator="\r\n")
    w.writerow(["Pos", "Hersteller", "Modell", "Diagonale", "Zustand", "Seriennummer", "UVP EUR"])
    for i in range(1, n + 1):
        maker, model, inches, price = r.set()
        size = r.choice([f"{inches} Zoll", f"{round(inches * 2.54)} cm", f"{inches},0"])
        w.writerow([i, maker, model, size, r.claim(True), r.serial(), f"{price + .99:,.2f}".replace(",", " ").replace(".", ",").replace(" ", ".")])
    w.writerow(["", "", "", "", "", "Summe", ""])
    open(path, "w", encoding="cp1252", newline="").write(out.getvalue())


def pallets(path, seed, n):
    """Two sheets, a title block, quantities, a subtotal a pallet."""
    r = Draw(seed)
    wb, cover = book()
    cover.title = "Cover"
    for line in ("Lindmark Partier", "Spring clearance", "All goods as they stand, no returns"):
        cover.append([line])
    for p in (1, 2):
        ws = wb.create_sheet(f"Pallet {p}")
        ws.append([f"PALLET {p} of 2"])
        ws.append(["collection from bay 4"])
        ws.append([])
        ws.append(["Qty", "Product", "Screen (cm)", "State", "Asking price each"])
        total = 0
        while total < n // 2:
            maker, model, inches, price = r.set()
            q = min(r.choice([1, 1, 1, 2, 3]), n // 2 - total)
            ws.append([f"{q} pcs" if r.random() < .3 else q, f"{maker} {model}", round(inches * 2.54), r.claim(), f"€ {price:.2f}"])
            total += q
        ws.append([total, "Subtotal", None, None, None])
        ws.column_dimensions["B"].width = 24
        ws.column_dimensions["D"].width = 24
    wb.save(path)


def ugly(path, seed, n):
    """Merged two-row header, one text column, a hidden row, page heads, a kitchen machine, damaged serials, notes."""
    r = Draw(seed)
    wb, ws = book()
    ws.title = "TW Feb"
    ws["A1"] = "TIDEWELL REMARKETING - STOCK LIST - CONFIDENTIAL"
    ws.merge_cells("A1:E1")
    ws["A1"].font = Font(bold=True, size=16)
    ws["A1"].alignment = Alignment(horizontal="center")
    ws.append([])
    ws.append(["Item", None, "Fault as told", "S/N", "Price"])
    ws.append(["#", "Description", None, None, "incl. box"])
    ws.merge_cells("A3:B3")
    for row in ws["A3:E4"]:
        for c in row:
            c.fill = PatternFill("solid", fgColor="FFD9D9D9")
            c.font = Font(bold=True)
    for i in range(1, n + 1):
        maker, model, inches, price = r.set()
        text = r.choice([f'{maker} {model} {inches}" LED TV', f'{inches} inch {maker} {model}', f'TV {maker.upper()} {model}, {inches}in'])
        serial = "1.23457E+14" if i % 17 == 0 else r.serial()
        ws.append([i, text, r.claim() + r.choice(["", "", ", no remote", " (box open)"]), serial, price if i % 13 else "ask"])
        if i % 25 == 0:
            ws.append([])
            ws.append(["#", "Description", "Fault as told", "S/N", "Price"])
    ws.append([n + 1, "Brennick kettle 1.7 l", "customer return", None, 19])
    ws.append([])
    ws.append(["* prices are what we hope for"])
    ws.row_dimensions[9].hidden = True
    ws.column_dimensions["B"].width = 34
    ws.column_dimensions["C"].width = 30
    wb.save(path)


def tabs(path, seed, n):
    r = Draw(seed)
    rows = ["item\tmake & model\tinches\tremarks\tserial"]
    for i in range(1, n + 1):
        maker, model, inches, _ = r.set()
        serial = "NB00000017" if i in (5, 30) else r.serial()
        rows.append(f"{i}\t{maker} {model}\t{inches}\t{r.claim()}\t{serial}")
    open(path, "w", encoding="utf-8-sig", newline="").write("\r\n".join(rows) + "\r\n")


def main():
    out = sys.argv[1]
    os.makedirs(out, exist_ok=True)
    p = lambda name: os.path.join(out, name)
    tidy(p("northquay-0108.xlsx"), 11, 64)
    german(p("greywharf-0115.csv"), 12, 58)
    with tempfile.TemporaryDirectory() as t:
        tidy(os.path.join(t, "eastmoor-0122.xlsx"), 13, 71, "EASTMOOR - week 4")
        subprocess.run(["soffice", "--headless", "--convert-to", "xls", "--outdir", out, os.path.join(t, "eastmoor-0122.xlsx")], check=True, stdout=subprocess.DEVNULL)
    pallets(p("lindmark-0203.xlsx"), 14, 60)
    tabs(p("northquay-0210.csv"), 15, 55)
    ugly(p("tidewell-0217.xlsx"), 16, 66)
    harbour(p("harbour-0312.xlsx"), 17, 118)


main()
