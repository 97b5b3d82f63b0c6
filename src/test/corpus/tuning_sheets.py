"""Tuning group: workbooks whose layout is the difficulty."""

from book import Col, Sheet, Truth, any_of, cm, expect, fill, header, table
from common import *
from words import NOMINAL_CM, tune
import writers as w


def letterhead(path):
    t, g = Truth("a letterhead with a small table of its own far above the header; a total without a word"), tune(201)
    sh = Sheet("Offer 5512")
    for r in (["LONGSHED LIQUIDATION"], ["Unit 7, The Old Tannery"], [], ["Offer:", 5512, None, "Valid until", {"date": "2026-04-30", "fmt": "dd-mmm-yyyy"}], ["Terms:", "EXW, payment in advance"], [],
              ["Pallet", "Sets", "Weight kg"], ["1", 11, 214], ["2", 9, 188], ["", 20, 402], [], ["Detailed list of goods"], ["(condition as stated by the returns desk)"]):
        sh.add(*r)
    cols = [Col(None, "Plt", lambda s, n: 1 if n < 12 else 2), Col("maker", "Brand name"), Col("model", "Model code"), Col("inches", "Screen", mark(" inch")), Col("serial", "Serial nr"), Col("claimed", "Condition"), Col("asking", "Net price", lambda s, n: {"v": s["asking"], "fmt": "#,##0.00"})]
    sets = g.sets(20)
    table(sh, t, cols, sets, True)
    t.note(sh, None, None, None, None, None, None, {"v": sum(s["asking"] for s in sets), "fmt": "#,##0.00"}, why="total")
    w.openpyxl_(path, [sh])
    return t


def french_binary(path):
    t, g = Truth("old binary, French, centimetres told by the header, a blank row after the header"), tune(202)
    sh = Sheet("Téléviseurs")
    cols = [Col(None, "Réf. interne", lambda s, n: f"A{n:04d}"), Col("maker", "Marque"), Col("model", "Modèle"), Col("inches", "Diag. (cm)", lambda s, n: NOMINAL_CM[int(s["inches"])]),
            Col("claimed", "Défaut constaté"), Col("serial", "N° de série"), Col("asking", "Prix HT", lambda s, n: {"v": s["asking"], "fmt": '#,##0.00" €"'})]
    sets = g.sets(17, "fr")
    for s in sets:
        s["want"] = dict(inches=cm(NOMINAL_CM[int(s["inches"])], int(s["inches"])))
    header(sh, t, cols, True)
    t.note(sh, why="blank")
    fill(sh, t, cols, sets)
    t.note(sh, None, None, None, None, None, "Total HT", sum(s["asking"] for s in sets), why="total")
    w.poi(path, [sh])
    return t


def units_row(path):
    t, g = Truth("the second header row holds only the units"), tune(203)
    sh = Sheet("TVs")
    sh.add("Make", "Model", "Size", "Serial", "Fault", "Price")
    sh.add(None, None, "(inch)", None, None, "(EUR)")
    t.head(sh, [1, 2], dict(maker="Make", model="Model", inches=["Size", "Size (inch)", "(inch)"], serial="Serial", claimed="Fault", asking=["Price", "Price (EUR)", "(EUR)"]))
    cols = [Col("maker", ""), Col("model", ""), Col("inches", "", whole), Col("serial", ""), Col("claimed", ""), Col("asking", "")]
    fill(sh, t, cols, g.sets(14))
    w.exceljs(path, [sh])
    return t


