"""The held-out group: made before the reader and never used to tune it."""

from book import Col, Sheet, Truth, any_of, cm, expect, fill, header, table
from common import *
from words import NOMINAL_CM, held
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


def h07_french_csv(path):
    t, g = Truth("windows-1252, first line sep=;, hard spaces for thousands, euro sign after, French", named=False), held(107, price=lambda r, s: s * r.randint(9, 40) + 0.9)
    sh = Sheet("")
    cols = [Col(None, "Palette", lambda s, n: f"P{1 + n // 12}"), Col("maker", "Fabricant"), Col("model", "Modèle"), Col("inches", "Taille", lambda s, n: s.get("size")), Col("claimed", "Commentaire"),
            Col("serial", "Numéro de série"), Col("asking", "Prix de vente", after("", french("\u00a0"), " €"))]
    sets = g.sets(26, "fr")
    for i, s in enumerate(sets):
        n = int(s["inches"])
        if i % 3 == 0:
            s["size"], s["want"] = f"{NOMINAL_CM[n]} cm", dict(inches=cm(NOMINAL_CM[n], n))
        else:
            s["size"] = f"{n} pouces" if i % 3 == 1 else f'{n}"'
    table(sh, t, cols, sets, True)
    t.note(sh, None, None, None, None, None, "TOTAL", f"{sum(s['asking'] for s in sets):.2f} €".replace(".", ","), why="total")
    t.line_shift = 1
    w.text(path, sh.rows, ";", "cp1252", "\r\n", before="sep=;\r\n")
    return t


def h08_bad_records(path):
    t, g = Truth("records with too many and too few fields, serials damaged by a spreadsheet program, the same serial twice", named=False), held(108)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model Number"), Col("inches", "Size", mark(" inch")), Col("serial", "Serial Number"), Col("claimed", "Condition notes"), Col("asking", "Wholesale price", after("$", english))]
    sets = g.sets(20)
    sets[2].update(asking=1305.0)
    sets[4].update(cells={"serial": "8.8012E+13"}, want={"serial": None}, must="serial lost digits")
    sets[5].update(cells={"serial": "8.8012E+13"}, want={"serial": None}, must="serial lost digits")
    sets[11].update(serial=sets[1]["serial"], must="serial met before")
    sets[1]["may"] = "serial comes again"
    sets[15].update(serial=f" {sets[1]['serial'].lower()} ", must="serial met before")
    sets[15]["cells"] = {"serial": sets[15]["serial"]}
    sets[15]["want"] = {"serial": sets[15]["serial"].strip()}
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:7])
    for record in (["North Quay", "NQ55L", "Silver", "55 inch", g.serial(), "no sound at all", "$310.00"], ["Fjordal", "FJ.43.U7", "43 inch"]):
        row = sh.add(*record)
        t.report(sh, row, "number of fields")
        t.sets.append({"line": row, "maker": record[0], "model": any_of(record[1], "Silver", None), "inches": any_of(55.0, 43.0, None), "serial": any_of(record[4] if len(record) > 4 else None, None),
                       "claimed": any_of("no_sound", "untested", "other"), "asking": any_of(310.0, None), "optional": True})
    fill(sh, t, cols, sets[7:], 8)
    t.sets_total = any_of(20, 21, 22)
    w.text(path, sh.rows, eol="\r\n", encoding="utf-8-sig")
    return t


def h09_utf16_big_endian(path):
    t, g = Truth("UTF-16BE with a byte order mark, tabs, Spanish headers over English words and back", named=False), held(109)
    sh = Sheet("")
    cols = [Col("model", "Modelo"), Col("maker", "Marca"), Col("serial", "Serie"), Col("inches", "Pantalla (pulg.)", whole), Col("claimed", "Fallo / Fault"), Col("asking", "Precio", german)]
    sets = g.sets(9, "es") + g.sets(9, "en")
    sets[6]["asking"] = 1200.0
    sets[6]["cells"] = {"asking": "1.200"}
    table(sh, t, cols, sets, True)
    w.text(path, sh.rows, "\t", "utf-16-be", "\r\n", before="\ufeff")
    return t


