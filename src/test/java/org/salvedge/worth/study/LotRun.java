package org.salvedge.worth.study;

import java.util.List;
import org.salvedge.shop.ExitKind;

/**
 * The life of one lot from the pallet to the last comeback: triage, diagnosis, fixes up to the technician's patience, a second
 * fix at times, stripping, selling after a while on the shelf. The same code makes the histories, the outcomes, and the
 * oracle's draws.
 */
final class LotRun {
    private static final int LOCAL = 0;
    private static final int POSTED = 1;
    private static final double FEE = 0.115;

    private final List<Family> families;
    private final Bench bench;
    private final double gradeSpread;
    private final Listing lot;
    private final LotFate fate;
    private final Market market;
    private final Recorder recorder;
    private final Dice dice;
    private final int arrival;

    private double clock; // working days
    private int index;
    private long cents;
    private int minutes;
    private int technician;
    private int lastDay;
    private int minuteOfDay;
    private long lastGross;

    /**
     * @param market with its future
     * @param benchFree working day on which the bench has done the lots before
     */
    LotRun(
            List<Family> families,
            Bench bench,
            double gradeSpread,
            Listing lot,
            LotFate fate,
            Market market,
            double benchFree,
            Recorder recorder,
            Dice dice) {
        this.families = families;
        this.bench = bench;
        this.gradeSpread = gradeSpread;
        this.lot = lot;
        this.fate = fate;
        this.market = market;
        this.recorder = recorder;
        this.dice = dice;
        this.arrival = lot.day + 5;
        // With more than six weeks of work in the queue the shop brings in help.
        this.clock = Math.min(Math.max(benchFree, Bench.workdays(arrival) + 1), Bench.workdays(arrival) + 30);
    }

    /** Working day on which the bench has done this lot. */
    double benchFree() {
        return clock;
    }

    int arrival() {
        return arrival;
    }

    /** Net recovery of the lot, minor units. */
    long run() {
        int own = (int) Math.round(30 + lot.sets() * dice.between(0.3, 0.9));
        recorder.lotMinutes(own);
        long total = -labour(own);
        for (index = 0; index < lot.sets(); index++) {
            cents = 0;
            minutes = 0;
            lastDay = -1;
            set();
            total += cents - labour(minutes);
        }
        return total;
    }

    /** Half up to the cent, as the books have it. */
    private long labour(int worked) {
        return (2L * worked * bench.labourRate() * 100 + 60) / 120;
    }

    private void set() {
        if (dice.chance(fate.missing())) {
            recorder.set(index, lot.family[index], true, false, false);
            if (lot.supplier.credit() > 0) {
                long credit = Math.round(100 * lot.supplier.credit());
                cents += credit;
                recorder.exit(index, arrival + dice.whole(8, 40), ExitKind.RETURNED.ordinal(), credit, 0, -1, -1, -1);
            }
            return;
        }
        int is = lot.family[index];
        boolean mislisted = dice.chance(lot.supplier.mislisted());
        if (mislisted) {
            is = another(is);
        }
        boolean incomplete = dice.chance(0.12);
        recorder.set(index, is, !mislisted && lot.model.get(index) != null, true, incomplete);
        Family family = families.get(is);
        double asIs = incomplete ? 0.92 : 1;
        int fault = fault(family);
        technician = dice.whole(0, bench.budget().size() - 1);
        if (fault == Words.GLASS && dice.chance(lot.claim[index] == Words.CRACKED ? 0.95 : 0.7)) {
            int day = arrival + dice.whole(0, 4);
            note(day, fault, Words.NO_FIX, -1, -1, round(dice.weibull(2, 4)), -1, 0);
            scrap(family, fault, day, asIs);
            return;
        }
        turn(family, fault, asIs);
    }

    /** Another family of the same maker where there is one. */
    private int another(int is) {
        for (int i = 0; i < 12; i++) {
            int f = dice.whole(0, families.size() - 1);
            if (f != is
                    && !families.get(f).reserve()
                    && families.get(f).maker().equals(families.get(is).maker())) {
                return f;
            }
        }
        return is;
    }

    private int fault(Family family) {
        int claim = lot.claim[index];
        if (claim != Words.CRACKED && dice.chance(fate.glass())) {
            return Words.GLASS;
        }
        boolean honest = dice.chance(claim == Words.CRACKED ? 0.97 : fate.truth());
        double[] shares = (honest ? Symptoms.honest(claim) : lot.supplier.junk()).copy();
        for (int f = 0; f < shares.length; f++) {
            shares[f] *= family.weak().at(f);
        }
        return dice.pick(shares);
    }

