package org.salvedge.worth.study;

/** A kind of shop and market. Each shop of a world draws its own suppliers, families, bench and prices. */
enum World {
    STEADY("steady", "Flat prices, stable suppliers, 35 to 70 lots: the easy case."),
    FALLING(
            "falling prices",
            "Prices fall by about 1 % a month, by about 2 % in the last ten months, those of big screens faster."),
    SUPPLIER_GONE_BAD(
            "supplier gone bad",
            "One supplier turned bad two to eight of its lots before the end (more broken glass, fewer true claims, more"
                    + " missing) and offers four lots in ten."),
    BAD(
            "falling fast + supplier gone bad",
            "Prices flat, then 2.5 to 4 % down a month for the last five to nine months and on; and a supplier gone bad."),
    TWELVE_LOTS("12-lot history", "Twelve lots bought so far, the last ones unfinished."),
    UNSEEN_MODELS(
            "many unseen models", "Six sets in ten are of models never seen, half of these of families never seen."),
    HEAVY_LOTS(
            "heavy lot effects",
            "What sets of one lot share is twice as strong, on damage, success, minutes and claims."),
    FIX_LEARNT(
            "rising prices, a fix learnt",
            "Prices rise by up to 2 % a month; some months ago the bench learnt to mask contacts well."),
    MIXED_GRADES(
            "mixed grades", "Grade moves prices more, and the sets of one lot share their looks, scratched or clean.");

    private final String title;
    private final String description;

    World(String title, String description) {
        this.title = title;
        this.description = description;
    }

    String title() {
        return title;
    }

    String description() {
        return description;
    }

    Knobs knobs() {
        Knobs ordinary = Knobs.ordinary();
        return switch (this) {
            case STEADY -> ordinary.with(Regime.STEADY);
            case FALLING -> ordinary.with(Regime.FALLING);
            case SUPPLIER_GONE_BAD -> ordinary.withBadSupplier();
            case BAD -> ordinary.with(Regime.FALLING_FAST).withBadSupplier();
            case TWELVE_LOTS -> ordinary.withLots(12);
            case UNSEEN_MODELS -> ordinary.withUnseen(0.6);
            case HEAVY_LOTS -> ordinary.withLotEffect(2);
            case FIX_LEARNT -> ordinary.with(Regime.RISING).withFixLearnt();
            case MIXED_GRADES -> ordinary.withGradeSpread(2.5);
        };
    }

    /** The way of prices. */
    enum Regime {
        STEADY,
        WANDERING,
        FALLING,
        FALLING_FAST,
        RISING
    }

    /**
     * @param fewestLots in the history
     * @param lotEffect strength of what sets of a lot share; 1 = ordinary
     * @param unseen share of offered sets whose model was never seen
     * @param gradeSpread strength of what grade does to price and a lot to grade; 1 = ordinary
     */
    record Knobs(
            int fewestLots,
            int mostLots,
            Regime regime,
            boolean badSupplier,
            double lotEffect,
            double unseen,
            boolean fixLearnt,
            double gradeSpread) {
        static Knobs ordinary() {
            return new Knobs(35, 70, Regime.WANDERING, false, 1, 0, false, 1);
        }

        Knobs with(Regime way) {
            return new Knobs(fewestLots, mostLots, way, badSupplier, lotEffect, unseen, fixLearnt, gradeSpread);
        }

        Knobs withBadSupplier() {
            return new Knobs(fewestLots, mostLots, regime, true, lotEffect, unseen, fixLearnt, gradeSpread);
        }

        Knobs withLots(int lots) {
            return new Knobs(lots, lots, regime, badSupplier, lotEffect, unseen, fixLearnt, gradeSpread);
        }

        Knobs withUnseen(double share) {
            return new Knobs(fewestLots, mostLots, regime, badSupplier, lotEffect, share, fixLearnt, gradeSpread);
        }

        Knobs withLotEffect(double strength) {
            return new Knobs(fewestLots, mostLots, regime, badSupplier, strength, unseen, fixLearnt, gradeSpread);
        }

        Knobs withFixLearnt() {
            return new Knobs(fewestLots, mostLots, regime, badSupplier, lotEffect, unseen, true, gradeSpread);
        }

        Knobs withGradeSpread(double strength) {
            return new Knobs(fewestLots, mostLots, regime, badSupplier, lotEffect, unseen, fixLearnt, strength);
        }
    }
}
