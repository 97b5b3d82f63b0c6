#!/usr/bin/env python3
"""Writes a history package of N sets for timing: five CSV files and datapackage.json, every history possible.
usage: make_package.py SETS OUT [SEED]     Standard library only; a million sets take about a minute."""
import csv, datetime, json, os, random, sys

FAULTS = {"row_drive": ("contact_mask", .6, 40, 0), "column_drive": ("rebond_film", .15, 55, 4), "timing_board": ("timing_board_swap", .7, 26, 22),
          "backlight": ("led_strips", .78, 70, 24), "power_board": ("power_board_repair", .76, 33, 12), "main_board": ("main_board_swap", .7, 24, 34),
          "firmware": ("reflash", .74, 19, 0), "panel_broken": ("none", 0, 5, 0), "none_found": ("none", .95, 8, 0), "unknown": ("reseat_cable", .15, 15, 0)}
NAMES = list(FAULTS)
CLAIMS = ["horizontal_lines", "vertical_lines", "half_screen", "no_picture", "dead", "boot_loop", "untested", "customer_return", "cracked", "other"]
DAY0 = datetime.date(2016, 1, 4)
FIELDS = {
    "lots": "lot:string supplier:string bought_on:date currency:string price:number premium:number freight:number",
    "units": "unit:string lot:string line:integer maker:string model:string family:string serial:string inches:number claimed:string arrived:boolean",
    "attempts": "attempt:integer unit:string started_at:datetime technician:string fault:string fix:string diagnosis_minutes:number fix_minutes:number parts_cost:number passed:boolean grade:string",
    "exits": "unit:string on:date exit:string gross:number fees:number shipping:number minutes:number channel:string",
    "comebacks": "unit:string on:date fault:string refund:number cost:number restocked:boolean"}


def main():
    n, out = int(sys.argv[1]), sys.argv[2]
    r = random.Random(int(sys.argv[3]) if len(sys.argv) > 3 else 1)
    os.makedirs(out, exist_ok=True)
    families = [(f"M{i % 9}", f"F{i:02d}-", 32 + i % 9 * 5) for i in range(60)]
    files = {k: open(os.path.join(out, k + ".csv"), "w", newline="", encoding="utf-8") for k in FIELDS}
    w = {k: csv.writer(f, lineterminator="\r\n") for k, f in files.items()}
    for k, spec in FIELDS.items():
        w[k].writerow([c.split(":")[0] for c in spec.split()])
    lots = max(1, n // 90)
    days = [DAY0 + datetime.timedelta(i) for i in range(3900)]
    attempt = unit = 0
    for lot in range(lots):
        bought = lot * 3400 // lots
        name = f"L{lot + 1:05d}"
        size = n // lots + (1 if lot < n % lots else 0)
        w["lots"].writerow([name, f"Seller {lot * 7 % 40}", days[bought], "EUR", f"{size * 23}.00", f"{size * 3}.50", f"{size * 2}.25"])
        for line in range(1, size + 1):
            maker, beginning, inches = families[min(59, int(r.expovariate(1 / 14)))]
            label = f"{name}-{line:03d}"
            fault = NAMES[min(9, int(r.random() ** 1.2 * 10))]
            arrived = r.random() > .015
            w["units"].writerow([label, name, line, maker, beginning + str(r.randrange(8)), beginning, f"{r.randrange(16 ** 9):09X}", inches,
                                 CLAIMS[r.randrange(10)], "true" if arrived else "false"])
            if not arrived or r.random() < .02:
                continue
            day = bought + 3 + r.randrange(40)
            passed = False
            for turn in range(2):
                fix, chance, minutes, parts = FAULTS[fault]
                passed = r.random() < chance
                attempt += 1
                at = f"{days[day]}T{8 + r.randrange(9):02d}:{r.randrange(60):02d}:00"
                tried = fix != "none"
                w["attempts"].writerow([attempt, label, at, "ABC"[r.randrange(3)], fault, fix, round(r.lognormvariate(2.1, .4), 1),
                                        round(r.lognormvariate(0, .5) * minutes, 1) if tried else "", f"{parts}.00" if parts and tried else "",
                                        "true" if passed else "false" if tried else "", "AB"[r.randrange(2)] if passed else ""])
                if passed or r.random() < .6:
                    break
                day += 1 + r.randrange(6)
            if r.random() < .06:
                continue
            day += 1 + r.randrange(30)
            if passed:
                gross = inches * 3.4 * r.lognormvariate(0, .15)
                w["exits"].writerow([label, days[day], "sold", f"{gross:.2f}", f"{gross * .09:.2f}", "12.50" if r.random() < .5 else "", round(r.uniform(6, 18), 1), "web"])
                if r.random() < .03:
                    w["comebacks"].writerow([label, days[day + 1 + r.randrange(60)], fault, f"{gross * .5:.2f}", "15.00", "false"])
            else:
                kind = "stripped" if r.random() < .7 else "recycled"
                gross = inches * .5 if kind == "stripped" else 0
                w["exits"].writerow([label, days[day], kind, f"{gross:.2f}", "3.00", "", round(r.uniform(5, 30), 1), ""])
    for f in files.values():
        f.close()
    json.dump(package(), open(os.path.join(out, "datapackage.json"), "w"), indent=1)


def package():
    keys = {"lots": ["lot"], "units": ["unit"], "attempts": ["attempt"], "exits": ["unit", "on"], "comebacks": ["unit", "on"]}
    return {"profile": "tabular-data-package", "name": "history", "resources": [
        {"name": k, "path": k + ".csv", "profile": "tabular-data-resource", "format": "csv", "mediatype": "text/csv", "encoding": "utf-8",
         "schema": {"fields": [dict(zip(("name", "type"), c.split(":"))) for c in spec.split()], "primaryKey": keys[k], "missingValues": [""]}}
        for k, spec in FIELDS.items()]}


main()