def needless_columns(path):
    t, g = Truth("columns that no field needs, some of which look like ones that do: box size, barcode, year, weight, serial count"), tune(204)
    sh = Sheet("export")
    cols = [Col(None, "Counter", count), Col(None, "Barcode", lambda s, n: {"v": 5901234000000 + n * 7, "fmt": "0"}), Col("maker", "Brand"), Col(None, "Year", lambda s, n: 2019 + n % 6), Col("model", "Model\nnumber"),
            Col(None, "Box size (cm)", lambda s, n: f"{NOMINAL_CM[int(s['inches'])] + 14} x 90 x 18"), Col("inches", "Screen\nsize (in.)", whole), Col(None, "Weight (kg)", lambda s, n: round(s["inches"] * 0.27, 1)), Col(None, "Resolution", constant("3840 x 2160")),
            Col(None, "Colour", constant("black")), Col("serial", "Serial  number"), Col(None, "Grade", lambda s, n: "ABC"[n % 3]), Col("claimed", "Fault  description"), Col(None, "Location", lambda s, n: f"B{n % 7}-{n}"), Col("asking", "Asking\nprice"), Col(None, "HDR", lambda s, n: n % 2 == 0)]
    table(sh, t, cols, g.sets(22), True)
    w.xlsxwriter_(path, [sh])
    return t


def merged_claims(path):
    t, g = Truth("merged cells: one claim and one price for several rows, title merged over all columns"), tune(205)
    sh = Sheet("Lots")
    sh.add("WEEKLY LOTS - PRICE PER SET")
    sh.merges.append("A1:F1")
    cols = [Col("maker", "Maker"), Col("model", "Model"), Col("inches", "Inches", whole), Col("serial", "S/N"), Col("claimed", "Defect"), Col("asking", "Price/set")]
    header(sh, t, cols, True)
    for k, code, words, price in ((3, "customer_return", "store return", 120.0), (1, "dead", "no pwr", 80.0), (4, "vertical_lines", "vert. lines LH side", 95.0), (2, "cracked", "screen broken", 40.0), (5, "untested", "not checked", 150.0)):
        sets = g.sets(k)
        first = sh.next
        for i, s in enumerate(sets):
            s.update(claimed=code, claimed_text=words, asking=price)
            if i:
                s["cells"] = {"claimed": None, "asking": None}
        fill(sh, t, cols, sets)
        if k > 1:
            sh.merges += [f"E{first}:E{sh.next - 1}", f"F{first}:F{sh.next - 1}"]
    w.poi(path, [sh])
    return t


def hidden_first(path):
    t, g = Truth("the first sheet is hidden; a summary by maker and a table of fees after the manifest"), tune(206)
    cols = [Col("model", "Model"), Col("maker", "Make"), Col("serial", "Serial"), Col("inches", 'Size"', whole), Col("claimed", "Issue"), Col("asking", "Reserve")]
    old, scrap = Sheet("draft", hidden=True), Truth("")
    table(old, scrap, cols, g.sets(6), True)
    t.allow_sheet(old, "hidden sheet")
    sh = Sheet("Manifest")
    sets = g.sets(16)
    table(sh, t, cols, sets, True)
    summary = Sheet("By maker")
    summary.add("Make", "Sets", "Share")
    for m in sorted({s["maker"] for s in sets}):
        summary.add(m, sum(s["maker"] == m for s in sets), {"v": sum(s["maker"] == m for s in sets) / 16, "fmt": "0%"})
    fees = Sheet("Fees")
    for r in (["Fee", "Per lot", "Per set"], ["Buyer's premium %", 12, None], ["Loading", 25, None], ["Storage from day 6", None, 0.5]):
        fees.add(*r)
    t.allow_sheet(summary, "not a manifest")
    t.allow_sheet(fees, "not a manifest")
    w.openpyxl_(path, [old, sh, summary, fees])
    return t


