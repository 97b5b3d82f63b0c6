package org.salvedge.shop;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** The fault, fix and claim codes in force: those built in and those the shop added. Order is that of lists on screen. */
public record Codes(Map<Fault, String> faults, Map<Fix, String> fixes, Map<Claim, String> claims) {
    public static final Codes BUILT_IN = new Codes(Fault.BUILT_IN, Fix.BUILT_IN, Claim.BUILT_IN);

    public Codes {
        faults = Collections.unmodifiableMap(new LinkedHashMap<>(faults));
        fixes = Collections.unmodifiableMap(new LinkedHashMap<>(fixes));
        claims = Collections.unmodifiableMap(new LinkedHashMap<>(claims));
    }
}