    /** Its turn at the bench. */
    private void turn(Family family, int fault, double asIs) {
        int day = Bench.day(clock);
        int look = round(dice.gamma(2.2, 9) * bench.speed().at(technician) * (fault == Words.UNKNOWN ? 2 : 1));
        if (fault == Words.NONE_FOUND) {
            boolean passed = dice.chance(0.93);
            int grade = passed ? grade(0.6) : -1;
            note(day, fault, Words.NO_FIX, passed ? 1 : 0, grade, look + 8, -1, 0);
            finish(passed, family, fault, day, grade, asIs, 0.06);
            return;
        }
        Repair plan = Repair.first(fault, dice);
        if (plan == null || !worthTrying(family, plan, day)) {
            note(day, fault, Words.NO_FIX, -1, -1, look, -1, 0);
            scrap(family, fault, day, asIs);
            return;
        }
        if (dice.chance(0.05)) { // taken for another fault at first
            int taken = dice.chance(0.5) ? Words.MAIN : Words.TIMING;
            note(day, taken, Words.FIXES.indexOf("reseat_cable"), 0, -1, look, round(dice.gamma(2, 12)), 0);
            look = -1;
        }
        if (dice.chance(plan.ordered())) {
            note(day, fault, Words.NO_FIX, -1, -1, look, -1, 0);
            day += dice.whole(3, 16);
            look = -1;
        }
        Repair last = plan;
        int grade = attempt(family, fault, plan, day, look);
        if (grade < 0) {
            Repair other = Repair.second(fault, plan);
            if (other != null && dice.chance(0.5)) {
                last = other;
                day += dice.whole(0, 7);
                grade = attempt(family, fault, other, day, -1);
            }
        }
        finish(grade >= 0, family, fault, day, grade, asIs, last.comeback());
    }

    /** Cheap sets are stripped at once, mostly. */
    private boolean worthTrying(Family family, Repair plan, int day) {
        double price = market.price(family, day);
        double gain = 0.72 * price
                - family.shipping() * (1 - bench.local())
                - plan.partsLow()
                - plan.median() * bench.labourRate() / 60.0;
        return gain > 12 || dice.chance(0.25);
    }

    /** One fix; the grade if it passed, else -1. */
    private int attempt(Family family, int fault, Repair plan, int day, int look) {
        double chance = plan.solved() * family.ease().at(fault) * fate.success();
        double slow = family.slow() * bench.speed().at(technician) * fate.minutes();
        if (plan.fix() == Words.FIXES.indexOf("contact_mask")) {
            boolean learnt = day >= bench.learntDay();
            chance *= learnt ? 1 : 0.5;
            slow *= learnt ? 1 : 1.3;
        }
        double patience = bench.budget().at(technician) * (plan.median() > 60 ? 1.5 : 1);
        if (dice.chance(0.2)) {
            patience *= 1.6; // goes on
        }
        double need = plan.median() * slow * dice.weibull(plan.shape(), 1);
        boolean solved = dice.chance(Math.min(0.97, chance)) && need <= patience;
        double spent = solved ? need : Math.min(patience, plan.median() * slow * dice.gamma(2.5, 1.15));
        long parts = plan.partsHigh() == 0 ? 0 : Math.round(100 * dice.between(plan.partsLow(), plan.partsHigh()));
        cents -= parts;
        int grade = solved ? grade(plan.gradeA()) : -1;
        int verdict = solved ? 1 : dice.chance(0.3) ? -1 : 0;
        note(day, fault, plan.fix(), verdict, grade, look, round(spent), parts);
        return grade;
    }

    private int grade(double gradeA) {
        if (dice.chance(Math.max(0.02, Math.min(0.95, gradeA + 2 * fate.looks())))) {
            return 0;
        }
        return dice.chance(Math.max(0.1, Math.min(0.95, 0.66 + fate.looks()))) ? 1 : 2;
    }

