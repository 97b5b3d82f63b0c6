package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Maker and model out of one text: the model is the first word that holds a digit and is no size, the maker the words before it. */
final class ModelText {
    /** @param rest what stands after the model; may hold a symptom */
    record Parts(@Nullable String maker, @Nullable String model, String rest) {}

    private static final Set<String> NOT_MAKER = Set.of(
            "tv",
            "led",
            "lcd",
            "oled",
            "qled",
            "smart",
            "television",
            "televisor",
            "fernseher",
            "televiseur",
            "uhd",
            "fhd",
            "hd",
            "4k",
            "8k",
            "ultra",
            "full",
            "inch",
            "inches",
            "zoll",
            "pouces",
            "pulgadas",
            "flat",
            "screen",
            "the",
            "model",
            "modell",
            "modele",
            "modelo",
            "ecran",
            "pantalla",
            "tele",
            "new",
            "used",
            "plasma",
            "display",
            "curved",
            "class",
            "de",
            "cm");
    private static final Pattern NO_MODEL = Pattern.compile(
            "(?i)4k|8k|2k|1080p?|720p|2160p?|4320p?|hdr10\\+?|[0-9]+hz|[0-9]+w|[0-9]+v|[0-9]+k|20[0-3][0-9]|[0-9]+(?:[.,][0-9]+)?(?:\"|''|in|inch|zoll|cm|mm|”|″)?|x[0-9]|[0-9]x|[0-9]+%|[0-9]+st|[0-9]+pcs|h\\.?26[45]|dvb-?t2|wifi[0-9]?|hdmi[0-9]*|usb[0-9.]*");

    private ModelText() {}

    static Parts of(String text) {
        String plain = Sizes.without(text.replaceAll("\\s+", " ")).strip();
        String[] words = plain.split("[\\s,;|()\\[\\]]+|\\s-\\s|\\s/\\s", -1);
        List<String> before = new ArrayList<>();
        for (String word : words) {
            String w = word.replaceAll("^[-:.\"']+|[-:,.\"']+$", "");
            if (w.isEmpty()) {
                continue;
            }
            boolean digit = w.chars().anyMatch(Character::isDigit);
            boolean letter = w.chars().anyMatch(Character::isLetter);
            if (digit && (letter || w.length() >= 5) && !NO_MODEL.matcher(w).matches()) {
                int at = plain.indexOf(w);
                return new Parts(maker(before), w, plain.substring(Math.min(plain.length(), at + w.length())));
            }
            before.add(w);
        }
        return new Parts(null, null, plain);
    }

    private static @Nullable String maker(List<String> words) {
        StringBuilder maker = new StringBuilder();
        for (String w : words) {
            if (!NOT_MAKER.contains(Plain.of(w))
                    && (w.chars().anyMatch(Character::isLetter) || w.equals("&") && maker.length() > 0)) {
                maker.append(maker.length() == 0 ? "" : " ").append(w);
            }
        }
        return maker.length() == 0 ? null : maker.toString();
    }

    /** Makers in capitals stay as written; only outer marks go. */
    static String tidy(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }

    static boolean isUnknown(String text) {
        return Set.of(
                        "",
                        "-",
                        "n/a",
                        "na",
                        "none",
                        "unknown",
                        "unbekannt",
                        "inconnu",
                        "desconocido",
                        "?",
                        "tbc",
                        "k.a.",
                        "s/n")
                .contains(text.strip().toLowerCase(Locale.ROOT));
    }
}
