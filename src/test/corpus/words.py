"""Invented makers with the shape of their model numbers, and sellers' words for what is wrong. Two vocabularies that share nothing:
what is learnt on one group says little about the other."""

import random

HELD_MAKERS = {
    "Orvanta": lambda r, s: f"OV-{s}X{r.choice([10, 20, 30])}",
    "Teskora": lambda r, s: f"{s}TK{r.choice([710, 720, 915])}",
    "North Quay": lambda r, s: f"NQ{s}L{r.choice('ABC')}",
    "Fjordal": lambda r, s: f"FJ.{s}.{r.choice(['U7', 'U9'])}",
    "Rüstvik": lambda r, s: f"RV{s}-{r.choice([3100, 4200])}",
    "Éclarion": lambda r, s: f"ECL{s}{r.choice('DE')}",
    "Señalux": lambda r, s: f"SX{s}K{r.randint(1, 4)}",
    "O'Dwyle": lambda r, s: f"OD{s}Q-{r.randint(1, 3)}",
    "Mirqua": lambda r, s: f"MQ{s}U{r.randint(1, 9)}",
}
TUNE_MAKERS = {
    "Polestone": lambda r, s: f"PS{r.choice([20, 24])}-{s}",
    "Sundrake": lambda r, s: f"SD{s}F{r.choice([11, 12])}",
    "Gählon": lambda r, s: f"GH{s}/{r.choice([200, 400])}",
    "Lumibrak": lambda r, s: f"LB-{s}{r.choice(['HD', 'UH'])}",
    "Old Mill Vision": lambda r, s: f"OM{s}A{r.randint(1, 5)}",
    "Nubéria": lambda r, s: f"{s}NB{r.choice([50, 60])}S",
    "Karo & Oel": lambda r, s: f"KO-{s}-{r.choice('XYZ')}{r.randint(1, 9)}",
    "Vantrek": lambda r, s: f"VT{s}P{r.choice([100, 300])}W",
    "Dunmarrow": lambda r, s: f"DM.{s}{r.choice(['E', 'G'])}{r.randint(1, 8)}",
    "Çelvora": lambda r, s: f"CV{s}T{r.choice([7, 8])}",
}
SIZES = [32, 40, 43, 50, 55, 65, 75, 85]
NOMINAL_CM = {24: 60, 32: 80, 40: 102, 43: 109, 50: 127, 55: 140, 65: 165, 75: 190, 85: 216}

