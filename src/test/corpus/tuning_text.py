"""Tuning group: delimited text, web pages and XML tables."""

from book import Col, Sheet, Truth, any_of, cm, expect, fill, header, table
from common import *
from words import NOMINAL_CM, tune
import writers as w


def german_bom(path):
    t, g = Truth("UTF-8 with a byte order mark, semicolons, quantities, unit and line price, cm and Zoll by turns", named=False), tune(240)
    sh = Sheet("")
    cols = [Col(None, "Palette", lambda s, n: f"P{1 + n // 8}"), Col("maker", "Hersteller"), Col("model", "Modellnummer"), Col("inches", "Bildschirmgröße", lambda s, n: s["size"]), Col("qty", "Anzahl", lambda s, n: s["n"]),
            Col("claimed", "Bemerkungen"), Col("serial", "Seriennr.", lambda s, n: ", ".join(s["serials"])), Col("asking", "Stückpreis €", german), Col(None, "Summe €", lambda s, n: german({"asking": s["asking"] * s["n"]}, n))]
    sets = g.sets(18, "de")
    for i, s in enumerate(sets):
        n = 2 if i in (3, 11) else 1
        sets[i] = s = many(g, s, n)
        k = int(s["inches"])
        s.update(n=n, size=f"{NOMINAL_CM[k]}cm" if i % 2 else f"{k} Zoll")
        if i % 2:
            s["want"] = dict(inches=cm(NOMINAL_CM[k], k))
    table(sh, t, cols, sets, True)
    t.note(sh, None, None, None, "Gesamt", 20, None, None, None, german({"asking": sum(s["asking"] * s["n"] for s in sets)}, 0), why="total")
    w.text(path, sh.rows, ";", "utf-8-sig", "\r\n")
    return t


def narrow_spaces(path):
    t, g = Truth("commas between fields, French numbers in quotes with narrow no-break spaces", named=False), tune(241, price=lambda r, s: s * r.randint(8, 45) + 0.5)
    sh = Sheet("")
    cols = [Col("maker", "Marque"), Col("model", "Référence"), Col("serial", "N° de série"), Col("inches", "Diagonale (pouces)", whole), Col("claimed", "État"), Col("asking", "Prix (€)", french("\u202f"))]
    table(sh, t, cols, g.sets(19, "fr"), True)
    w.text(path, sh.rows)
    return t


def latin_spanish(path):
    t, g = Truth("latin-1, commas between fields, decimal commas in quotes, Spanish", named=False), tune(242)
    sh = Sheet("")
    cols = [Col(None, "Nº", count), Col("model", "Modelo"), Col("maker", "Fabricante"), Col("inches", "Tamaño (pulgadas)", whole), Col("claimed", "Descripción de la avería"), Col("serial", "Núm. de serie"), Col("asking", "Precio unidad", german)]
    table(sh, t, cols, g.sets(16, "es"), True)
    w.text(path, sh.rows, ",", "latin-1", "\r\n")
    return t


def little_endian_quotes(path):
    t, g = Truth("UTF-16LE, tabs, all fields in quotes, line feeds only, quotes doubled for inches", named=False), tune(243)
    sh = Sheet("")
    cols = [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Size", mark('"')), Col("claimed", "Comment"), Col("serial", "Serial"), Col("asking", "Unit price", english)]
    table(sh, t, cols, g.sets(15), True)
    w.text(path, sh.rows, "\t", "utf-16-le", "\n", always=True, before="\ufeff")
    return t


def serial_slashes(path):
    t, g = Truth("tabs, serials divided by slashes, too many and too few of them, quantity in the last column", named=False), tune(244)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Inches", whole), Col("serial", "Serials", lambda s, n: s["list"]), Col("claimed", "Defects"), Col("asking", "Price each", plain), Col("qty", "QTY", lambda s, n: len(s["serials"]))]
    sets = g.sets(12)
    for i, s in enumerate(sets):
        sets[i] = s = many(g, s, 1 + i % 3)
        s["list"] = " / ".join(s["serials"])
    s = sets[5]
    s.update(list=" / ".join(s["serials"] + ["ZZ000000001A"]), must="more serials than sets", serials=[any_of(x, None) for x in s["serials"]])
    s = sets[8]
    s.update(list=s["serials"][0], must="fewer serials than sets", serials=[any_of(s["serials"][0], None), None, None])
    table(sh, t, cols, sets, True)
    w.text(path, sh.rows, "\t")
    return t


def quoted_newlines(path):
    t, g = Truth("line breaks inside quotes, in the header too; blank lines between records", named=False), tune(245)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model\r\nnumber"), Col("inches", "Screen\r\nsize", mark(" in")), Col("serial", "Serial"), Col("claimed", "Condition\r\nreport", lambda s, n: s["claimed_text"] + "\r\nchecked at dock" if n % 2 else s["claimed_text"]), Col("asking", "Price", plain)]
    sets = g.sets(14, codes=["dead", "cracked", "no_sound", "vertical_lines", "boot_loop", "half_screen"])
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:5])
    t.note(sh, why="blank")
    t.note(sh, why="blank")
    fill(sh, t, cols, sets[5:])
    w.text(path, sh.rows, eol="\r\n")
    return t


