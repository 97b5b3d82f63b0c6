"""Tuning group: the sellers' own words, one file a language."""

from book import Col, Sheet, Truth, any_of, table
from common import *
from words import tune
import writers as w

LINES = any_of("horizontal_lines", "vertical_lines", "other")
BLANK = any_of("untested", "other")
ENGLISH = [
    ("customer return - boot loop", "boot_loop"), ("no cracks, no power", "dead"), ("Screen NOT cracked. Vertical lines.", "vertical_lines"), ("not tested, no remote", BLANK), ("untested / glass chipped top left", "cracked"),
    ("pic fine but no sound", "no_sound"), ("sound ok but no pic", "no_picture"), ("turns on, stays on logo forever", "boot_loop"), ("doesnt turn on", "dead"), ("will not power up, no cracks", "dead"), ("dim picture LHS", "dim_patchy"),
    ("half of screen is darker", any_of("half_screen", "dim_patchy")), ("tested - all good", "working"), ("works", "working"), ("RMA", "customer_return"), ("lines", LINES), ("coloured lines across the picture", LINES), ("impact mark on panel", "cracked"),
    ("as is, no returns", "untested"), ("dead on arrival", "dead"), ("no standby led", "dead"), ("wifi dropping out", "other"), ("HDMI ports faulty", "other"), ("yellow tint whole screen", "other"), ("hangs at start logo", "boot_loop"),
    ("cracked, also has lines", "cracked"), ("customer says it keeps restarting", "boot_loop"), ("no display, has sound", "no_picture"), ("blank screen with sound", "no_picture"), ("missing feet", "other"), ("fully functional, no cracks or lines", "working"),
    ("customer return, not tested", any_of("customer_return", "untested")), ("horizontal and vertical lines", any_of("horizontal_lines", "vertical_lines")), ("unknown condition", "untested"), ("", BLANK),
]
GERMAN = [
    ("Kundenretoure, kein Ton", "no_sound"), ("kein Bruch, geht nicht an", "dead"), ("Display nicht beschädigt, vertikale Linien", "vertical_lines"), ("nicht getestet", "untested"), ("ungeprüft, Panel gebrochen", "cracked"), ("Ton vorhanden, kein Bild", "no_picture"),
    ("Bild vorhanden, kein Ton", "no_sound"), ("bleibt im Logo stehen", "boot_loop"), ("startet immer neu", "boot_loop"), ("lässt sich nicht einschalten", "dead"), ("keine Standby-LED", "dead"), ("Bild ungleichmäßig ausgeleuchtet", "dim_patchy"),
    ("eine Bildhälfte schwarz", "half_screen"), ("funktioniert", "working"), ("geprüft und in Ordnung", "working"), ("Streifen im Bild", LINES), ("horizontale und vertikale Streifen", any_of("horizontal_lines", "vertical_lines")), ("Riss im Display", "cracked"),
    ("Scheibe gesprungen", "cracked"), ("HDMI-Anschluss defekt", "other"), ("Rotstich", "other"), ("Rückläufer", "customer_return"), ("keine Risse, keine Streifen, Ecken dunkel", "dim_patchy"), ("Retoure, startet nicht", "dead"), ("Fuß fehlt", "other"),
    ("ohne Prüfung, wie gesehen", "untested"), ("", BLANK),
]
FRENCH = [
    ("retour client, pas de son", "no_sound"), ("écran intact, ne s'allume pas", "dead"), ("pas de casse, lignes verticales", "vertical_lines"), ("non testé", "untested"), ("non testé, dalle cassée", "cracked"), ("pas d'image mais du son", "no_picture"),
    ("image OK, aucun son", "no_sound"), ("reste bloqué sur le logo", "boot_loop"), ("redémarre tout seul", "boot_loop"), ("ne démarre plus", "dead"), ("aucun voyant", "dead"), ("coins sombres", "dim_patchy"), ("la moitié de l'écran est noire", "half_screen"),
    ("fonctionne parfaitement", "working"), ("testé, bon état de marche", "working"), ("lignes sur l'écran", LINES), ("bandes horizontales", "horizontal_lines"), ("vitre fêlée", "cracked"), ("choc sur la dalle", "cracked"), ("wifi en panne", "other"),
    ("image jaunâtre", "other"), ("retour", "customer_return"), ("ni casse ni rayure, rétroéclairage inégal", "dim_patchy"), ("sans télécommande", "other"), ("en l'état, non vérifié", "untested"), ("", BLANK),
]
SPANISH = [
    ("devolución, sin sonido", "no_sound"), ("pantalla intacta, no enciende", "dead"), ("sin golpes, líneas verticales", "vertical_lines"), ("no probado", "untested"), ("sin probar, pantalla rota", "cracked"), ("se oye pero sin imagen", "no_picture"),
    ("imagen correcta, no hay sonido", "no_sound"), ("bloqueado en el logo", "boot_loop"), ("se reinicia sin parar", "boot_loop"), ("no arranca", "dead"), ("sin luz de standby", "dead"), ("esquina inferior oscura", "dim_patchy"), ("mitad de la pantalla negra", "half_screen"),
    ("funciona perfectamente", "working"), ("probado y funcionando", "working"), ("líneas en la pantalla", LINES), ("franjas horizontales", "horizontal_lines"), ("cristal roto", "cracked"), ("panel agrietado, no enciende", "cracked"), ("puerto HDMI suelto", "other"),
    ("imagen con tono verde", "other"), ("devuelto por cliente", "customer_return"), ("no está rota, luz desigual", "dim_patchy"), ("falta la peana", "other"), ("tal cual, sin verificar", "untested"), ("", BLANK),
]


def words(said, seed, about, headers, price, write, lang):
    def make(path):
        t, g = Truth(about, named=False), tune(seed)
        sh = Sheet("")
        cols = [Col(f, h, how) for (f, how), h in zip((("maker", None), ("model", None), ("inches", mark(headers[6])), ("serial", None), ("claimed", None), ("asking", price)), headers)]
        sets = g.sets(len(said), lang)
        for s, (words, code) in zip(sets, said):
            s.update(claimed=code, claimed_text=words or None)
            if not words:
                s["may"] = "no claim"
        table(sh, t, cols, sets, True)
        write(path, sh.rows)
        return t

    return make


FILES = {
    "t60-english-words.csv": words(ENGLISH, 260, "thirty-five claims in English: negations, several symptoms, states", ["Brand", "Model", "Size", "Serial", "Fault as stated", "Price", '"'], plain, lambda p, r: w.text(p, r), "en"),
    "t61-german-words.csv": words(GERMAN, 261, "claims in German, windows-1252", ["Marke", "Modell", "Größe", "Seriennr.", "Fehlerangabe", "Preis", " Zoll"], german, lambda p, r: w.text(p, r, ";", "cp1252", "\r\n"), "de"),
    "t62-french-words.csv": words(FRENCH, 262, "claims in French, decimal commas in quotes", ["Marque", "Modèle", "Taille", "Série", "Symptôme", "Prix", " pouces"], french(" "), lambda p, r: w.text(p, r, ",", "utf-8", "\n"), "fr"),
    "t63-spanish-words.tsv": words(SPANISH, 263, "claims in Spanish, tabs", ["Marca", "Modelo", "Tamaño", "Serie", "Síntoma", "Precio", '"'], german, lambda p, r: w.text(p, r, "\t", "utf-8", "\r\n"), "es"),
}
