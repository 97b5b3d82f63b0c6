"""The held-out group: made before the reader and never used to tune it."""

from book import Col, Sheet, Truth, any_of, cm, expect, fill, header, table
from common import *
from words import NOMINAL_CM, held
import heldout_text as text
import hostile
import writers as w


def h01_title_notes(path):
    t, g = Truth("letterhead above, blank rows inside, conditions below; prices as text with a pound sign"), held(101)
    sh = Sheet("Stock list")
    sh.add("Saltmarsh Returns Depot")
    sh.add("Stock list for week 12", None, None, None, "Ref", "SRD-0098")
    sh.add("Contact: the yard office")
    sh.add()
    cols = [Col("asking", "Our price (ex VAT)", after("£ ", english)), Col("claimed", "Reported fault"), Col("inches", "Screen size", mark('"')),
            Col("model", "Model ref."), Col("maker", "Manufacturer"), Col("serial", "Serial no."), Col(None, "Shelf", lambda s, n: f"R{n % 4}-{n}")]
    sets = g.sets(24)
    sets[3]["asking"], sets[9]["asking"] = 1249.5, 1080.0
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:8])
    t.note(sh, why="blank")
    fill(sh, t, cols, sets[8:16], 9)
    t.note(sh, why="blank")
    t.note(sh, why="blank")
    fill(sh, t, cols, sets[16:], 17)
    t.note(sh, why="blank")
    t.note(sh, "Prices exclude VAT. Collection within 5 working days.")
    t.note(sh, "All goods are sold as seen; cracked panels are not collected back.")
    w.openpyxl_(path, [sh])
    return t


def h02_french_two_rows(path):
    t, g = Truth("two-row header with merged groups, sizes in cm by the header, unit and line price, carried-over totals"), held(102)
    sh = Sheet("Lot 7")
    sh.add("Lot 7 - téléviseurs à plat")
    sh.add()
    sh.add("Désignation", None, "Écran", "Série", "Quantité", "Prix", None, "État")
    sh.add("Marque", "Référence", "Diagonale (cm)", "N° de série", "Qté", "PU HT", "Total HT", "Panne déclarée")
    sh.merges += ["A3:B3", "F3:G3"]
    t.head(sh, [3, 4], dict(maker=["Marque", "Désignation Marque"], model=["Référence", "Désignation Référence"], inches=["Diagonale (cm)", "Écran Diagonale (cm)"],
                            serial=["N° de série", "Série N° de série"], claimed=["Panne déclarée", "État Panne déclarée"], asking=["PU HT", "Prix PU HT", "Prix"]))
    run = 0

    def rows(sets):
        nonlocal run
        for s in sets:
            nominal = int(s["inches"])
            n = len(s.get("serials", [1]))
            s["want"] = dict(inches=cm(NOMINAL_CM[nominal], nominal))
            row = sh.next
            serial = " ; ".join(s["serials"]) if "serials" in s else s["serial"]
            sh.add(s["maker"], s["model"], NOMINAL_CM[nominal], serial, n, {"v": s["asking"], "fmt": "#,##0.00 €"},
                   {"f": f"E{row}*F{row}", "c": n * s["asking"], "fmt": "#,##0.00 €"}, s["claimed_text"])
            expect(sh, t, row, s)
            run += n * s["asking"]

    sets = g.sets(18, "fr")
    sets[4], sets[13] = many(g, sets[4], 2), many(g, sets[13], 3)
    rows(sets[:9])
    t.note(sh, "Sous-total page 1", None, None, None, 10, None, run, why="subtotal")
    t.note(sh, "Report", None, None, None, None, None, run, why="carried over")
    rows(sets[9:])
    t.note(sh, "Total général HT", None, None, None, 21, None, run, why="total")
    w.xlsxwriter_(path, [sh])
    return t