    private void note(int day, int fault, int fix, int passed, int grade, int look, int work, long parts) {
        int seen = look > 0 && dice.chance(0.015) ? -1 : look; // forgotten to write down
        int done = work > 0 && dice.chance(0.015) ? -1 : work;
        int spent = Math.max(0, seen) + Math.max(0, done);
        minutes += spent;
        clock += (Math.max(0, look) + Math.max(0, work)) / bench.minutesADay();
        minuteOfDay = day == lastDay ? Math.min(1430, minuteOfDay + 5 + spent) : 480 + dice.whole(0, 300);
        lastDay = day;
        recorder.attempt(index, day, minuteOfDay, fault, fix, technician, passed, grade, seen, done, parts);
    }

    private void finish(boolean passed, Family family, int fault, int day, int grade, double asIs, double back) {
        if (!passed) {
            scrap(family, fault, day, asIs);
            return;
        }
        int sold = sell(family, day, grade, asIs);
        if (!dice.chance(back)) {
            return;
        }
        int on = sold + 1 + (int) dice.weibull(1.1, 30);
        boolean restocked = dice.chance(0.6);
        long cost = Math.round(restocked ? lastGross + 100 * family.shipping() : lastGross * dice.between(0.2, 0.5));
        cents -= cost;
        recorder.comeback(index, on, cost, restocked, fault);
        if (!restocked) {
            return;
        }
        int again = on + dice.whole(1, 12);
        boolean passes = dice.chance(0.6 * fate.success());
        int worse = passes ? Math.min(2, Math.max(0, grade) + 1) : -1;
        Repair plan = Repair.first(fault, dice);
        int fix = plan == null ? Words.NO_FIX : plan.fix();
        boolean fixed = fix != Words.NO_FIX;
        note(again, fault, fix, passes ? 1 : 0, worse, 6, fixed ? round(dice.gamma(3, 30)) : -1, 0);
        if (passes) {
            sell(family, again, worse, asIs);
        } else {
            scrap(family, fault, again, asIs);
        }
    }

    /** The day on which it sold. */
    private int sell(Family family, int day, int grade, double asIs) {
        double shelf = dice.chance(0.8) ? dice.gamma(1.5, 18) : dice.gamma(2, 70);
        int sold = day + 1 + (int) shelf;
        double price = market.price(family, sold)
                * asIs
                * factor(grade)
                * Math.exp(-0.003 * Math.max(0, shelf - 45))
                * (dice.chance(0.03) ? 0.5 : Math.max(0.4, Math.min(2.2, 1 + 0.09 * dice.student(4))));
        boolean local = dice.chance(bench.local() * (family.inches() > 60 ? 1.6 : 1));
        long gross = Math.round(100 * price * (local ? 0.9 : 1));
        long costs = local ? 0 : Math.round(gross * FEE + 100 * family.shipping() * dice.between(0.9, 1.15));
        lastGross = gross;
        exit(sold, ExitKind.SOLD, gross, costs, round(dice.gamma(5, local ? 8 : 14)), local ? LOCAL : POSTED, grade);
        return sold;
    }

    private double factor(int grade) {
        double loss = grade == 0 ? 0 : grade == 1 ? 0.1 : 0.24;
        return 1 - Math.min(0.7, loss * (gradeSpread > 1 ? 1 + 0.5 * (gradeSpread - 1) : 1));
    }

    /** Stripped, sold as it is, or thrown away, soon. */
    private void scrap(Family family, int fault, int day, double asIs) {
        int out = day + 1 + (int) dice.gamma(1, 9);
        double price = market.price(family, out) * asIs;
        boolean glass = fault == Words.GLASS;
        if (!glass && fault != Words.COLUMN && dice.chance(0.12)) {
            long gross = Math.round(100 * price * dice.between(0.12, 0.28));
            exit(out, ExitKind.SOLD, gross, Math.round(gross * 0.05), round(dice.gamma(4, 8)), LOCAL, -1);
        } else if (price * bench.strip() < 7 || dice.chance(0.06)) {
            exit(out, ExitKind.RECYCLED, 0, Math.round(100 * dice.between(1.5, 5)), 3, -1, -1);
        } else {
            long gross = Math.round(100 * (2 + price * bench.strip() * dice.weibull(1.4, 1)));
            exit(out, ExitKind.STRIPPED, gross, Math.round(gross * FEE), round(dice.gamma(5, 13)), POSTED, -1);
        }
    }

    private void exit(int day, ExitKind kind, long gross, long costs, int worked, int channel, int grade) {
        cents += gross - costs;
        minutes += worked;
        recorder.exit(index, day, kind.ordinal(), gross, costs, worked, channel, grade);
    }

    private static int round(double x) {
        return Math.max(1, (int) Math.round(x));
    }
}