def h10_tabs_as_xls(path):
    t, g = Truth("tab-separated text in windows-1252 saved under .xls; lines that are no television; blank lines", named=False), held(110)
    sh = Sheet("")
    cols = [Col("maker", "Hersteller"), Col("model", "Typenbezeichnung"), Col("serial", "Geräte-Nr."), Col("inches", "Bildschirm", lambda s, n: f"{NOMINAL_CM[int(s['inches'])]} cm"),
            Col("claimed", "Mängel"), Col("asking", "Stückpreis", after("", german, " €"))]
    sets = g.sets(16, "de", makers=["Rüstvik", "Fjordal", "Orvanta", "Señalux"])
    for s in sets:
        n = int(s["inches"])
        s["want"] = dict(inches=cm(NOMINAL_CM[n], n))
    extras = [not_tv("Rüstvik", "Soundbar SB-21", "89,00 €", serial="RS221", claimed="ungetestet"),
              not_tv("Fjordal", "Wandhalterung 32-65 Zoll", "12,50 €"),
              not_tv("Orvanta", "Wasserkocher WK-17", "9,90 €", claimed="Retoure")]
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:5] + extras[:1] + sets[5:9])
    t.note(sh, why="blank")
    fill(sh, t, cols, extras[1:] + sets[9:])
    w.text(path, sh.rows, "\t", "cp1252", "\r\n")
    return t


def h11_html_spans(path):
    t, g = Truth("a web page's table saved under .xls: rowspan for the maker, th, br, entities, an attribute that names a remote file", named=False), held(111)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", 'Screen (")', whole), Col("serial", "Serial #"), Col("claimed", "Comments"), Col("asking", "Offer price")]
    title = sh.add("Lot 31")
    row = sh.add(*[c.header for c in cols])
    t.head(sh, row, dict(maker="Brand", model="Model", inches='Screen (")', serial="Serial #", claimed="Comments", asking="Offer price"))
    body = []
    for maker, k in (("O'Dwyle", 3), ("Éclarion", 4), ("Mirqua", 2), ("Teskora", 5)):
        for i, s in enumerate(g.sets(k, makers=[maker])):
            sh.add()
            expect(sh, t, len(sh.rows), s)
            name = maker.replace("É", "&Eacute;").replace("'", "&#39;")
            words = s["claimed_text"].replace(" ", "<br/>", 1) if i == 1 else f'<a href="http://files.invalid/x">{s["claimed_text"]}</a>'
            cells = ([f'<td rowspan="{k}"><b>{name}</b></td>'] if i == 0 else []) + [
                f"<td>{s['model']}</td><td align=right>{whole(s, 0)}</td><td>{s['serial']}&nbsp;</td><td>{words}</td><td>&pound;{english(s, 0)}</td>"]
            body.append("<tr>" + "".join(cells) + "</tr>")
    page = ["<!DOCTYPE html><html><head><meta charset='utf-8'><link rel=stylesheet href='http://files.invalid/s.css'><title>Lot 31</title></head><body>",
            "<script>var cells = '<td>no</td>';</script><table><thead>", "<tr><th colspan=6>Lot 31</th></tr>",
            "<tr>" + "".join(f"<th>{c.header.replace(chr(34), '&quot;')}</th>" for c in cols) + "</tr></thead><tbody>", *body, "</tbody></table></body></html>"]
    path.write_text("\n".join(page), encoding="utf-8")
    return t


