"""Tuning group: workbooks whose cells are the difficulty."""

from book import Col, Sheet, Truth, any_of, cm, expect, fill, header, table
from common import *
from words import NOMINAL_CM, tune
import writers as w


def number_serials(path):
    t, g = Truth("serials stored as numbers: complete up to 15 digits, damaged beyond; zeros by display format; a number as model"), tune(220)
    sh = Sheet("Sheet1")
    cols = [Col("maker", "Brand"), Col("model", "Model no"), Col("serial", "Serial no"), Col("inches", "Size (in)", whole), Col("claimed", "State"), Col("asking", "Price")]
    sets = g.sets(18)

    def number(i, value, shown, fmt=None):
        sets[i].update(serial=shown, cells={"serial": {"v": value, "fmt": fmt} if fmt else value})

    number(0, 12345678, "12345678")
    number(2, 901234567890123, "901234567890123")
    number(3, 90123456789, "90123456789", "0")
    number(5, 4711, "000000004711", "000000000000")
    number(7, 55012, "00055012", "00000000")
    for i, value in ((9, 1234567890123456700), (10, 98765432109876540)):
        sets[i].update(cells={"serial": value}, want={"serial": None}, must="serial lost digits")
    for i, words in ((12, "1.23457E+14"), (13, "9.01E+15")):
        sets[i].update(cells={"serial": words}, want={"serial": None}, must="serial lost digits")
    sets[15].update(model="430055", cells={"model": 430055})
    sets[16].update(model="0065320", cells={"model": {"v": 65320, "fmt": "0000000"}})
    table(sh, t, cols, sets, True)
    w.openpyxl_(path, [sh])
    return t


def german_quantities(path):
    t, g = Truth("quantities with words, unit price and total, lists of serials one below the other"), tune(221)
    sh = Sheet("Posten")
    cols = [Col(None, "Pos", count), Col("qty", "Menge", lambda s, n: s["qty"]), Col("maker", "Marke"), Col("model", "Bezeichnung"), Col("inches", "Zoll", whole), Col("claimed", "Zustand"),
            Col("serial", "Seriennummern", lambda s, n: s["list"]), Col("asking", "Einzelpreis"), Col(None, "Gesamtpreis", lambda s, n: s["asking"] * s["n"])]
    sets = g.sets(13, "de")
    for i, (q, n) in enumerate((("1 Stk", 1), ("3 Stück", 3), ("2 St.", 2), (1, 1), ("1x", 1), ("2 x", 2), (None, 1), (4, 4), ("1", 1), ("1 Gerät", 1), (2, 2), ("5 Stk.", 5), (1, 1))):
        sets[i] = s = many(g, sets[i], n)
        s.update(qty=q, n=n, list="\n".join(s["serials"]))
    sets[10].update(serials=[any_of(sets[10]["serials"][0], None), None], list=sets[10]["serials"][0], must="fewer serials than sets")
    sets.append(dict(skip=True, must="quantity zero", qty=0, list=None, n=0, cells={"maker": "Polestone", "model": "PS20-55", "inches": 55, "qty": 0, "asking": 50, "claimed": "ohne Prüfung"}))
    sets.append(dict(skip=True, must="quantity absurd", qty=0, list=None, n=0, cells={"maker": "Vantrek", "model": "VT43P100W", "inches": 43, "qty": "100000 Stk", "asking": 50, "claimed": "ohne Prüfung"}))
    table(sh, t, cols, sets, True)
    total = sum(s["asking"] * s["n"] for s in sets[:13])
    t.note(sh, None, None, None, None, None, None, "Summe netto", None, total, why="total")
    w.xlsxwriter_(path, [sh])
    return t


def french_quantities(path):
    t, g = Truth("quantities in French; only a total for the line; no serials"), tune(222)
    sh = Sheet("Feuil1")
    cols = [Col("maker", "Marque"), Col("model", "Référence"), Col("qty", "Nb pièces", lambda s, n: s["qty"]), Col("inches", "Taille (pouces)", whole), Col("claimed", "Panne"), Col("asking", "Montant total", lambda s, n: s["asking"] * s["n"])]
    sets = g.sets(11, "fr")
    for s, (q, n) in zip(sets, (("2 pcs", 2), ("x2", 2), ("3 unités", 3), (1, 1), ("1", 1), (None, 1), ("4 pièces", 4), (2, 2), ("1 pc", 1), ("x 3", 3), (1, 1))):
        s.update(qty=q, n=n, serial=None, serials=[None] * n)
    table(sh, t, cols, sets, True)
    w.poi(path, [sh])
    return t


