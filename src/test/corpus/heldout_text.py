"""The held-out group: delimited text, web pages, XML tables. Made before the reader and never used to tune it."""

from book import Col, Sheet, Truth, any_of, cm, expect, fill, header, table
from common import *
from words import NOMINAL_CM, held
import writers as w


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
