package org.salvedge.worth;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Currency;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Claim;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Money;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.shop.Settings;
import org.salvedge.shop.UnitId;

/**
 * An invented shop that takes boards out of sets with broken glass and puts them into sister sets: lot after lot is bought, worked
 * and sold, and each lot's net recovery is known to the cent. Another that never does so is the same but for that.
 */
final class HarvestingShop {
    static final Currency EUR = Currency.getInstance("EUR");
    static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final int FAMILIES = 5;
    private static final int FIRST = (int) LocalDate.of(2024, 1, 8).toEpochDay();
    private static final int DAYS_A_LOT = 14;
    private static final String[] FAULTS = {"panel_broken", "main_board", "power_board", "backlight", "none_found"};
    private static final double[] SHARE = {0.22, 0.24, 0.2, 0.14, 0.2};
    private static final String[] FIX = {"none", "main_board_swap", "power_board_repair", "led_strips", "none"};
    private static final double[] SAVED = {0, 0.75, 0.8, 0.7, 0.95};
    private static final double[] BOARD = {0, 45, 30, 38, 0};
    private static final int[] PUT_DOWN = {0, 12, 9, 8, 0};
    private static final PartKind[] KIND = {
        PartKind.OTHER, PartKind.MAIN_BOARD, PartKind.POWER_BOARD, PartKind.LED_STRIPS, PartKind.OTHER
    };

    private final SplittableRandom random;
    private final double takeUp;
    private final boolean numbers;
    private final HistoryBuilder history = History.builder(EUR);
    private final Map<String, Part> parts = new HashMap<>();
    private final Map<List<Object>, Deque<String>> stock = new HashMap<>();
    private final Map<UnitId, Integer> idOf = new HashMap<>();
    private final Map<Integer, Integer> seqOf = new HashMap<>();
    private final Map<Integer, Integer> lotOf = new HashMap<>();
    private final List<Double> net = new ArrayList<>();
    private int sets;
    private int attempts;
    private int lots;

    /**
     * @param takeUp chance that a board at hand is used; 0 = no board is ever taken out
     * @param numbers main boards bear numbers, and those of the first two families the same
     */
    HarvestingShop(long seed, double takeUp, boolean numbers) {
        this.numbers = numbers;
        random = new SplittableRandom(seed);
        this.takeUp = takeUp;
    }

    /** A lot to come: family of each set. */
    record Listed(int[] family) {}

    Listed listed(int sets) {
        int[] family = new int[sets];
        for (int i = 0; i < sets; i++) {
            family[i] = random.nextInt(FAMILIES);
        }
        return new Listed(family);
    }

    LocalDate dayOfNext() {
        return LocalDate.ofEpochDay(FIRST + (long) lots * DAYS_A_LOT);
    }

    History history() {
        return history.build();
    }

    List<Part> parts() {
        return parts.values().stream()
                .sorted((a, b) -> a.part().compareTo(b.part()))
                .toList();
    }

    Question question(Listed lot, int draws) {
        List<Candidate> candidates = new ArrayList<>();
        for (int f : lot.family()) {
            candidates.add(new Candidate(
                    "lot", candidates.size() + 2, "Maker", "F" + f + "-55", 55.0, new Claim("untested"), null));
        }
        return new Question(candidates, "Tidewell", dayOfNext(), draws, 1);
    }

    /** What a lot has brought so far, net, in its own books. */
    double net(int lot) {
        return net.get(lot);
    }

    int lots() {
        return lots;
    }

    /** Buys the lot, works it through and sells it. */
    void work(Listed lot) {
        int day = FIRST + lots * DAYS_A_LOT;
        history.lot("L" + (1000 + lots), history.suppliers().number("Tidewell"), day, day, 0, 0);
        double price = Math.exp(0.04 * random.nextGaussian());
        double damage = Math.exp(0.2 * random.nextGaussian());
        net.add(0.0);
        List<Integer> patients = new ArrayList<>();
        int first = sets;
        int[] faults = new int[lot.family().length];
        for (int i = 0; i < faults.length; i++) {
            int id = sets++;
            history.set(
                    id,
                    lots,
                    history.families().number("F" + lot.family()[i]),
                    history.makers().number("Maker"),
                    history.models().number("F" + lot.family()[i] + "-55"),
                    history.claims().number("untested"),
                    55_000_000L,
                    -1,
                    -1,
                    -1,
                    History.ARRIVED | History.ON_MANIFEST,
                    -1,
                    0);
            UnitId unit = new UnitId(String.format("L%d-%03d", 1000 + lots, i + 1));
            history.label(unit.value());
            idOf.put(unit, id);
            lotOf.put(id, lots);
            faults[i] = fault(damage);
            if (faults[i] == 0) {
                add(lots, donor(id, unit, lot.family()[i], day));
            } else {
                patients.add(i);
            }
        }
        for (int i : patients) {
            add(lots, turn(first + i, lot.family()[i], faults[i], price, day));
        }
        sellOff(day + 11);
        lots++;
    }

    private void add(int lot, double amount) {
        net.set(lot, net.get(lot) + amount);
    }