HELD = {
    "en": {
        "horizontal_lines": ["horizontal line through picture", "horiz. stripes"],
        "vertical_lines": ["one vertical line", "vertical bands left side"],
        "half_screen": ["right half of screen black", "half the picture missing"],
        "no_picture": ["no picture but sound works", "has sound, no image"],
        "dead": ["completely dead", "does not power on", "no standby light"],
        "dim_patchy": ["dark patches in picture", "backlight uneven"],
        "boot_loop": ["boot loop", "hangs at logo"],
        "no_sound": ["picture fine, no audio", "no sound at all"],
        "cracked": ["panel cracked", "impact damage to screen", "glass smashed"],
        "untested": ["not tested", "condition unknown"],
        "customer_return": ["returned by customer", "cust. return"],
        "working": ["fully working", "tested, works fine"],
        "other": ["screen flickers", "remote missing", "pink tint"],
    },
    "de": {
        "horizontal_lines": ["waagerechte Linien"], "vertical_lines": ["senkrechter Strich im Bild", "vertikale Linien"],
        "half_screen": ["rechte Bildhälfte schwarz"], "no_picture": ["Ton da, kein Bild"],
        "dead": ["Gerät tot", "schaltet nicht ein"], "dim_patchy": ["dunkle Flecken im Bild"],
        "boot_loop": ["hängt im Startlogo", "Neustart-Schleife"], "no_sound": ["Bild einwandfrei, kein Ton"],
        "cracked": ["Displaybruch", "Panel gesprungen"], "untested": ["ungetestet", "Zustand unbekannt"],
        "customer_return": ["Kundenrückläufer"], "working": ["funktioniert einwandfrei"],
        "other": ["Farbstich", "Fernbedienung fehlt"],
    },
    "fr": {
        "horizontal_lines": ["bandes horizontales"], "vertical_lines": ["traits verticaux", "lignes verticales"],
        "half_screen": ["moitié gauche de l'écran noire"], "no_picture": ["son mais pas d'image"],
        "dead": ["ne s'allume pas", "aucun voyant, mort"], "dim_patchy": ["taches sombres", "rétroéclairage inégal"],
        "boot_loop": ["redémarre en boucle", "bloqué sur le logo"], "no_sound": ["image correcte, pas de son"],
        "cracked": ["dalle cassée", "écran fissuré"], "untested": ["non testé", "vendu en l'état"],
        "customer_return": ["retour client"], "working": ["fonctionne", "testé, en état de marche"],
        "other": ["télécommande manquante", "teinte rose"],
    },
    "es": {
        "horizontal_lines": ["rayas horizontales"], "vertical_lines": ["rayas verticales"],
        "half_screen": ["media pantalla oscura"], "no_picture": ["hay sonido pero no imagen"],
        "dead": ["no enciende"], "dim_patchy": ["manchas oscuras en la imagen"],
        "boot_loop": ["se queda en el logo"], "no_sound": ["imagen bien, sin audio"],
        "cracked": ["panel roto", "cristal roto por golpe"], "untested": ["no probado", "sin comprobar"],
        "customer_return": ["devuelto por el cliente"], "working": ["funciona bien"],
        "other": ["falta el mando", "parpadea"],
    },
}
TUNE = {
    "en": {
        "horizontal_lines": ["horizontal banding", "thin horizontal lines top"],
        "vertical_lines": ["vert. lines LH side", "coloured vertical stripes"],
        "half_screen": ["left side of screen black, right side fine", "half screen only"],
        "no_picture": ["sound but no pic", "audio only, screen stays black"],
        "dead": ["DEAD", "no pwr", "will not switch on", "won't power up"],
        "dim_patchy": ["dim on one side", "dark corner bottom right", "cloudy patches, uneven light"],
        "boot_loop": ["keeps rebooting", "stuck at logo", "restarts every 10 seconds"],
        "no_sound": ["no audio", "pic ok no sound"],
        "cracked": ["craked screen", "screen broken", "chipped glass lower edge", "CRACKED"],
        "untested": ["UNTESTED", "sold as is", "unknown", "not checked"],
        "customer_return": ["customer rtn", "store return", "returned goods"],
        "working": ["working", "powers on, good picture", "100% functional"],
        "other": ["no base", "HDMI 2 not detected", "picture flickers", "green tint"],
    },
    "de": {
        "horizontal_lines": ["horizontale Streifen"], "vertical_lines": ["senkrechte Streifen"],
        "half_screen": ["Bild halb schwarz", "linke Hälfte dunkel"], "no_picture": ["nur Ton, kein Bild"],
        "dead": ["startet nicht", "ohne Funktion", "kein Standby-Licht"], "dim_patchy": ["Ausleuchtung ungleichmäßig", "Ecke zu dunkel"],
        "boot_loop": ["startet immer wieder neu", "Bootschleife"], "no_sound": ["ohne Ton", "Ton defekt, Bild ok"],
        "cracked": ["Glasbruch", "Bildschirm gerissen", "Display kaputt"], "untested": ["nicht geprüft", "ohne Prüfung"],
        "customer_return": ["Retoure", "Rücksendung Kunde"], "working": ["getestet, i.O.", "läuft"],
        "other": ["WLAN geht nicht", "Standfuß fehlt", "Bild flackert"],
    },
    "fr": {
        "horizontal_lines": ["lignes horizontales"], "vertical_lines": ["barres verticales à droite"],
        "half_screen": ["demi-écran noir"], "no_picture": ["image absente, son présent"],
        "dead": ["ne démarre pas", "pas d'alimentation"], "dim_patchy": ["coin sombre", "image sombre d'un côté"],
        "boot_loop": ["redémarre sans cesse"], "no_sound": ["aucun son"],
        "cracked": ["écran cassé", "vitre brisée", "dalle fêlée"], "untested": ["pas testé", "état inconnu"],
        "customer_return": ["retour SAV client"], "working": ["marche bien", "testé OK"],
        "other": ["prise HDMI abîmée", "pied manquant"],
    },
    "es": {
        "horizontal_lines": ["líneas horizontales"], "vertical_lines": ["líneas verticales"],
        "half_screen": ["mitad derecha negra"], "no_picture": ["sin imagen, con sonido"],
        "dead": ["no se enciende", "sin corriente"], "dim_patchy": ["zonas oscuras"],
        "boot_loop": ["se reinicia solo"], "no_sound": ["no tiene sonido"],
        "cracked": ["pantalla rota", "pantalla rajada"], "untested": ["sin testear", "estado desconocido"],
        "customer_return": ["devolución"], "working": ["funcionando", "probada, OK"],
        "other": ["tono rosa", "wifi no funciona"],
    },
}


class Goods:
    """A seeded stock of invented sets."""

    def __init__(self, seed, makers, words, price=lambda r, size: float(size * r.randint(4, 13))):
        self.r, self.makers, self.words, self.price = random.Random(seed), makers, words, price
        self.seen = set()

    def serial(self):
        while True:
            s = self.r.choice("ABCEGHJKLMNPRSTVWXYZ") + self.r.choice("ABCEGHJKLMNPRSTVWXYZ") + f"{self.r.randrange(10**8, 10**9)}" + self.r.choice("ACHKLMN")
            if s not in self.seen:
                self.seen.add(s)
                return s

    def sets(self, n, lang="en", makers=None, codes=None, sizes=SIZES):
        pool = []
        all_codes = list(codes or self.words[lang])
        while len(pool) < n:
            self.r.shuffle(all_codes)
            pool += all_codes
        out = []
        for code in pool[:n]:
            maker = self.r.choice(makers or list(self.makers))
            size = self.r.choice(sizes)
            out.append(dict(maker=maker, model=self.makers[maker](self.r, size), inches=float(size), serial=self.serial(),
                            claimed=code, asking=self.price(self.r, size), claimed_text=self.r.choice(self.words[lang][code])))
        return out


def held(seed, **options):
    return Goods(seed, HELD_MAKERS, HELD, **options)


def tune(seed, **options):
    return Goods(seed, TUNE_MAKERS, TUNE, **options)