def three_prices(path):
    t, g = Truth("retail, expected resale and asking price; the asking price is missing in two rows"), tune(223)
    sh = Sheet("Offer")
    cols = [Col("maker", "Make"), Col("model", "Model"), Col("inches", "Screen size (in)", whole), Col("serial", "Serial"), Col("claimed", "Fault"), Col(None, "Retail price", lambda s, n: s["asking"] * 5), Col(None, "Est. resale", lambda s, n: s["asking"] * 2), Col("asking", "Asking price")]
    sets = g.sets(15)
    for i, blank in ((4, None), (10, "-")):
        sets[i].update(cells={"asking": blank}, want={"asking": any_of(None, sets[i]["asking"] * 5)}, may="no price")
    table(sh, t, cols, sets, True)
    w.xlsxwriter_(path, [sh])
    return t


def text_prices(path):
    t, g = Truth("prices as text: decimal commas in one column decide for twelve hundred written 1.200"), tune(224, price=lambda r, s: s * r.randint(7, 40) + 0.25)
    sh = Sheet("Angebot")
    cols = [Col("maker", "Marke"), Col("model", "Modell"), Col("serial", "SN"), Col("inches", "Größe", mark("″")), Col("claimed", "Mangel"), Col("asking", "Angebot EUR", german), Col(None, "UVP", lambda s, n: german({"asking": s["asking"] * 3}, n))]
    sets = g.sets(16, "de")
    for i, shown, value in ((3, "1.200", 1200.0), (7, "2.050", 2050.0), (12, "980", 980.0)):
        sets[i].update(asking=value, cells={"asking": shown})
    table(sh, t, cols, sets, True)
    w.openpyxl_(path, [sh])
    return t