def five_pallets(path):
    t, g = Truth("five pallets, a sheet each, every one with its own total; a serial met again on another pallet"), tune(207)
    cols = [Col("maker", "Hersteller"), Col("model", "Modell"), Col("serial", "Seriennummer"), Col("inches", "Diagonale", mark(" Zoll")), Col("claimed", "Fehler"), Col("asking", "Preis")]
    sheets, first = [], None
    for p in range(1, 6):
        sh = Sheet(f"Palette {p}")
        sets = g.sets(4 + p % 3, "de")
        if p == 1:
            first = sets[2]
            first["may"] = "serial comes again"
        if p == 4:
            sets[1].update(serial=first["serial"], must="serial met before")
        table(sh, t, cols, sets, p == 1)
        t.note(sh, "Summe", None, None, None, f"{len(sets)} Stück", sum(s["asking"] for s in sets), why="total")
        sheets.append(sh)
    t.ignored = [i for i in t.ignored if i["why"] != "header again"]
    w.poi(path, sheets)
    return t


def carried_over(path):
    t, g = Truth("pallet headings merged across, subtotals, carried forward and brought forward"), tune(208)
    sh = Sheet("List")
    cols = [Col(None, "Item", count), Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", mark('"')), Col("serial", "Serial"), Col("claimed", "Notes"), Col("asking", "Unit price")]
    header(sh, t, cols, True)
    total = 0
    for p in (1, 2, 3):
        row = t.note(sh, f"Pallet no. {p} (48 x 40)", why="pallet heading")
        sh.merges.append(f"A{row}:G{row}")
        sets = g.sets(7)
        fill(sh, t, cols, sets, p * 7 - 6)
        sub = sum(s["asking"] for s in sets)
        total += sub
        t.note(sh, None, None, None, None, None, f"Subtotal pallet {p}", sub, why="subtotal")
        if p < 3:
            t.note(sh, None, None, None, None, None, "Carried forward", total, why="carried over")
            t.note(sh, None, None, None, None, None, "Brought forward", total, why="carried over")
    t.note(sh, None, "GRAND TOTAL", None, None, None, "21 pcs", total, why="total")
    t.note(sh, None, "Average per set", None, None, None, None, round(total / 21, 2), why="average")
    w.exceljs(path, [sh])
    return t


def plain_german(path):
    t, g = Truth("a plain list by a small JavaScript writer"), tune(209)
    sh = Sheet("Liste")
    table(sh, t, [Col("maker", "Marke"), Col("model", "Typ"), Col("inches", "Zoll", whole), Col("claimed", "Fehlerbeschreibung"), Col("serial", "Serial-Nr."), Col("asking", "EK-Preis")], g.sets(18, "de"), True)
    w.write_excel_file(path, [sh])
    return t


def dates_and_flags(path):
    t, g = Truth("dates and yes/no cells beside the fields; no serial column"), tune(210)
    sh = Sheet("Returns")
    cols = [Col(None, "Date in", lambda s, n: {"date": f"2026-02-{n:02d}", "fmt": "dd.mm.yyyy"}), Col("maker", "Make"), Col(None, "Box", lambda s, n: n % 3 != 0), Col("model", "Model"), Col("inches", "Diagonal (inches)", whole), Col("claimed", "Customer comment"), Col("asking", "RRP", lambda s, n: {"v": s["asking"], "fmt": "0.00"})]
    sets = g.sets(16)
    for s in sets:
        s["serial"] = None
    table(sh, t, cols, sets, True)
    w.write_excel_file(path, [sh])
    return t


def no_serials(path):
    t, g = Truth("Spanish, old binary by an office program, many ways to say that there is no serial"), tune(211)
    sh = Sheet("Hoja 1")
    cols = [Col("maker", "Marca"), Col("model", "Modelo"), Col("inches", "Pulgadas", whole), Col("serial", "N/S"), Col("claimed", "Estado"), Col("asking", "Precio ud.", lambda s, n: {"v": s["asking"], "fmt": "#,##0.00"})]
    sets = g.sets(18, "es")
    for i, blank in ((2, "N/A"), (5, "-"), (8, "none"), (11, "n/a"), (14, None)):
        sets[i].update(serial=None, cells={"serial": blank}, may="no serial")
    table(sh, t, cols, sets, True)
    w.libreoffice(path, [sh], "MS Excel 97")
    return t


def share_of_retail(path):
    t, g = Truth("asking price worked out from retail by the office program, both stored"), tune(212)
    sh = Sheet("Sheet1")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size in inches", whole), Col("claimed", "Problem"), Col(None, "MSRP", lambda s, n: s["asking"] * 4), Col("asking", "Asking price", lambda s, n: {"f": f"E{n + 1}*25%"}), Col("serial", "Serial")]
    sets = g.sets(15)
    table(sh, t, cols, sets, True)
    w.libreoffice(path, [sh])
    return t


def office_page(path):
    t, g = Truth("a web page by an office program saved under .xls"), tune(213)
    t.named = False
    sh = Sheet("Sheet1")
    cols = [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Inches", whole), Col("serial", "Serial no"), Col("claimed", "Status"), Col("asking", "Price", lambda s, n: {"v": s["asking"], "fmt": "#,##0.00"})]
    table(sh, t, cols, g.sets(12), True)
    w.libreoffice(path, [sh], "HTML (StarCalc)", kind="html")
    return t


def open_document_merged(path):
    t, g = Truth("OpenDocument with merged makers and a hidden sheet: read, or refused with what to do"), tune(214)
    sh, old = Sheet("Stock"), Sheet("old", hidden=True)
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Screen", mark('"')), Col("claimed", "Fault"), Col("asking", "Price"), Col("serial", "Serial")]
    header(sh, t, cols, True)
    for maker, k in (("Polestone", 3), ("Dunmarrow", 4)):
        sets = g.sets(k, makers=[maker])
        for s in sets[1:]:
            s["cells"] = {"maker": None}
        first = sh.next
        fill(sh, t, cols, sets)
        sh.merges.append(f"A{first}:A{sh.next - 1}")
    table(old, Truth(""), cols, g.sets(3))
    t.allow_sheet(old, "hidden sheet")
    t.exit = [0, 1, 3]
    w.libreoffice(path, [sh, old])
    return t


def two_languages(path):
    t, g = Truth("two sheets in two languages with unlike columns, old binary"), tune(215)
    a, b = Sheet("EN"), Sheet("FR")
    table(a, t, [Col("maker", "Manufacturer"), Col("model", "Part no."), Col("inches", "Size (inches)", whole), Col("claimed", "Description of fault"), Col("serial", "Serial"), Col("asking", "Sell price")], g.sets(8), True)
    sets = g.sets(8, "fr")
    for s in sets:
        s["want"] = dict(inches=cm(NOMINAL_CM[int(s["inches"])], int(s["inches"])))
    table(b, t, [Col("serial", "N° série"), Col("claimed", "Observation"), Col("maker", "Fabricant"), Col("model", "Réf. produit"), Col("asking", "Prix unitaire"), Col("inches", "Diagonale", lambda s, n: f"{NOMINAL_CM[int(s['inches'])]} cm")], sets)
    t.ignored = []
    w.libreoffice(path, [a, b], "MS Excel 97")
    return t


def system_1904(path):
    t, g = Truth("the other date system; models turned into dates; a date column that no field needs"), tune(216)
    sh = Sheet("List")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Inch", whole), Col("serial", "Serial"), Col("claimed", "Symptom"), Col("asking", "Bid from"), Col(None, "Returned on", lambda s, n: {"date": f"2025-11-{n:02d}", "fmt": "yyyy-mm-dd"})]
    sets = g.sets(14)
    for i, d, shown in ((2, "2032-07-01", "Jul-32"), (9, "2050-11-01", "Nov-50")):
        sets[i].update(cells={"model": {"date": d, "fmt": "mmm-yy"}}, must="model turned into a date")
        sets[i]["model"] = any_of(None, shown, d, d[:7], f"{int(d[5:7])}-{d[2:4]}", f"{d[5:7]}/{d[2:4]}", "/".join(reversed(d.split("-"))), ".".join(reversed(d.split("-"))))
    table(sh, t, cols, sets, True)
    w.xlsxwriter_(path, [sh], date_1904=True)
    return t


def text_formulas(path):
    t, g = Truth("formulas that give text, with stored values: models and claims joined from pieces"), tune(217)
    sh = Sheet("Calc")
    cols = [Col("maker", "Make"), Col("model", "Model", lambda s, n: {"f": f'CONCATENATE("{s["model"][:3]}","{s["model"][3:]}")'}), Col("inches", "Inches", lambda s, n: {"f": f"ROUND({s['inches'] * 2.54:.2f}/2.54,0)"}), Col("serial", "Serial"),
            Col("claimed", "Condition", lambda s, n: {"f": f'LOWER("{s["claimed_text"].upper()}")'}), Col("asking", "Ask", lambda s, n: {"f": f"SUM({s['asking'] - 10},10)"})]
    sets = g.sets(12)
    table(sh, t, cols, sets, True)
    w.poi(path, [sh], evaluate=True)
    return t


def stored_errors(path):
    t, g = Truth("stored error values in price, size, model and in a column that no field needs"), tune(218)
    sh = Sheet("Prices")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", whole), Col("serial", "SN"), Col("claimed", "Cond"), Col("asking", "Price", lambda s, n: {"f": f"G{n + 1}/2", "c": s["asking"]}), Col(None, "Cost", lambda s, n: s["asking"] * 2)]
    sets = g.sets(16)
    sets[1].update(cells={"asking": {"err": "#DIV/0!", "by": "1/0"}}, want={"asking": None}, must="error value")
    sets[4].update(cells={"asking": {"err": "#N/A", "by": "NA()"}}, want={"asking": None}, must="error value")
    sets[7].update(cells={"inches": {"err": "#NAME?", "by": "inches()"}}, want={"inches": None}, must="error value")
    sets[11].update(cells={"model": {"err": "#REF!", "by": "#REF!"}}, want={"model": None}, must="error value")
    sets[13].update(cells={"Cost": {"err": "#N/A", "by": "NA()"}, "asking": sets[13]["asking"]}, may="error value")
    table(sh, t, cols, sets, True)
    w.xlsxwriter_(path, [sh])
    return t


def rich_text(path):
    t, g = Truth("rich text in cells, spaces before and after, line breaks in claims"), tune(219)
    sh = Sheet("Rich")
    cols = [Col("maker", "  Make "), Col("model", "Model"), Col("inches", "Size (inch)", whole), Col("serial", "Serial"), Col("claimed", "Remarks"), Col("asking", "Price")]
    sets = g.sets(12)
    for i, s in enumerate(sets):
        words = s["claimed_text"]
        half = len(words) // 2
        s["cells"] = {"claimed": {"rich": [words[:half], words[half:]]}} if i % 3 == 0 else {"claimed": "\n".join(words.split(" ", 1)) + " "} if i % 3 == 1 else {"maker": f"  {s['maker']} ", "model": f"{s['model']}  "}
    table(sh, t, cols, sets, True)
    w.exceljs(path, [sh])
    return t


FILES = {
    "t01-letterhead.xlsx": letterhead, "t02-french-binary.xls": french_binary, "t03-units-row.xlsx": units_row, "t04-needless-columns.xlsx": needless_columns, "t05-merged-claims.xlsx": merged_claims,
    "t06-hidden-first.xlsx": hidden_first, "t07-five-pallets.xls": five_pallets, "t08-carried-over.xlsx": carried_over, "t09-plain-german.xlsx": plain_german, "t10-dates-and-flags.xlsx": dates_and_flags,
    "t11-no-serials.xls": no_serials, "t12-share-of-retail.xlsx": share_of_retail, "t13-office-page.xls": office_page, "t14-merged.ods": open_document_merged, "t15-two-languages.xls": two_languages,
    "t16-system-1904.xlsx": system_1904, "t17-text-formulas.xlsx": text_formulas, "t18-stored-errors.xlsx": stored_errors, "t19-rich-text.xlsx": rich_text,
}
