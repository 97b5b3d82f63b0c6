package org.salvedge.shop;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** The fault, fix and claim codes in force: those built in and those the shop added. Order is that of lists on screen. */
public record Codes(Map<Fault, String> faults, Map<Fix, String> fixes, Map<Claim, String> claims) {
    public static final Codes BUILT_IN = new Codes(Fault.BUILT_IN, Fix.BUILT_IN, Claim.BUILT_IN);
    private static final Pattern WORD = Pattern.compile("[a-z][a-z0-9]*(_[a-z0-9]+)*");
    private static final int LONGEST = 40;

    public Codes {
        faults = Collections.unmodifiableMap(new LinkedHashMap<>(faults));
        fixes = Collections.unmodifiableMap(new LinkedHashMap<>(fixes));
        claims = Collections.unmodifiableMap(new LinkedHashMap<>(claims));
    }

    static void requireWord(String code) {
        if (!WORD.matcher(code).matches() || code.length() > LONGEST) {
            throw new IllegalArgumentException("\"" + code
                    + "\" is not a code; use lower-case words joined by _, at most " + LONGEST + " characters");
        }
    }

    @SafeVarargs
    static <K> Map<K, String> ordered(Map.Entry<K, String>... entries) {
        Map<K, String> map = new LinkedHashMap<>();
        for (Map.Entry<K, String> e : entries) {
            map.put(e.getKey(), e.getValue());
        }
        return Collections.unmodifiableMap(map);
    }
}
