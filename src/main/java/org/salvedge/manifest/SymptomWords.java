package org.salvedge.manifest;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.salvedge.shop.Claim;

/** Sellers' words for what is wrong with a set, in English, German, French and Spanish, as phrases over plain words. */
final class SymptomWords {
    /** A phrase of plain words; {@code open[i]} where word i may go on. */
    record Phrase(Claim claim, String[] words, boolean[] open, boolean own) {
        /** Words that say no themselves, as in "no power", are part of the phrase and no negation of it. */
        boolean saysNo() {
            for (String w : words) {
                if (NEGATIONS.contains(w)) {
                    return true;
                }
            }
            return false;
        }
    }

    static final Set<String> NEGATIONS = Set.of(
            "no",
            "not",
            "non",
            "without",
            "never",
            "nor",
            "none",
            "kein",
            "keine",
            "keinen",
            "keinerlei",
            "nicht",
            "ohne",
            "pas",
            "sans",
            "aucun",
            "aucune",
            "ni",
            "sin",
            "ningun",
            "ninguna",
            "nunca",
            "isn",
            "isnt",
            "free");

    private final Map<String, List<Phrase>> byFirst = new HashMap<>();
    private final List<Phrase> openFirst = new ArrayList<>();

    SymptomWords(Map<String, String> own) {
        try (InputStream in = Objects.requireNonNull(SymptomWords.class.getResourceAsStream("symptoms.txt"));
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (!line.startsWith("#") && line.contains(":")) {
                    Claim claim = new Claim(line.substring(0, line.indexOf(':')));
                    for (String p : line.substring(line.indexOf(':') + 1).split("\\|", -1)) {
                        add(claim, p.strip(), false);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        own.forEach((words, claim) -> add(new Claim(claim), Plain.of(words), true));
    }

    private void add(Claim claim, String phrase, boolean own) {
        if (phrase.isEmpty()) {
            return;
        }
        String[] words = phrase.split(" +");
        boolean[] open = new boolean[words.length];
        for (int i = 0; i < words.length; i++) {
            open[i] = words[i].endsWith("*");
            words[i] = open[i] ? words[i].substring(0, words[i].length() - 1) : words[i];
        }
        Phrase p = new Phrase(claim, words, open, own);
        if (open[0]) {
            openFirst.add(p);
        } else {
            byFirst.computeIfAbsent(words[0], k -> new ArrayList<>()).add(p);
        }
    }

    List<Phrase> beginningWith(String word) {
        List<Phrase> exact = byFirst.getOrDefault(word, List.of());
        List<Phrase> all = new ArrayList<>(exact);
        for (Phrase p : openFirst) {
            if (word.startsWith(p.words()[0])) {
                all.add(p);
            }
        }
        return all;
    }
}
