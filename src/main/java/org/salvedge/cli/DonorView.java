package org.salvedge.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.PartsAtHand;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.worth.Donors;
import org.salvedge.worth.Donors.Pair;
import org.salvedge.worth.Donors.Patient;
import org.salvedge.worth.Donors.Supply;
import org.salvedge.worth.turn.OpenBench;

/** Sets that need a part, parts in stock, and sets with broken glass that still hold theirs. */
final class DonorView {
    /** Value of a part as a share of what its set brings stripped. Assumed, no source. */
    private static final double ASSUMED_SHARE = 0.2;

    private static final int SHOWN = 5;

    private final BenchPlan plan;
    private final List<Part> parts;
    private final Map<String, String> families = new HashMap<>();

    /** @param familyOf family of a set by its label */
    DonorView(BenchPlan plan, List<Part> parts, PartsAtHand.FamilyOf familyOf) {
        this.plan = plan;
        this.parts = parts;
        for (Part p : parts) {
            String family =
                    p.fromUnit() == null ? null : familyOf.family(p.fromUnit().value());
            if (family != null) {
                families.put(p.part(), family);
            }
        }
    }

    List<Pair> pairs() {
        List<Patient> patients = new ArrayList<>();
        List<Supply> supplies = stock();
        for (OpenBench o : plan.open()) {
            String fault = o.what().found();
            if (Fault.PANEL_BROKEN.code().equals(fault)) {
                supplies.addAll(held(o));
            } else if (fault != null) {
                Patient patient = patient(o);
                if (patient != null) {
                    patients.add(patient);
                }
            }
        }
        return Donors.pairs(patients, supplies);
    }

    private @Nullable Patient patient(OpenBench o) {
        Fix fix = plan.fix(o);
        PartKind kind = fix == null ? null : PartKind.neededBy(fix);
        if (kind == null) {
            return null;
        }
        double saves =
                plan.gainWithPart(o) - Math.max(0, plan.prospect(o.what()).gain());
        Set<String> numbers = new HashSet<>();
        for (Part p : parts) {
            if (p.kind() == kind && p.number() != null && o.what().family().equals(families.get(p.part()))) {
                numbers.add(p.number());
            }
        }
        return new Patient(
                o.unit(), o.what().family(), kind, numbers.stream().sorted().toList(), saves);
    }

    private List<Supply> stock() {
        List<Supply> stock = new ArrayList<>();
        for (Part p : parts) {
            if (p.attempt() == null && p.goneOn() == null && p.tested() != PartTest.BAD) {
                stock.add(new Supply(
                        p.part(),
                        families.getOrDefault(p.part(), ""),
                        p.kind(),
                        p.number(),
                        p.value().toDoubleForStatistics()));
            }
        }
        return stock;
    }

    private List<Supply> held(OpenBench donor) {
        Map<PartKind, double[]> usual = new EnumMap<>(PartKind.class);
        Set<PartKind> taken = new HashSet<>();
        for (Part p : parts) {
            double[] sum = usual.computeIfAbsent(p.kind(), k -> new double[2]);
            sum[0]++;
            sum[1] += p.value().toDoubleForStatistics();
            if (p.fromUnit() != null && p.fromUnit().value().equals(donor.unit())) {
                taken.add(p.kind());
            }
        }
        List<Supply> held = new ArrayList<>();
        for (PartKind kind : PartKind.BEHIND_THE_GLASS) {
            double[] sum = usual.get(kind);
            double costs = sum == null ? ASSUMED_SHARE * Math.max(0, plan.stripped(donor)) : sum[1] / sum[0];
            if (!taken.contains(kind)) {
                held.add(new Supply(donor.unit(), donor.what().family(), kind, null, costs));
            }
        }
        return held;
    }

    static List<Map<String, @Nullable Object>> json(List<Pair> pairs) {
        List<Map<String, @Nullable Object>> rows = new ArrayList<>();
        for (Pair p : pairs) {
            Map<String, @Nullable Object> row = new LinkedHashMap<>();
            row.put("patient", p.patient().unit());
            row.put("source", p.supply().source());
            row.put("kind", p.patient().kind());
            row.put("gain", p.gain());
            row.put("by", p.byNumber() ? "number" : "family");
            rows.add(row);
        }
        return rows;
    }

    static void say(Session session, List<Pair> pairs) {
        if (pairs.isEmpty()) {
            return;
        }
        List<String> words = new ArrayList<>();
        for (Pair p : pairs.subList(0, Math.min(SHOWN, pairs.size()))) {
            words.add(String.format(
                    Locale.ROOT,
                    "%s of %s into %s (%.0f, by %s)",
                    p.patient().kind().code(),
                    p.supply().source(),
                    p.patient().unit(),
                    p.gain(),
                    p.byNumber() ? "number" : "family"));
        }
        Wording.say(
                session, "Donors: " + String.join("; ", words) + (pairs.size() > words.size() ? "; ..." : "") + ".");
    }
}
