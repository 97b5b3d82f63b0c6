package org.salvedge.shop;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A growing dictionary of texts numbered from 0 in order of first sight; -1 stands for none. */
public final class Names implements java.io.Serializable {
    private final List<String> texts = new ArrayList<>();
    private final Map<String, Integer> numbers = new HashMap<>();

    /** The number of a text, given it now if it is new. */
    public int number(String text) {
        Integer known = numbers.get(text);
        if (known != null) {
            return known;
        }
        int next = texts.size();
        texts.add(text);
        numbers.put(text, next);
        return next;
    }

    /** The number of a text, or -1. */
    public int find(String text) {
        return numbers.getOrDefault(text, -1);
    }

    /** The number of a text; where it is not there, of the first that differs in letters' case and outer spaces only; or -1. */
    public int findAlike(String text) {
        int exact = find(text);
        for (int i = 0; exact < 0 && i < texts.size(); i++) {
            exact = texts.get(i).strip().equalsIgnoreCase(text.strip()) ? i : -1;
        }
        return exact;
    }

    /** The text, "" for -1. */
    public String text(int number) {
        return number < 0 ? "" : texts.get(number);
    }

    public int size() {
        return texts.size();
    }

    public List<String> all() {
        return List.copyOf(texts);
    }
}