def h03_display_formats(path):
    t, g = Truth("old binary: serials and models that keep their zeros by a display format, numbers stored as text"), held(103)
    sh = Sheet("Bestand")
    cols = [Col(None, "Pos.", count), Col("maker", "Fabrikat"), Col("model", "Artikel-Nr."), Col("serial", "SN"), Col("inches", "Zoll", lambda s, n: str(whole(s, n)) if n % 2 else whole(s, n)),
            Col("claimed", "Befund"), Col("asking", "VK netto", lambda s, n: {"v": s["asking"], "fmt": '#,##0.00 "EUR"'} if n % 3 else str(int(s["asking"])))]
    sets = g.sets(20, "de")
    for i, s in enumerate(sets):
        if i % 4 == 1:
            s["serial"] = f"{70010203 + i * 977:010d}"
            s["cells"] = {"serial": {"v": int(s["serial"]), "fmt": "0000000000"}}
        if i % 4 == 3:
            s["serial"] = str(880000000000 + i * 12345)
            s["cells"] = {"serial": int(s["serial"])}
        if i in (2, 7):
            s["model"] = f"{4300 + i:08d}"
            s.setdefault("cells", {})["model"] = {"v": int(s["model"]), "fmt": "00000000"}
        if i == 10:
            s["model"] = "5570"
            s.setdefault("cells", {})["model"] = 5570
    table(sh, t, cols, sets, True)
    w.poi(path, [sh])
    return t