def h12_xml_table(path):
    t, g = Truth("an XML table of 2003 under .xls, rows skipped by index, merged cells: read, or refused with what to do"), held(112)
    sh = Sheet("Liste")
    sh.add("Restposten")
    sh.add()
    cols = [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Zoll", whole), Col("claimed", "Zustand"), Col("serial", "Seriennummer"), Col("asking", "Preis")]
    header(sh, t, cols, True)
    fill(sh, t, cols, g.sets(6, "de"))
    t.note(sh, why="blank")
    fill(sh, t, cols, g.sets(6, "de"))
    sh.merges.append("A1:F1")
    w.spreadsheetml(path, [sh])
    t.exit = [0, 3]
    return t


def h13_pipe_descriptions(path):
    t, g = Truth("one description holds maker, model, size and claim; pipes between fields; no serial", named=False), held(113)
    sh = Sheet("")
    sh.add("Ref", "Item description", "Units", "Ask")
    t.head(sh, 1, dict(maker="Item description", model="Item description", inches="Item description", claimed="Item description", serial=[None], asking="Ask"))
    forms = ['{maker} {model} {n}" TV, {text}', "{n} inch {maker} {model} television - {text}", "{maker} {model} Smart TV {n}in ({text})", "TV {maker} {model} / {n}\" / {text}"]
    sets = g.sets(20, makers=["Orvanta", "North Quay", "Fjordal", "Mirqua", "Señalux"])
    for i, s in enumerate(sets):
        s["serial"] = None
        if i == 7:
            row = sh.add("R900", "Fjordal HT-5 home cinema speakers, boxed", 1, "75.00")
            t.report(sh, row, "not a television")
        if i == 12:
            row = sh.add("R901", "Wall bracket for 40-65 inch, tilting", 1, "8.00")
            t.report(sh, row, "not a television")
        row = sh.add(f"R{i}", forms[i % 4].format(n=int(s["inches"]), text=s["claimed_text"], **s), 1, plain(s, 0))
        expect(sh, t, row, s)
    w.text(path, sh.rows, "|")
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


def h19_swiss(path):
    t, g = Truth("apostrophes for thousands, currency before, unit price and list price; latin-1", named=False), held(119, price=lambda r, s: s * r.randint(8, 30) + 0.5)
    sh = Sheet("")
    cols = [Col("maker", "Marke"), Col("model", "Gerätetyp"), Col("inches", "Diagonale in cm", lambda s, n: NOMINAL_CM[int(s["inches"])]), Col("claimed", "Bemerkung"), Col(None, "Listenpreis", lambda s, n: f"CHF {s['asking'] * 2:,.2f}".replace(",", "'")),
            Col("asking", "Angebotspreis", after("CHF ", swiss)), Col("serial", "Fabriknummer")]
    sets = g.sets(22, "de")
    for s in sets:
        n = int(s["inches"])
        s["want"] = dict(inches=cm(NOMINAL_CM[n], n))
    sets[13].update(cells={"serial": "keine"}, want={**sets[13]["want"], "serial": None}, may="no serial")
    sets[17].update(cells={"serial": "-"}, want={**sets[17]["want"], "serial": None}, may="no serial")
    table(sh, t, cols, sets, True)
    w.text(path, sh.rows, ";", "latin-1", always=True)
    return t


def h20_words(path):
    t, g = Truth("state, fault and remarks in three columns, four languages, negations, several symptoms", named=False), held(120)
    sh = Sheet("")
    cols = [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Size", mark('"')), Col("claimed", "State", lambda s, n: s["say"][0]), Col("claimed", "Fault", lambda s, n: s["say"][1]),
            Col("claimed", "Remarks", lambda s, n: s["say"][2]), Col("serial", "Serial"), Col("asking", "Price", plain)]
    said = [
        (("customer return", "does not power on", ""), "dead"),
        (("untested", "", "screen has a crack, lower left"), "cracked"),
        (("working", "", "sound OK, remote missing"), any_of("working", "other")),
        (("Retoure", "kein Bruch, senkrechte Linien", ""), "vertical_lines"),
        (("retour client", "écran non cassé, pas de son", ""), "no_sound"),
        (("devolución", "sin golpes, no enciende", ""), "dead"),
        (("return", "vertical lines", "also cracked glass"), "cracked"),
        (("return", "no lines, no cracks, sound but no picture", ""), "no_picture"),
        (("return", "boot loop", "no sound"), any_of("boot_loop", "no_sound")),
        (("", "lines on screen", ""), any_of("horizontal_lines", "vertical_lines", "other")),
        (("not working", "", ""), any_of("dead", "other", "untested")),
        (("", "", ""), any_of("untested", "other")),
        (("untested", "", "box damaged"), any_of("untested", "other")),
        (("nicht getestet", "", "Karton beschädigt"), any_of("untested", "other")),
        (("fonctionne", "", "aucune ligne, aucune fissure"), "working"),
        (("probado", "sin rayas, sin roturas, zona inferior oscura", ""), "dim_patchy"),
        (("A", "half the picture missing, not broken", ""), "half_screen"),
        (("B", "powers on, no picture, has sound", "base missing"), "no_picture"),
        (("C", "picture good, sound good, screen flickers", ""), "other"),
        (("tested", "keeps restarting", "glass intact"), "boot_loop"),
        (("getestet", "Ton ok, Bild flackert", "Glas unbeschädigt"), "other"),
        (("testé", "pas de fissure, moitié droite noire", ""), "half_screen"),
    ]
    sets = g.sets(len(said))
    for s, (say, code) in zip(sets, said):
        s.update(say=say, claimed=code, claimed_text=any_of(*[x for x in say if x]) if any(say) else None)
        if not any(say):
            s["may"] = "no claim"
    table(sh, t, cols, sets, True)
    t.columns["claimed"] += ["State", "Fault", "Remarks", "State + Fault", "Fault + Remarks"]
    w.text(path, sh.rows, eol="\r\n")
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


def h23_no_size(path):
    t, g = Truth("no size column: only the model tells; a set without maker, one without model", named=False), held(123)
    sh = Sheet("")
    cols = [Col("maker", "brand"), Col("model", "model"), Col("serial", "serial"), Col("claimed", "symptom"), Col("asking", "ask", plain)]
    sets = g.sets(15, makers=["Orvanta", "Teskora", "Mirqua", "North Quay"])
    for s in sets:
        s.update(want={"inches": any_of(s["inches"], None)}, may="no size")
    sets[4].update(cells={"maker": None}, want={**sets[4]["want"], "maker": None}, must="no maker", may=None)
    sets[10].update(cells={"model": None}, want={"model": None, "inches": None}, must="no model", may=None)
    table(sh, t, cols, sets, True)
    t.columns["inches"] = [None, "model"]
    w.text(path, sh.rows)
    return t


FILES = {
    "h01-title-notes.xlsx": h01_title_notes, "h02-french-two-rows.xlsx": h02_french_two_rows, "h03-display-formats.xls": h03_display_formats,
    "h04-pallets.xlsx": h04_pallets, "h05-merged-makers.xls": h05_merged_makers, "h06-open-document.ods": h06_open_document,
    "h07-french-hard-spaces.csv": h07_french_csv, "h08-bad-records.csv": h08_bad_records, "h09-big-endian.txt": h09_utf16_big_endian,
    "h10-tabs.xls": h10_tabs_as_xls, "h11-web-spans.xls": h11_html_spans, "h12-xml-table.xls": h12_xml_table, "h13-pipes.csv": h13_pipe_descriptions,
    "h14-quantities.xlsx": h14_quantities, "h15-formulas.xlsx": h15_formulas, "h16-mixed-goods.xlsx": h16_mixed_goods, "h17-dates.xlsx": h17_dates,
    "h18-three-tables.xlsx": h18_three_tables, "h19-swiss.csv": h19_swiss, "h20-words.csv": h20_words, "h21-strange-text.xlsx": h21_strange_text,
    "h22-filtered.xlsx": h22_filtered, "h23-no-size.csv": h23_no_size,
    "h24-password.xlsx": lambda p: hostile.password(p, held(124)), "h25-page-description.xlsx": hostile.pdf,
    "h26-torn.xlsx": lambda p: hostile.torn(p, held(126)), "h27-no-header.csv": hostile.prose, "h28-header-only.xlsx": hostile.header_only,
    "h29-nul-and-quote.csv": lambda p: hostile.nul_and_quote(p, held(129)), "h30-empty.csv": hostile.empty,
}