def long_list(path):
    t, g = Truth("a hundred and forty rows, header again every forty, page numbers, blank rows; inline strings"), tune(225)
    sh = Sheet("Stock")
    cols = [Col(None, "No", count), Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", mark(" in")), Col("serial", "Serial"), Col("claimed", "Condition"), Col("asking", "Price")]
    sets = g.sets(140)
    for k in range(0, 140, 40):
        header(sh, t, cols, k == 0)
        fill(sh, t, cols, sets[k:k + 20], k + 1)
        t.note(sh, why="blank")
        fill(sh, t, cols, sets[k + 20:k + 40], k + 21)
        if k < 120:
            t.note(sh, None, None, None, None, f"Page {k // 40 + 1}", why="page foot")
    w.poi(path, [sh], stream=True)
    return t


def mixed_english(path):
    t, g = Truth("a truck of mixed goods with a category column"), tune(226)
    sh = Sheet("Truck 9")
    cols = [Col(None, "Category", constant("Television")), Col("maker", "Brand"), Col("model", "Item"), Col("inches", "Size", mark('"')), Col("claimed", "Condition"), Col("serial", "Serial"), Col("asking", "Unit cost")]
    sets = g.sets(18)
    c = "Category"
    junk = [not_tv("Sundrake", "Soundbar SB220", 45.0, **{c: "Audio"}), not_tv("Karo & Oel", "KO-T2 toaster, 2 slice", 9.0, **{c: "Kitchen"}), not_tv("Polestone", "Tilting wall bracket 32-70", 6.0, **{c: "Accessories"}),
            not_tv("Vantrek", "Remote control RC9", 2.0, **{c: "Accessories"}), not_tv("Dunmarrow", "DM-V600 vacuum cleaner", 30.0, **{c: "Household"}), not_tv("Lumibrak", "LB-MW23 microwave oven 23 l", 35.0, **{c: "Kitchen"})]
    table(sh, t, cols, sets[:3] + junk[:2] + sets[3:9] + junk[2:4] + sets[9:14] + junk[4:] + sets[14:], True)
    w.exceljs(path, [sh])
    return t


def odd_sizes(path):
    t, g = Truth("sizes in every spelling: typographic quotes, hyphens, mm, both units, decimal comma, words"), tune(227)
    sh = Sheet("Sizes")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Diagonal"), Col("serial", "Serial"), Col("claimed", "Fault"), Col("asking", "Price")]
    spelled = [("55\u201d", 55.0), ("43\u2033", 43.0), ("65''", 65.0), ("50-inch", 50.0), ("32 Inches", 32.0), ("139cm", cm(139, 55)), ("1397 mm", any_of(55.0)), ("40in.", 40.0), ("75 INCH", 75.0), ("54,6 Zoll", 54.6),
               ('85 "', 85.0), ("109 cm", cm(109, 43)), ("165 CM", cm(165, 65)), ('55" (139 cm)', any_of(55.0, 54.7)), ("80 cm / 32\"", any_of(31.5, 32.0)), (49.5, 49.5), ("43 pouces", 43.0), ("50 pulgadas", 50.0), ("32 Zoll", 32.0),
               ("5O\"", None), ("?", None), ("large", None), ("0", None), (-43, None), ("999\"", None)]
    sets = g.sets(len(spelled), makers=["Sundrake", "Vantrek", "Dunmarrow"])
    for s, (shown, value) in zip(sets, spelled):
        s["cells"] = {"inches": shown}
        s["want"] = {"inches": value["any_of"][0] if isinstance(value, dict) and len(value["any_of"]) == 1 else value}
        if value is None:
            s["must"] = "not a screen size"
    table(sh, t, cols, sets, True)
    w.xlsxwriter_(path, [sh])
    return t


def size_in_item(path):
    t, g = Truth("one item column holds maker, model and size; fault and price beside it"), tune(228)
    sh = Sheet("Items")
    sh.add("Item", "Fault", "Serial", "Each")
    t.head(sh, 1, dict(maker="Item", model="Item", inches="Item", claimed="Fault", serial="Serial", asking="Each"))
    forms = ['{maker} {model} {n}"', "{maker} {model} ({n} inch)", '{n}" {maker} {model}', "{maker} {model} LED TV {n}in", "{n}in TV {maker} {model}"]
    for i, s in enumerate(g.sets(20, makers=["Polestone", "Sundrake", "Lumibrak", "Old Mill Vision", "Vantrek"])):
        row = sh.add(forms[i % 5].format(n=int(s["inches"]), **s), s["claimed_text"], s["serial"], s["asking"])
        expect(sh, t, row, s)
    w.openpyxl_(path, [sh])
    return t


def maker_headings(path):
    t, g = Truth("the maker stands in a heading above its sets: taken from there, or missing"), tune(229)
    sh = Sheet("By brand")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Inch", whole), Col("serial", "Serial"), Col("claimed", "Fault"), Col("asking", "Price")]
    header(sh, t, cols, True)
    for maker, k in (("Polestone", 4), ("Sundrake", 5), ("Vantrek", 3)):
        row = t.note(sh, maker.upper(), why="heading")
        sets = g.sets(k, makers=[maker])
        for s in sets:
            s.update(cells={"maker": None}, want={"maker": any_of(maker, None)}, may="no maker")
        fill(sh, t, cols, sets)
    w.xlsxwriter_(path, [sh])
    return t


def control_characters(path):
    t, g = Truth("old binary with control characters, an escape sequence, text that looks like a formula"), tune(230)
    sh = Sheet("Sheet1")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", whole), Col("serial", "Serial"), Col("claimed", "Condition"), Col("asking", "Price")]
    sets = g.sets(12, makers=["Polestone", "Sundrake", "Vantrek"])
    said = [("no audio\x07\x07", "no audio", "no_sound"), ("\x1b[31mDEAD\x1b[0m", "DEAD", "dead"), ("=1+1 no pwr", "=1+1 no pwr", "dead"), ("+stuck at logo", "+stuck at logo", "boot_loop"), ("@green tint", "@green tint", "other"),
            ("-vert. lines LH side", "-vert. lines LH side", "vertical_lines"), ("screen\tbroken", "screen broken", "cracked"), ("horizontal\r\nbanding", "horizontal banding", "horizontal_lines")]
    for s, (raw, words, code) in zip(sets, said):
        s.update(claimed_text=words, claimed=code, cells={"claimed": raw})
    sets[1]["want"] = {"claimed_text": "DEAD"}
    for i in (0, 1):
        sets[i]["may"] = "control characters"
    table(sh, t, cols, sets, True)
    w.poi(path, [sh])
    return t


def escaped_characters(path):
    t, g = Truth("control characters as XLSX escapes them (_x001B_)"), tune(231)
    sh = Sheet("Sheet1")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Size", whole), Col("serial", "Serial"), Col("claimed", "Condition"), Col("asking", "Price")]
    sets = g.sets(10, makers=["Polestone", "Sundrake", "Vantrek"])
    sets[0].update(claimed="dead", claimed_text="DEAD", cells={"claimed": "\x1b[5mDEAD"}, may="control characters")
    sets[3].update(claimed="cracked", claimed_text="CRACKED", cells={"claimed": "CRACKED\x08\x08"}, may="control characters")
    sets[5].update(claimed="no_sound", claimed_text="no audio", cells={"claimed": "no audio\x00"}, may="control characters")
    table(sh, t, cols, sets, True)
    w.xlsxwriter_(path, [sh])
    return t


def away_from_corner(path):
    t, g = Truth("the table starts at D6, columns from price back to brand"), tune(232)
    sh = Sheet("Tab 1")
    for _ in range(5):
        sh.add()
    cols = [Col(None, None), Col(None, None), Col(None, None), Col("asking", "Price per TV"), Col("claimed", "Known faults"), Col("inches", "Inch size", whole), Col("serial", "Serial"), Col("model", "Model"), Col("maker", "Brand")]
    table(sh, t, cols, g.sets(13), True)
    w.poi(path, [sh])
    return t


def missing_fields(path):
    t, g = Truth("sets without maker, model, size, serial, price or claim"), tune(233)
    sh = Sheet("Gaps")
    cols = [Col(None, "Lot line", count), Col("maker", "Maker"), Col("model", "Model"), Col("inches", "Size (in)", whole), Col("serial", "Serial"), Col("claimed", "Problem"), Col("asking", "Price")]
    sets = g.sets(16)
    sets[2].update(cells={"maker": None}, want={"maker": None}, must="no maker")
    sets[4].update(cells={"model": None}, want={"model": None}, must="no model")
    sets[6].update(cells={"inches": None}, want={"inches": any_of(None, sets[6]["inches"])}, may="no size")
    sets[8].update(cells={"serial": None}, want={"serial": None}, may="no serial")
    sets[9].update(cells={"asking": None}, want={"asking": None}, may="no price")
    sets[11].update(cells={"claimed": None}, want={"claimed": any_of("untested", "other"), "claimed_text": None}, may="no claim")
    table(sh, t, cols, sets, True)
    w.openpyxl_(path, [sh])
    return t


def wide(path):
    t, g = Truth("seventy columns, the needed ones far apart; two claim columns; very long cells"), tune(234)
    sh = Sheet("Dump")
    cols = [Col(None, f"attr_{i:02d}", lambda s, n, i=i: f"v{i}" if (n + i) % 4 else None) for i in range(70)]
    cols[5], cols[17], cols[29], cols[33] = Col("serial", "serial_number"), Col("maker", "brand"), Col("model", "model_number"), Col("inches", "screen_size_inches", whole)
    cols[41], cols[42], cols[66] = Col("claimed", "condition", constant("customer rtn")), Col("claimed", "fault_text"), Col("asking", "unit_price")
    sets = g.sets(9, codes=["dead", "cracked", "no_sound", "vertical_lines", "boot_loop", "half_screen"])
    sets[4]["cells"] = {"attr_10": "x" * 20000}
    table(sh, t, cols, sets, True)
    t.columns["claimed"] += ["condition", "fault_text"]
    w.xlsxwriter_(path, [sh])
    return t


def money_words(path):
    t, g = Truth("currency in front, behind and as a word; prices that cannot be read, that are absurd or missing"), tune(235)
    sh = Sheet("Prices")
    cols = [Col("maker", "Brand"), Col("model", "Model"), Col("inches", "Inch", whole), Col("serial", "Serial"), Col("claimed", "Fault"), Col("asking", "Price")]
    said = [("$450.00", 450.0), ("USD 1,250.00", 1250.0), ("€450", 450.0), ("395.50 €", 395.5), ("£ 99.95", 99.95), ("1,080.00", 1080.0), ("$ 75.00 each", 75.0), (320, 320.0), (199.9, 199.9), ("-", None), ("n/a", None), (None, None),
            ("call us", "x"), ("TBC", "y"), ("1E+400", "x"), ("99999999999999999999", "x")]
    sets = g.sets(len(said))
    for s, (shown, value) in zip(sets, said):
        s["cells"] = {"asking": shown}
        s["want"] = {"asking": None if value in ("x", "y") else value}
        if value in (None, "y"):
            s["may"] = "no price"
        if value == "x":
            s["must"] = "price not readable"
    table(sh, t, cols, sets, True)
    w.exceljs(path, [sh])
    return t


FILES = {
    "t20-number-serials.xlsx": number_serials, "t21-german-quantities.xlsx": german_quantities, "t22-french-quantities.xls": french_quantities, "t23-three-prices.xlsx": three_prices, "t24-text-prices.xlsx": text_prices,
    "t25-long-list.xlsx": long_list, "t26-mixed-english.xlsx": mixed_english, "t27-odd-sizes.xlsx": odd_sizes, "t28-size-in-item.xlsx": size_in_item, "t29-maker-headings.xlsx": maker_headings,
    "t30-control-characters.xls": control_characters, "t31-escaped.xlsx": escaped_characters, "t32-away-from-corner.xlsx": away_from_corner, "t33-missing-fields.xlsx": missing_fields, "t34-wide.xlsx": wide,
    "t35-money-words.xlsx": money_words,
}
