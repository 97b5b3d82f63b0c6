package org.salvedge.manifest;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.manifest.words.Folded;

/** Numbers from 19 to 99 spelled out in English, German, French or Spanish, as sizes sometimes are. */
final class NumberWords {
    private static final Map<String, Integer> ONES = table(
            "one un uno una ein eins",
            "two deux dos zwei",
            "three trois tres drei",
            "four quatre cuatro vier",
            "five cinq cinco funf",
            "six seis sechs",
            "seven sept siete sieben",
            "eight huit ocho acht",
            "nine neuf nueve neun",
            "ten dix diez zehn",
            "eleven onze once elf",
            "twelve douze doce zwolf",
            "thirteen treize trece dreizehn",
            "fourteen quatorze catorce vierzehn",
            "fifteen quinze quince funfzehn",
            "sixteen seize dieciseis sechzehn",
            "seventeen diecisiete siebzehn",
            "eighteen dieciocho achtzehn",
            "nineteen diecinueve neunzehn");
    private static final Map<String, Integer> TENS = table(
            "-",
            "twenty vingt veinte zwanzig",
            "thirty trente treinta dreissig",
            "forty quarante cuarenta vierzig",
            "fifty cinquante cincuenta funfzig",
            "sixty soixante sesenta sechzig",
            "seventy setenta siebzig septante",
            "eighty ochenta achtzig quatrevingt quatrevingts",
            "ninety noventa neunzig nonante");
    private static final List<String> FILLERS =
            List.of("and", "y", "et", "inch", "inches", "zoll", "pouces", "pulgadas", "in", "tv");

    private NumberWords() {}

    private static Map<String, Integer> table(String... lines) {
        Map<String, Integer> table = new HashMap<>();
        for (int i = 0; i < lines.length; i++) {
            for (String word : lines[i].split(" ", -1)) {
                table.put(word, i + 1);
            }
        }
        return table;
    }

    /** The number, or 0 where the text is none. */
    static int read(String folded) {
        int sum = 0;
        for (String word :
                Folded.words(folded.replace("quatre-vingt", "quatrevingt").replace("quatre vingt", "quatrevingt"))) {
            if (FILLERS.contains(word)) {
                continue;
            }
            int value = value(word);
            if (value == 0) {
                return 0;
            }
            sum += value;
        }
        return sum >= 19 && sum <= 150 ? sum : 0;
    }

    private static int value(String word) {
        if (TENS.containsKey(word)) {
            return TENS.getOrDefault(word, 0) * 10;
        }
        if (ONES.containsKey(word)) {
            return ONES.getOrDefault(word, 0);
        }
        int und = word.indexOf("und");
        if (und > 0) { // fünfundfünfzig
            int ones = ONES.getOrDefault(word.substring(0, und), 0);
            int tens = TENS.getOrDefault(word.substring(und + 3), 0);
            return ones > 0 && tens > 0 ? tens * 10 + ones : 0;
        }
        return 0;
    }
}
