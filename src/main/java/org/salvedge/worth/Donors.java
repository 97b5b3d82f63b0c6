package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jgrapht.alg.matching.MaximumWeightBipartiteMatching;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.Text;

/**
 * Which part goes into which set: the pairing of patients with parts in stock and parts still in donors that saves most
 * (maximum-weight bipartite matching, by JGraphT; K. Mehlhorn and S. Naeher, "LEDA", 1999, section 7.8). Part numbers decide what
 * fits; where they are missing, the family does.
 */
public final class Donors {
    private Donors() {}

    /**
     * A set that needs a part.
     *
     * @param numbers that parts of this kind out of sets of its family bear; empty = not known
     * @param saves what the part at hand is worth to it
     */
    public record Patient(String unit, String family, PartKind kind, List<String> numbers, double saves) {
        public Patient {
            numbers = List.copyOf(numbers);
        }
    }

    /**
     * A part in stock, or one that a donor still holds.
     *
     * @param source label of the part, or of the donor
     * @param number printed on it; null = not known
     * @param costs what it would bring otherwise
     */
    public record Supply(
            String source,
            String family,
            PartKind kind,
            @Nullable String number,
            double costs) {}

    /** @param byNumber the part number says that it fits; else the family */
    public record Pair(Patient patient, Supply supply, double gain, boolean byNumber) {}

    /** Pairs that gain something, best first; the gains add up to the most that any pairing can bring. */
    public static List<Pair> pairs(List<Patient> patients, List<Supply> supplies) {
        SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph = new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
        java.util.Set<Integer> left = new java.util.LinkedHashSet<>();
        java.util.Set<Integer> right = new java.util.LinkedHashSet<>();
        Map<DefaultWeightedEdge, Pair> pairs = new HashMap<>();
        int n = patients.size();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < supplies.size(); j++) {
                Pair pair = pair(patients.get(i), supplies.get(j));
                if (pair == null) {
                    continue;
                }
                graph.addVertex(i);
                graph.addVertex(n + j);
                left.add(i);
                right.add(n + j);
                DefaultWeightedEdge edge = graph.addEdge(i, n + j);
                graph.setEdgeWeight(edge, pair.gain());
                pairs.put(edge, pair);
            }
        }
        if (pairs.isEmpty()) {
            return List.of();
        }
        List<Pair> chosen = new ArrayList<>();
        for (DefaultWeightedEdge edge : new MaximumWeightBipartiteMatching<>(graph, left, right)
                .getMatching()
                .getEdges()) {
            Pair pair = pairs.get(edge);
            if (pair != null) {
                chosen.add(pair);
            }
        }
        chosen.sort(Comparator.comparingDouble(Pair::gain)
                .reversed()
                .thenComparing(p -> p.patient().unit(), Text.CODE_POINTS)
                .thenComparing(p -> p.patient().kind())
                .thenComparing(p -> p.supply().source(), Text.CODE_POINTS));
        return chosen;
    }

    /** Null where the part does not fit, or is worth more elsewhere. */
    static @Nullable Pair pair(Patient patient, Supply supply) {
        if (patient.kind() != supply.kind() || patient.unit().equals(supply.source())) {
            return null;
        }
        boolean known = supply.number() != null && !patient.numbers().isEmpty();
        boolean fits = known
                ? patient.numbers().contains(supply.number())
                : patient.family().equals(supply.family());
        double gain = patient.saves() - supply.costs();
        return fits && gain > 0 ? new Pair(patient, supply, gain, known) : null;
    }
}
