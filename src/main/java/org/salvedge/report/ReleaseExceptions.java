package org.salvedge.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.ReleaseChecks;
import org.salvedge.ledger.SoldSets;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.UnitId;

/**
 * Sales without all release checks: those that were made with one unmet, and those of which the record does not say.
 *
 * @param sales how many there were
 * @param lines one for each sale that lacks a check, those unmet first, then by day and label
 */
public record ReleaseExceptions(int sales, List<Line> lines) {
    static final String SHEET = "Release checks";

    /**
     * @param unmet columns of the checks that were recorded as not done, or left unmet with a reason
     * @param unknown those that the record does not say anything of
     */
    public record Line(
            LocalDate on,
            UnitId unit,
            String unmet,
            String unknown,
            @Nullable String reason) {}

    public ReleaseExceptions {
        lines = List.copyOf(lines);
    }

    public static ReleaseExceptions of(SoldSets sold) {
        Map<UnitId, List<Attempt>> attempts = new HashMap<>();
        sold.attempts()
                .forEach(a -> attempts.computeIfAbsent(a.unit(), u -> new ArrayList<>())
                        .add(a));
        Map<UnitId, List<Comeback>> comebacks = new HashMap<>();
        sold.comebacks()
                .forEach(c -> comebacks
                        .computeIfAbsent(c.unit(), u -> new ArrayList<>())
                        .add(c));
        List<Line> lines = new ArrayList<>();
        int sales = 0;
        for (Exit sale : sold.sales()) {
            if (sale.leaves()) {
                sales++;
                Line line = line(
                        sale,
                        attempts.getOrDefault(sale.unit(), List.of()),
                        comebacks.getOrDefault(sale.unit(), List.of()));
                if (!line.unmet.isEmpty() || !line.unknown.isEmpty()) {
                    lines.add(line);
                }
            }
        }
        lines.sort(java.util.Comparator.comparing((Line l) -> l.unmet.isEmpty())
                .thenComparing(Line::on)
                .thenComparing(Line::unit));
        return new ReleaseExceptions(sales, lines);
    }

    private static Line line(Exit sale, List<Attempt> attempts, List<Comeback> comebacks) {
        ReleaseChecks checks = ReleaseChecks.of(
                attempts.stream()
                        .filter(a -> !a.startedAt().toLocalDate().isAfter(sale.on()))
                        .toList(),
                comebacks.stream().filter(c -> !c.on().isAfter(sale.on())).toList());
        Map<ReleaseChecks.Check, @Nullable Boolean> said = new LinkedHashMap<>();
        said.put(ReleaseChecks.Check.SAFETY_TESTED, checks.safetyTested());
        said.put(ReleaseChecks.Check.OWNER_DATA_RESET, checks.ownerDataReset());
        said.put(ReleaseChecks.Check.DISCLOSED, checks.workaround() ? sale.disclosed() : Boolean.TRUE);
        List<String> unmet = new ArrayList<>();
        List<String> unknown = new ArrayList<>();
        said.forEach((check, met) -> {
            if (!Boolean.TRUE.equals(met)) {
                (met != null || sale.unmetReason() != null ? unmet : unknown).add(check.column());
            }
        });
        return new Line(
                sale.on(), sale.unit(), String.join(", ", unmet), String.join(", ", unknown), sale.unmetReason());
    }

    /** Sales made with a check unmet. */
    public int unmet() {
        return (int) lines.stream().filter(l -> !l.unmet.isEmpty()).count();
    }

    /** The other sales of which the record does not say that all checks were met. */
    public int unknown() {
        return lines.size() - unmet();
    }

    Table table() {
        Table.Builder table = Table.of(
                        Figure.SOLD_ON.column(),
                        Figure.UNIT.column(),
                        Figure.CHECKS_UNMET.column(),
                        Figure.CHECKS_UNKNOWN.column(),
                        Figure.CHECKS_WHY.column())
                .title("Sales without all release checks");
        lines.forEach(l -> table.row(l.on, l.unit, l.unmet, l.unknown, l.reason));
        return table.build();
    }
}