def h04_pallets(path):
    t, g = Truth("cover, three pallets with columns in other orders and languages, spare parts, a hidden sheet"), held(104)
    cover = Sheet("Übersicht")
    for r in (["Angebot 2207"], ["Palette", "Geräte", "Gewicht kg"], ["A", 7, 141], ["B", 6, 133], ["C", 5, 98]):
        cover.add(*r)
    t.allow_sheet(cover, "not a manifest")
    a, b, c = Sheet("Pal A"), Sheet("Pal B"), Sheet("Pal C")
    a.add("Palette A", None, None, "geladen am", {"date": "2026-03-09", "fmt": "dd.mm.yyyy"})
    table(a, t, [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Größe", mark(" Zoll")), Col("claimed", "Fehlerbild"), Col("serial", "Serien-Nr"), Col("asking", "Preis/Stk")], g.sets(7, "de"), True)
    table(b, t, [Col("serial", "S/N"), Col("maker", "Brand"), Col("model", "Model"), Col("asking", "Price"), Col("inches", "Size (inch)", whole), Col("claimed", "Fault")], g.sets(6))
    c.add()
    c.add("Palet C")
    c.add("peso 98 kg")
    c.rows[1][0] = {"rich": ["Palet ", "C"]}
    table(c, t, [Col("model", "Modelo"), Col("maker", "Marca"), Col("inches", "Pulgadas", whole), Col("asking", "Precio unitario"), Col("serial", "Número de serie"), Col("claimed", "Avería")], g.sets(5, "es"))
    parts = Sheet("Ersatzteile")
    for r in (["Teil", "Anzahl"], ["Fernbedienungen gemischt", 31], ["Standfüße, Paar", 9], ["Netzkabel", 22]):
        parts.add(*r)
    t.allow_sheet(parts, "not a manifest")
    old = Sheet("alt", hidden=True)
    scrap = Truth("")
    table(old, scrap, [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Größe", mark(" Zoll")), Col("claimed", "Fehlerbild"), Col("serial", "Serien-Nr"), Col("asking", "Preis/Stk")], g.sets(4, "de"))
    t.allow_sheet(old, "hidden sheet")
    w.exceljs(path, [cover, a, b, c, parts, old])
    return t


def h05_merged_makers(path):
    t, g = Truth("a merged cell names the maker for all its rows; old binary written by an office program"), held(105)
    sh = Sheet("Hoja1")
    sh.add("RELACIÓN DE TELEVISORES")
    cols = [Col("maker", "Fabricante"), Col("model", "Referencia"), Col("inches", "Tamaño", mark("''")), Col("serial", "Nº serie"), Col("claimed", "Observaciones"), Col("asking", "PVP", lambda s, n: {"v": s["asking"], "fmt": "#,##0.00"})]
    header(sh, t, cols, True)
    n = 1
    for maker, k in (("Señalux", 5), ("Orvanta", 1), ("North Quay", 4), ("Fjordal", 6)):
        sets = g.sets(k, "es", makers=[maker])
        for s in sets[1:]:
            s["cells"] = {"maker": None}
        first = sh.next
        fill(sh, t, cols, sets, n)
        n += k
        if k > 1:
            sh.merges.append(f"A{first}:A{sh.next - 1}")
    w.libreoffice(path, [sh], "MS Excel 97")
    return t


def h06_open_document(path):
    t, g = Truth("an OpenDocument sheet: read, or refused with what to do"), held(106)
    sh = Sheet("Sheet1")
    table(sh, t, [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Inches", whole), Col("serial", "Serial"), Col("claimed", "Issue"), Col("asking", "Asking")], g.sets(12), True)
    w.libreoffice(path, [sh])
    t.exit = [0, 3]
    return t


def h14_quantities(path):
    t, g = Truth("odd spellings of quantities, lists of serials, impossible quantities, price for the line only"), held(114)
    sh = Sheet("Sheet1")
    cols = [Col("maker", "Maker"), Col("model", "Model"), Col("inches", "Diagonal", mark(" in")), Col("qty", "No. of units", lambda s, n: s["qty"]), Col("serial", "Serials", lambda s, n: s["list"]),
            Col("claimed", "Defect"), Col("asking", "Line total", lambda s, n: s["asking"] * len(s.get("serials", [1])))]
    sets = g.sets(15)
    spelled = ["2 pcs", "x3", 1, None, "4 units", "1 pc", "2", 3, "2x", 1]
    amounts = [2, 3, 1, 1, 4, 1, 2, 3, 2, 1]
    glue = [", ", "; ", "", "", "\n", "", " / ", ",", "\n", ""]
    for i in range(10):
        s = many(g, sets[i], amounts[i])
        s["qty"], s["list"] = spelled[i], glue[i].join(s["serials"])
        sets[i] = s
    s = many(g, sets[10], 3)
    s.update(qty=3, list=s["serials"][0] + ", " + s["serials"][1], must="fewer serials than sets")
    s["serials"] = [any_of(s["serials"][0], None), any_of(s["serials"][1], None), None]
    sets[10] = s
    s = many(g, sets[11], 2)
    third = g.serial()
    s.update(qty=2, list=", ".join(s["serials"] + [third]), must="more serials than sets")
    s["serials"] = [any_of(x, None) for x in s["serials"]]
    sets[11] = s
    for i, (q, why) in zip((12, 13, 14), ((0, "quantity zero"), (-2, "quantity negative"), ("several", "quantity not readable"))):
        sets[i].update(skip=True, must=why, cells={"maker": sets[i]["maker"], "model": sets[i]["model"], "inches": mark(" in")(sets[i], 0), "qty": q, "asking": 100, "claimed": "not tested"})
    absurd = g.sets(1)[0]
    sets.append(dict(skip=True, must="quantity absurd", cells={"maker": absurd["maker"], "model": absurd["model"], "inches": mark(" in")(absurd, 0), "qty": 5000, "asking": 100, "claimed": "not tested"}))
    table(sh, t, cols, sets, True)
    w.xlsxwriter_(path, [sh])
    return t


def h15_formulas(path):
    t, g = Truth("formulas without stored values; error values in the price and the size"), held(115)
    sh = Sheet("Offer")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Inch", whole), Col("serial", "Serial"), Col("claimed", "Fault"), Col(None, "Retail", lambda s, n: s["asking"] * 2),
            Col("asking", "Asking", lambda s, n: {"f": f"F{n + 1}*0.5"})]
    sets = g.sets(14)
    for s in sets:
        s.update(want={"asking": any_of(s["asking"], None)}, may="formula without a stored value")
    sets[5].update(cells={"asking": {"err": "#REF!"}}, want={"asking": None}, must="error value", may=None)
    sets[8].update(cells={"inches": {"err": "#VALUE!"}}, want={"inches": None, "asking": any_of(sets[8]["asking"], None)}, must="error value", may=None)
    table(sh, t, cols, sets, True)
    t.asking_total = any_of(round(sum(s["asking"] for s in sets if s is not sets[5]), 2), 0)
    w.openpyxl_(path, [sh])
    return t


def h16_mixed_goods(path):
    t, g = Truth("a returns pallet: televisions among other goods; inline strings; blank prices"), held(116)
    sh = Sheet("Retouren")
    cols = [Col(None, "LPN", lambda s, n: f"L{n:06d}"), Col(None, "Warengruppe", constant("TV")), Col("maker", "Hersteller"), Col("model", "Modell"), Col("inches", "Bildschirmdiagonale", mark('"')), Col("serial", "Seriennr."),
            Col("claimed", "Rücksendegrund"), Col("asking", "UVP", lambda s, n: {"v": s["asking"], "fmt": "0.00"})]
    sets = g.sets(16, "de")
    sets[2].update(cells={"asking": None}, want={"asking": None}, may="no price")
    sets[9].update(cells={"asking": "k.A."}, want={"asking": None}, may="no price")
    group = "Warengruppe"
    others = [not_tv("Orvanta", "KM-900", 59.0, LPN="L900", **{group: "Kaffeemaschine"}), not_tv("Teskora", "Bluetooth-Lautsprecher BL-2", 25.0, **{group: "Audio"}),
              not_tv("Mirqua", "MW-20 Mikrowelle", 70.0, **{group: "Küche"}), not_tv("Fjordal", "HDMI-Kabel 2 m", 4.0, **{group: "Zubehör"})]
    table(sh, t, cols, sets[:4] + others[:2] + sets[4:12] + others[2:] + sets[12:], True)
    w.poi(path, [sh], stream=True)
    return t


def h17_dates(path):
    t, g = Truth("models and a size that a spreadsheet program turned into dates"), held(117)
    sh = Sheet("Tabelle1")
    cols = [Col("maker", "Make"), Col("model", "Type"), Col("serial", "Serial"), Col("inches", "Size", whole), Col("claimed", "State"), Col("asking", "Price"),
            Col(None, "Received", lambda s, n: {"date": f"2026-01-{n:02d}", "fmt": "dd/mm/yyyy"})]
    sets = g.sets(15)
    for i, d in ((3, "2043-10-01"), (8, "2055-03-01")):
        sets[i].update(cells={"model": {"date": d, "fmt": "mmm-yy"}}, must="model turned into a date")
        sets[i]["model"] = ANY_MODEL
    sets[11].update(cells={"inches": {"date": "2026-05-05", "fmt": "d-mmm"}}, want={"inches": None}, must="size turned into a date")
    table(sh, t, cols, sets, True)
    w.exceljs(path, [sh], date1904=True)
    return t


ANY_MODEL = any_of(None, "Oct-43", "Mar-55", "2043-10-01", "2055-03-01", "10-43", "3-55", "43-10", "10/43", "01/10/2043", "01/03/2055", "01.10.2043", "01.03.2055")


def h18_three_tables(path):
    t, g = Truth("three tables in one sheet, each with its own header, order and language; a gap between them"), held(118)
    sh = Sheet("Mix")
    t.note(sh, "LOT A - English stock", why="heading")
    table(sh, t, [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Size (in)", whole), Col("claimed", "Problem"), Col("serial", "SN"), Col("asking", "Each")], g.sets(6), True)
    t.note(sh, "Total lot A", None, None, None, None, sum(s["asking"] for s in t.sets), why="total")
    t.note(sh, why="blank")
    t.note(sh, "LOT B - Ware aus Deutschland", why="heading")
    table(sh, t, [Col("serial", "Serien-Nr."), Col("maker", "Hersteller"), Col("model", "Modell"), Col("asking", "Preis"), Col("inches", "Zoll", whole), Col("claimed", "Defekt")], g.sets(6, "de"))
    t.note(sh, why="blank")
    t.note(sh, "LOT C", why="heading")
    t.note(sh, "--------", "--------", "--------", why="rule of dashes")
    table(sh, t, [Col("maker", "Marque"), Col("claimed", "Défaut"), Col("model", "Modèle"), Col("inches", "Pouces", whole), Col("asking", "Prix"), Col("serial", "N° série")], g.sets(6, "fr"))
    t.note(sh, "Average price", None, None, None, 412.5, why="average")
    w.xlsxwriter_(path, [sh])
    return t


def h21_strange_text(path):
    t, g = Truth("text that looks like a formula, soft hyphens, hard spaces, combining marks, right-to-left marks, a very long remark"), held(121)
    sh = Sheet("Lot")
    cols = [Col("maker", "Brand"), Col("model", "Model\nNo."), Col("inches", "Size  (in)", whole), Col("serial", "Serial"), Col("claimed", "Condition"), Col("asking", "Price")]
    sets = g.sets(14)
    sets[0].update(maker="Éclarion", cells={"maker": "E\u0301clarion"})
    sets[1].update(claimed_text="=HYPERLINK(\"http://files.invalid\",\"no sound at all\")", claimed="no_sound")
    sets[2].update(claimed_text="+dead, does not power on", claimed="dead")
    sets[3].update(claimed_text="@panel cracked", claimed="cracked")
    sets[4].update(claimed_text="-no audio, picture fine", claimed="no_sound")
    sets[5].update(cells={"maker": "North\u00a0Quay"}, maker="North Quay", model="NQ55LA", inches=55.0)
    sets[6].update(claimed_text="boot loop. " + "Seen on the bench of the previous owner. " * 300, claimed="boot_loop")
    sets[6]["want"] = {"claimed_text": "boot loop."}
    sets[7].update(cells={"claimed": "no\u00a0picture but sound works"}, claimed="no_picture", want={"claimed_text": "sound works"})
    sets[8].update(cells={"claimed": "un\u00adtested"}, claimed="untested", want={"claimed_text": any_of("un\u00adtested", "untested")})
    sets[9].update(cells={"serial": f"\u200e{sets[9]['serial']}"}, want={"serial": any_of(sets[9]["serial"], "\u200e" + sets[9]["serial"])})
    header(sh, t, cols, True)
    fill(sh, t, cols, sets)
    w.xlsxwriter_(path, [sh])
    return t


def h22_filtered(path):
    t, g = Truth("rows hidden by a filter, a hidden column, header met again on each page, zero and negative sizes"), held(122)
    sh = Sheet("Inventory")
    cols = [Col(None, "#", count), Col("maker", "Make"), Col(None, "Cost code", lambda s, n: f"C{n:03d}"), Col("model", "Model"), Col("inches", "Screen in.", whole), Col("serial", "Serial No"), Col("claimed", "Status"), Col("asking", "Ask $")]
    sets = g.sets(24)
    sets[6].update(cells={"inches": 0}, want={"inches": None}, must="not a screen size")
    sets[14].update(cells={"inches": -55}, want={"inches": None}, must="not a screen size")
    sets[19].update(cells={"inches": 550}, want={"inches": None}, must="not a screen size")
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:8])
    t.note(sh, "Page 1 of 3", why="page head")
    header(sh, t, cols)
    fill(sh, t, cols, sets[8:16], 9)
    t.note(sh, "Page 2 of 3", why="page head")
    header(sh, t, cols)
    fill(sh, t, cols, sets[16:], 17)
    sh.hidden_rows += [3, 4, 13, 14, 15]
    sh.hidden_cols.append("C")
    w.openpyxl_(path, [sh])
    return t


FILES = {
    "h01-title-notes.xlsx": h01_title_notes, "h02-french-two-rows.xlsx": h02_french_two_rows, "h03-display-formats.xls": h03_display_formats,
    "h04-pallets.xlsx": h04_pallets, "h05-merged-makers.xls": h05_merged_makers, "h06-open-document.ods": h06_open_document,
    "h07-french-hard-spaces.csv": text.h07_french_csv, "h08-bad-records.csv": text.h08_bad_records, "h09-big-endian.txt": text.h09_utf16_big_endian,
    "h10-tabs.xls": text.h10_tabs_as_xls, "h11-web-spans.xls": text.h11_html_spans, "h12-xml-table.xls": text.h12_xml_table, "h13-pipes.csv": text.h13_pipe_descriptions,
    "h14-quantities.xlsx": h14_quantities, "h15-formulas.xlsx": h15_formulas, "h16-mixed-goods.xlsx": h16_mixed_goods, "h17-dates.xlsx": h17_dates,
    "h18-three-tables.xlsx": h18_three_tables, "h19-swiss.csv": text.h19_swiss, "h20-words.csv": text.h20_words, "h21-strange-text.xlsx": h21_strange_text,
    "h22-filtered.xlsx": h22_filtered, "h23-no-size.csv": text.h23_no_size,
    "h24-password.xlsx": lambda p: hostile.password(p, held(124)), "h25-page-description.xlsx": hostile.pdf,
    "h26-torn.xlsx": lambda p: hostile.torn(p, held(126)), "h27-no-header.csv": hostile.prose, "h28-header-only.xlsx": hostile.header_only,
    "h29-nul-and-quote.csv": lambda p: hostile.nul_and_quote(p, held(129)), "h30-empty.csv": hostile.empty,
}