def carriage_returns(path):
    t, g = Truth("lines end in a carriage return alone", named=False), tune(246)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size (inches)", whole), Col("claimed", "Fault"), Col("serial", "Serial"), Col("asking", "Ask", plain)]
    table(sh, t, cols, g.sets(12), True)
    w.text(path, sh.rows, eol="\r")
    return t


def separator_line(path):
    t, g = Truth("first line sep=; under a byte order mark; a title before the header", named=False), tune(247)
    sh = Sheet("")
    sh.add("Restpostenliste KW 14")
    sh.add()
    cols = [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Zoll", whole), Col("claimed", "Fehler"), Col("serial", "Serien-Nr."), Col("asking", "Preis", after("", german, " EUR"))]
    table(sh, t, cols, g.sets(14, "de"), True)
    t.line_shift = 1
    w.text(path, sh.rows, ";", "utf-8-sig", "\r\n", before="sep=;\r\n")
    return t


def descriptions(headers, forms, lang, seed, about, others=(), sep=";", encoding="utf-8", centimetres=False):
    def make(path):
        t, g = Truth(about, named=False), tune(seed)
        sh = Sheet("")
        sh.add(*headers)
        t.head(sh, 1, dict(maker=headers[1], model=headers[1], inches=headers[1], claimed=headers[1], serial=[None], asking=headers[2]))
        for i, s in enumerate(g.sets(16, lang, makers=["Polestone", "Sundrake", "Vantrek", "Dunmarrow"])):
            s["serial"] = None
            if i in (5, 9, 13) and others:
                row = sh.add(f"X{i}", others[i // 4 - 1], "10,00")
                t.report(sh, row, "not a television")
            n = int(s["inches"])
            form = forms[i % len(forms)]
            if "{cm}" in form:
                s["want"] = dict(inches=cm(NOMINAL_CM[n], n))
            row = sh.add(f"A{i}", form.format(n=n, cm=NOMINAL_CM[n], text=s["claimed_text"], **s), german(s, 0))
            expect(sh, t, row, s)
        w.text(path, sh.rows, sep, encoding)
        return t

    return make


def maker_and_model(path):
    t, g = Truth("maker and model in one column, grade and fault in two; header in small letters with underscores", named=False), tune(251)
    sh = Sheet("")
    cols = [Col("maker", "brand_model", lambda s, n: f"{s['maker']} {s['model']}"), Col("inches", "size_in", whole), Col(None, "grade", lambda s, n: "ABCD"[n % 4]), Col("claimed", "fault_desc"), Col("serial", "serial_no"), Col("asking", "unit_price", plain)]
    sets = g.sets(18, makers=["Polestone", "Sundrake", "Old Mill Vision", "Vantrek", "Karo & Oel"])
    table(sh, t, cols, sets, True)
    t.columns["model"] = ["brand_model"]
    w.text(path, sh.rows)
    return t


def odd_records(path):
    t, g = Truth("German records with a field too many (an unquoted semicolon) and too few", named=False), tune(252)
    sh = Sheet("")
    cols = [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Zoll", whole), Col("claimed", "Befund"), Col("serial", "Seriennr"), Col("asking", "Preis", german)]
    sets = g.sets(16, "de")
    header(sh, t, cols, True)
    fill(sh, t, cols, sets[:6])
    serial = g.serial()
    for record in (["Vantrek", "VT55P100W", "55", "ohne Ton", " Fuß fehlt", serial, "220,00"], ["Polestone", "PS20-43", "43", "startet nicht"]):
        row = sh.add(*record)
        t.report(sh, row, "number of fields")
        t.sets.append({"line": row, "maker": record[0], "model": record[1], "inches": any_of(float(record[2]), None), "serial": any_of(None, serial, "Fuß fehlt"), "claimed": any_of("no_sound", "dead", "other", "untested"), "asking": any_of(220.0, None), "optional": True})
    fill(sh, t, cols, sets[6:])
    t.sets_total = any_of(16, 17, 18)
    w.text(path, sh.rows, ";")
    return t


def formula_text(path):
    t, g = Truth("text that looks like formulas, tabs and quotes inside fields", named=False), tune(253)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", mark('"')), Col("serial", "Serial"), Col("claimed", "Remarks"), Col("asking", "Price", plain)]
    sets = g.sets(14)
    for s, (words, code) in zip(sets, (("=cmd|'/c calc'!A1 DEAD", "dead"), ("+HYPERLINK(\"x\") no audio", "no_sound"), ("@SUM(1) stuck at logo", "boot_loop"), ("-2+3 screen broken", "cracked"), ("buyer wrote \"no pwr\"", "dead"), ("left\tside of screen black, right side fine", "half_screen"))):
        s.update(claimed=code, claimed_text=words)
    sets[8].update(serial="=A1", want={"serial": any_of("=A1", None)}, may="serial looks like a formula")
    table(sh, t, cols, sets, True)
    w.text(path, sh.rows)
    return t


def composed(path):
    t, g = Truth("combining accents, no-break spaces in header and cells, a zero-width space, full-width digits", named=False), tune(254)
    sh = Sheet("")
    cols = [Col("maker", "Marque\u00a0", None), Col("model", "Mode\u0300le"), Col("inches", "Pouces", whole), Col("serial", "Nume\u0301ro\u00a0de\u00a0se\u0301rie"), Col("claimed", "De\u0301faut"), Col("asking", "Prix", plain)]
    sets = g.sets(13, "fr")
    sets[0].update(maker="Nubéria", cells={"maker": "Nube\u0301ria"})
    sets[1].update(maker="Old Mill Vision", cells={"maker": "Old\u00a0Mill\u00a0Vision"})
    sets[3].update(maker="Çelvora", cells={"maker": "C\u0327elvora"})
    sets[5].update(claimed="cracked", claimed_text="écran cassé", cells={"claimed": "e\u0301cran casse\u0301"})
    sets[7].update(cells={"model": "\u200b" + sets[7]["model"]})
    sets[7]["model"] = any_of(sets[7]["model"], "\u200b" + sets[7]["model"])
    table(sh, t, cols, sets, True)
    t.columns = {f: [h.strip() for h in v] for f, v in t.columns.items()}
    w.text(path, sh.rows, ";")
    return t


def page(path, rows, head="", charset="utf-8"):
    body = "\n".join(rows)
    path.write_bytes(f'<html><head><meta http-equiv=Content-Type content="text/html; charset={charset}">{head}</head><body><table border=1>\n{body}\n</table></body></html>\n'.encode("cp1252" if charset == "windows-1252" else charset))


def page_with_foot(path):
    t, g = Truth("a page in windows-1252 under .xls: thead, tbody, tfoot with a total, numbers in attributes, formatting tags", named=False), tune(255)
    sh = Sheet("")
    cols = [Col("maker", "Marke"), Col("model", "Modell"), Col("inches", "Zoll"), Col("serial", "Seriennummer"), Col("claimed", "Zustand"), Col("asking", "Preis")]
    header(sh, t, cols, True)
    rows = ["<thead><tr>" + "".join(f"<th>{c.header}</th>" for c in cols) + "</tr></thead><tbody>"]
    sets = g.sets(15, "de", makers=["Gählon", "Polestone", "Sundrake"])
    for s in sets:
        sh.add(1)
        expect(sh, t, len(sh.rows), s)
        rows.append(f"<tr><td>{s['maker']}</td><td x:str>{s['model']}</td><td x:num=\"{whole(s, 0)}\"><span style='color:red'>{whole(s, 0)}</span></td><td><font face=mono>{s['serial']}</font></td><td><i>{s['claimed_text']}</i></td><td x:num>{german(s, 0)}</td></tr>")
    t.note(sh, 1, why="total")
    rows.append(f"</tbody><tfoot><tr><td colspan=5>Summe ({len(sets)} Geräte)</td><td>{german({'asking': sum(s['asking'] for s in sets)}, 0)}</td></tr></tfoot>")
    page(path, rows, charset="windows-1252")
    return t


def page_of_pallets(path):
    t, g = Truth("a page under .xls: pallet headings over all columns, header again, makers over several rows, comments in the source", named=False), tune(256)
    sh = Sheet("")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size"), Col("serial", "Serial"), Col("claimed", "Fault"), Col("asking", "Price")]
    rows = []
    for p in (1, 2):
        t.note(sh, 1, why="pallet heading")
        rows.append(f"<tr><td colspan='6' align=center>PALLET {p}</td></tr><!-- <tr><td>not a row</td></tr> -->")
        header(sh, t, cols, p == 1)
        rows.append("<TR>" + "".join(f"<TD><B>{c.header}</B></TD>" for c in cols) + "</TR>")
        for maker, k in (("Vantrek", 3), ("Karo & Oel", 2), ("Sundrake", 1)):
            for i, s in enumerate(g.sets(k, makers=[maker])):
                sh.add(1)
                expect(sh, t, len(sh.rows), s)
                name = f"<td rowspan={k}>{maker.replace('&', '&amp;')}</td>" if i == 0 else ""
                rows.append(f"<tr>{name}<td>{s['model']}</td><td>{whole(s, 0)}&quot;</td><td>{s['serial']}</td><td>{s['claimed_text']}</td><td>$&nbsp;{english(s, 0)}</td></tr>")
    page(path, rows)
    return t


def xml_merged(path):
    t, g = Truth("XML table of 2003 under .xls: cells merged downwards, formulas with stored values, two sheets; read, or refused"), tune(257)
    a, b = Sheet("A"), Sheet("B")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Inches", whole), Col("claimed", "Fault"), Col("serial", "Serial"), Col("asking", "Price", lambda s, n: {"f": f"RC[-3]*{s['asking'] / s['inches']:g}", "c": s["asking"]})]
    header(a, t, cols, True)
    sets = g.sets(4, makers=["Polestone"])
    for s in sets[1:]:
        s["cells"] = {"maker": None}
    fill(a, t, cols, sets)
    a.merges.append("A2:A5")
    table(b, t, cols, g.sets(5))
    t.ignored = []
    t.exit = [0, 3]
    w.spreadsheetml(path, [a, b])
    return t


def xml_plain(path):
    t, g = Truth("XML table of 2003 under .xml in latin-1: read, or refused"), tune(258)
    sh = Sheet("Téléviseurs & co")
    cols = [Col("maker", "Marque"), Col("model", "Modèle"), Col("inches", "Pouces", whole), Col("claimed", "Défaut"), Col("serial", "Série"), Col("asking", "Prix")]
    table(sh, t, cols, g.sets(9, "fr"), True)
    t.exit = [0, 3]
    w.spreadsheetml(path, [sh], "iso-8859-1")
    return t


def tabs_french(path):
    t, g = Truth("UTF-16LE tab text saved under .xls, French, blank cells at the row's end left out", named=False), tune(259)
    sh = Sheet("")
    cols = [Col("maker", "Marque"), Col("model", "Modèle"), Col("inches", "Pouces", whole), Col("serial", "N° série"), Col("claimed", "Défaut"), Col("asking", "Prix TTC", french(" ")), Col(None, "Divers", lambda s, n: "x" if n % 3 == 0 else None)]
    table(sh, t, cols, g.sets(14, "fr"), True)
    w.text(path, sh.rows, "\t", "utf-16-le", "\r\n", before="\ufeff")
    return t


FILES = {
    "t40-german-bom.csv": german_bom, "t41-narrow-spaces.csv": narrow_spaces, "t42-latin-spanish.csv": latin_spanish, "t43-little-endian.csv": little_endian_quotes, "t44-serial-slashes.tsv": serial_slashes,
    "t45-quoted-newlines.csv": quoted_newlines, "t46-carriage-returns.csv": carriage_returns, "t47-separator-line.csv": separator_line,
    "t48-german-descriptions.csv": descriptions(["Nr", "Artikelbeschreibung", "Preis"], ['{maker} {model} LED-TV {n}", {text}', "{n} Zoll Fernseher {maker} {model} - {text}", "TV {maker} {model}, {cm} cm, {text}"], "de", 248, "German descriptions, cm and Zoll, goods that are no television",
                                                ["Vantrek Soundbar SB-300", "Sundrake Kaffeemaschine KM-2", "Wandhalter 40-75 Zoll"], ";", "cp1252"),
    "t49-french-descriptions.csv": descriptions(["Lot", "Désignation", "Prix"], ["TV {maker} {model} {n} pouces - {text}", "Téléviseur {maker} {model} {cm} cm, {text}"], "fr", 249, "French descriptions"),
    "t50-spanish-descriptions.csv": descriptions(["Ref", "Descripción", "Precio"], ['Televisor {maker} {model} {n}" - {text}', "{maker} {model}, TV de {n} pulgadas, {text}"], "es", 250, "Spanish descriptions, goods that are no television",
                                                 ["Barra de sonido Polestone BS-20", "Cafetera Dunmarrow CF-9", "Soporte de pared 32-65 pulgadas"], ";"),
    "t51-maker-and-model.csv": maker_and_model, "t52-odd-records.csv": odd_records, "t53-formula-text.csv": formula_text, "t54-composed.csv": composed, "t55-page-with-foot.xls": page_with_foot, "t56-page-of-pallets.xls": page_of_pallets,
    "t57-xml-merged.xls": xml_merged, "t58-xml-plain.xml": xml_plain, "t59-tabs-french.xls": tabs_french,
}
