package org.salvedge.shop;

import java.time.LocalDate;
import java.util.Currency;
import org.jspecify.annotations.Nullable;

/** Ordinary facts for tests, in euros: set only what the test is about. */
public final class Facts {
    public static final Currency EUR = Currency.getInstance("EUR");

    private Facts() {}

    public static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    public static Money eur(String amount) {
        return Money.parse(amount, EUR);
    }

    public static UnitId unit(String label) {
        return new UnitId(label);
    }

    /** Bought and received on one day. */
    public static Lot lot(String name, String day, String price) {
        return new Lot(
                new LotId(name),
                "Kavo Salvage",
                day(day),
                EUR,
                null,
                eur(price),
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    public static TvSet.Builder set(String label, String lot) {
        return TvSet.builder(new UnitId(label), new LotId(lot))
                .maker("Lumka")
                .model("LK55-1")
                .family("LK55")
                .inches(Quantity.of(55))
                .line(1);
    }

    /** @param passed null = no retest */
    public static Attempt attempt(
            int number, String unit, String time, Fault fault, Fix fix, @Nullable Boolean passed) {
        return new Attempt(
                number,
                new UnitId(unit),
                java.time.LocalDateTime.parse(time),
                "Ada",
                fault,
                fix,
                Quantity.of(7),
                fix.equals(Fix.NONE) ? null : Quantity.parse("24.5"),
                null,
                passed,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    public static Exit exit(String unit, String day, ExitKind kind, String gross) {
        return exit(unit, day, 1, kind, gross, null);
    }

    public static Exit exit(String unit, String day, int seq, ExitKind kind, String gross, @Nullable Boolean gone) {
        return new Exit(
                new UnitId(unit),
                day(day),
                seq,
                kind,
                gone,
                eur(gross),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    public static Comeback comeback(String unit, String day, boolean restocked) {
        return new Comeback(new UnitId(unit), day(day), null, eur("50.00"), null, restocked);
    }
}