    /** Boards that lay for a whole lot go to whoever wants them. */
    private void sellOff(int day) {
        for (Deque<String> there : stock.values()) {
            for (String label : List.copyOf(there)) {
                Part p = requireNonNull(parts.get(label));
                if (p.on().toEpochDay() < day - DAYS_A_LOT) {
                    there.remove(label);
                    LocalDate gone = LocalDate.ofEpochDay(day);
                    parts.put(
                            label,
                            new Part(
                                    label,
                                    p.fromUnit(),
                                    p.kind(),
                                    p.number(),
                                    p.on(),
                                    p.value(),
                                    p.tested(),
                                    null,
                                    gone));
                    takings(idOf(p), day, p.value().toDoubleForStatistics());
                }
            }
        }
    }

    private @Nullable String number(int family, int k) {
        return numbers && k == 1 ? "MB-" + Math.max(1, family) : null;
    }

    private List<Object> fit(int family, int k) {
        String number = number(family, k);
        return number == null ? List.of(family, k) : List.of(number, k);
    }

    private int fault(double damage) {
        double u = random.nextDouble() * (1 + SHARE[0] * (damage - 1));
        int k = 0;
        while (k < FAULTS.length - 1 && u >= SHARE[k] * (k == 0 ? damage : 1)) {
            u -= SHARE[k] * (k == 0 ? damage : 1);
            k++;
        }
        return k;
    }

    private double donor(int id, UnitId unit, int family, int day) {
        attempt(id, day + 2, 0, 0, -1, 5, 0);
        double gross = 30 + 4 * random.nextGaussian();
        if (takeUp > 0) {
            for (int k = 1; k <= 3; k++) {
                String label = String.format("P%05d", parts.size() + 1);
                Money value = Money.of(BigDecimal.valueOf(PUT_DOWN[k]), EUR);
                LocalDate on = LocalDate.ofEpochDay(day + 3L);
                parts.put(
                        label, new Part(label, unit, KIND[k], number(family, k), on, value, PartTest.GOOD, null, null));
                stock.computeIfAbsent(fit(family, k), key -> new ArrayDeque<>()).add(label);
            }
            // All that is not used goes with the carcass in the end; its price is what the boards were put down at.
            gross -= PUT_DOWN[1] + PUT_DOWN[2] + PUT_DOWN[3];
        }
        exit(id, day + 3, ExitKind.STRIPPED, 1, gross, 12);
        return gross - 24 * (5 + 12) / 60.0;
    }

    private double turn(int id, int family, int k, double price, int day) {
        Deque<String> there = stock.getOrDefault(fit(family, k), new ArrayDeque<>());
        boolean saved = random.nextDouble() < SAVED[k];
        double minutes = 25 + 15 * random.nextDouble();
        double cost = BOARD[k] == 0 ? 0 : BOARD[k] * Math.exp(0.15 * random.nextGaussian());
        @Nullable String used = null;
        if (saved && BOARD[k] > 0 && !there.isEmpty() && random.nextDouble() < takeUp) {
            used = there.remove();
            cost = PUT_DOWN[k];
        } else if (!saved) {
            cost = 0;
        }
        attempt(id, day + 4, k, k, saved ? 1 : 0, minutes, cost);
        double net = -cost - 24 * minutes / 60;
        if (used != null) {
            Part p = requireNonNull(parts.get(used));
            parts.put(
                    used,
                    new Part(
                            p.part(),
                            p.fromUnit(),
                            p.kind(),
                            p.number(),
                            p.on(),
                            p.value(),
                            p.tested(),
                            attempts,
                            null));
            takings(idOf(p), day + 4, PUT_DOWN[k]);
        }
        double gross = saved
                ? (150 + 15 * family) * price * Math.exp(0.12 * random.nextGaussian())
                : 30 + 4 * random.nextGaussian();
        exit(id, day + 10, saved ? ExitKind.SOLD : ExitKind.STRIPPED, 1, gross, 12);
        return net + gross - 24 * 12 / 60.0;
    }

    private void attempt(int id, int day, int fault, int fix, int passed, double minutes, double cost) {
        history.attempt(
                id,
                day,
                36_000,
                ++attempts,
                history.faults().number(FAULTS[fault]),
                history.fixes().number(FIX[fix].equals("none") && passed >= 0 ? "reseat_cable" : FIX[fix]),
                -1,
                passed,
                passed == 1 ? 0 : -1,
                0,
                Math.round(minutes * 1e6),
                Math.round(cost * 100));
    }

    private void exit(int id, int day, ExitKind kind, int gone, double gross, double minutes) {
        history.exit(
                id,
                day,
                seqOf.merge(id, 1, Integer::sum),
                kind.ordinal(),
                gone,
                Math.round(gross * 100),
                0,
                minutes < 0 ? -1 : Math.round(minutes * 1e6),
                -1,
                -1);
    }

    private int idOf(Part p) {
        return requireNonNull(idOf.get(requireNonNull(p.fromUnit())));
    }

    private void takings(int donor, int day, double put) {
        exit(donor, day, ExitKind.STRIPPED, 0, put, -1);
        add(requireNonNull(lotOf.get(donor)), put);
    }
}
