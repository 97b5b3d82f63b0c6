package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.salvedge.shop.Claim;

/** From a seller's words to a claim code. The worst for the value wins: broken glass, then symptoms, then states. */
final class ClaimReader {
    /** A claim, how sure it is (0 to 1), and the words that it rests on. */
    record Reading(Claim claim, double sureness, String words) {}

    /** Worst first; those after {@code OTHER} are states and give way to any symptom. */
    private static final List<Claim> WORST_FIRST = List.of(
            Claim.CRACKED,
            Claim.DEAD,
            Claim.HORIZONTAL_LINES,
            Claim.VERTICAL_LINES,
            Claim.HALF_SCREEN,
            Claim.NO_PICTURE,
            Claim.BOOT_LOOP,
            Claim.DIM_PATCHY,
            Claim.NO_SOUND,
            Claim.OTHER,
            Claim.UNTESTED,
            Claim.CUSTOMER_RETURN,
            Claim.WORKING);

    /** Words between the words of a phrase. */
    private static final int GAP = 2;
    /** How far a negation reaches. */
    private static final int REACH = 3;

    private static final int MOST_KEPT = 50_000;
    private static final Set<String> AFTER = Set.of("not", "nicht", "pas", "no");

    private static final Set<String> PARTS = Set.of(
            "wifi",
            "wlan",
            "wi",
            "bluetooth",
            "hdmi",
            "usb",
            "port",
            "ports",
            "tuner",
            "remote",
            "app",
            "apps",
            "lan",
            "scart",
            "buchse",
            "anschluss",
            "fernbedienung",
            "telecommande",
            "prise",
            "mando",
            "puerto",
            "netflix",
            "ethernet",
            "aux",
            "button",
            "buttons",
            "tasten",
            "joystick",
            "sender");

    private record Hit(SymptomWords.Phrase phrase, int from, int to) {}

    private final SymptomWords words;
    private final Map<String, Reading> known = new HashMap<>();

    ClaimReader(SymptomWords words) {
        this.words = words;
    }

    /** @param text all the seller's words for the set, columns joined by commas */
    Reading read(String text) {
        Reading seen = known.get(text);
        if (seen != null) {
            return seen;
        }
        Reading reading = work(text);
        if (known.size() < MOST_KEPT) {
            known.put(text, reading);
        }
        return reading;
    }

    private Reading work(String text) {
        String[] w = Plain.clauses(text).split(" +");
        if (w.length == 0 || w.length == 1 && w[0].isEmpty()) {
            return new Reading(Claim.UNTESTED, 0.2, "");
        }
        List<Hit> hits = longestOnly(hits(w));
        Claim worst = null;
        String found = "";
        for (Hit h : hits) {
            if (!h.phrase.own() && negated(w, h)) {
                continue;
            }
            Claim c = h.phrase.claim().equals(Claim.DEAD) && ofAPart(w, h) ? Claim.OTHER : h.phrase.claim();
            if (worst == null || rank(c) < rank(worst)) {
                worst = c;
                found = String.join(" ", java.util.Arrays.copyOfRange(w, h.from, h.to));
            }
        }
        if (worst == null) {
            return new Reading(Claim.OTHER, 0.3, "");
        }
        return new Reading(worst, worst.equals(Claim.OTHER) ? 0.6 : 0.9, found);
    }

    private static int rank(Claim c) {
        int r = WORST_FIRST.indexOf(c);
        return r < 0 ? WORST_FIRST.indexOf(Claim.OTHER) : r;
    }

    private List<Hit> hits(String[] w) {
        List<Hit> hits = new ArrayList<>();
        for (int i = 0; i < w.length; i++) {
            for (SymptomWords.Phrase p : words.beginningWith(w[i])) {
                int to = match(p, w, i);
                if (to > 0) {
                    hits.add(new Hit(p, i, to));
                }
            }
        }
        return hits;
    }

    private static int match(SymptomWords.Phrase p, String[] w, int at) {
        int i = at;
        for (int k = 0; k < p.words().length; k++) {
            int limit = k == 0 ? at : Math.min(w.length - 1, i + GAP);
            boolean found = false;
            for (int j = k == 0 ? at : i; j <= limit && j < w.length; j++) {
                if (w[j].equals(",")) {
                    break;
                }
                boolean same = p.open()[k] ? w[j].startsWith(p.words()[k]) : w[j].equals(p.words()[k]);
                if (same) {
                    i = j + 1;
                    found = true;
                    break;
                }
            }
            if (!found) {
                return -1;
            }
        }
        return i;
    }

    /** A hit within the span of a longer one is part of it: "no power" is not "power". */
    private static List<Hit> longestOnly(List<Hit> hits) {
        List<Hit> kept = new ArrayList<>();
        for (int i = 0; i < hits.size(); i++) {
            Hit h = hits.get(i);
            boolean inside = false;
            for (int j = 0; j < hits.size(); j++) {
                Hit o = hits.get(j);
                boolean longer = o.phrase.words().length > h.phrase.words().length;
                inside |= j != i && longer && o.from <= h.from && o.to >= h.to;
                inside |= o.phrase.own() && !h.phrase.own() && o.from <= h.from && o.to >= h.to;
            }
            if (!inside) {
                kept.add(h);
            }
        }
        return kept;
    }

    /** Whether a "no" before it, or right after it within the clause, takes it back. */
    private static boolean negated(String[] w, Hit h) {
        if (h.phrase.saysNo()) {
            return false;
        }
        for (int i = h.from - 1; i >= Math.max(0, h.from - REACH) && !w[i].equals(","); i--) {
            if (SymptomWords.NEGATIONS.contains(w[i])) {
                return true;
            }
        }
        for (int i = h.from; i < h.to; i++) {
            if (SymptomWords.NEGATIONS.contains(w[i])) {
                return true;
            }
        }
        return h.to < w.length && AFTER.contains(w[h.to]) && !(h.to + 1 < w.length && startsPhrase(w[h.to + 1]));
    }

    /** "HDMI does not work" is said of a part, not of the set. */
    private static boolean ofAPart(String[] w, Hit h) {
        for (int i = h.from - 1; i >= 0 && !w[i].equals(","); i--) {
            if (PARTS.contains(w[i])) {
                return true;
            }
        }
        for (int i = h.from; i < w.length && !w[i].equals(","); i++) {
            if (PARTS.contains(w[i])) {
                return true;
            }
        }
        return false;
    }

    private static boolean startsPhrase(String word) {
        return Set.of("power", "picture", "image", "sound", "stand", "remote", "backlight", "display", "audio")
                .contains(word);
    }
}
