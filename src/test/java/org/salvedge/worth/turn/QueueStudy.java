package org.salvedge.worth.turn;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;

/**
 * Six months of an invented shop whose sets arrive 1.3 times as fast as the bench can do them, under several ways of choosing
 * the next set and of stopping. The same sets with the same fates come to each.
 */
final class QueueStudy {
    static final int PAST = 540;
    static final int MONTHS = 182;
    private static final double A_DAY = 420;
    private static final double OVERLOAD = 1.3;
    private static final int REFIT = 28;
    private static final int REPRICE = 7;

    /** How the next set is chosen, and when it is given up. */
    enum Way {
        FCFS("first come, first served; the bench's habit of stopping"),
        SEPT("shortest expected time first; habit"),
        SEPT_STOPS("shortest expected time first; stops by fault found"),
        ORDER("our order; habit"),
        LIKELY("our order; stop while the fault is not known, whatever is found"),
        OURS("our order; stops by fault found"),
        ORACLE("knows every parameter, no fate");

        final String words;

        Way(String words) {
            this.words = words;
        }
    }

    /** What six months brought: over stripping all at once, and of the sets taken in hand. */
    record Outcome(double gain, double promised, double margin, double hours, int taken, int saved) {}

    private final QueueWorld world;
    private final List<QueueWorld.Set> past;
    private final List<QueueWorld.Set> coming;
    private final double[] patience;

    QueueStudy(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        world = new QueueWorld(r);
        double mean = 0;
        SplittableRandom probe = r.split();
        for (int i = 0; i < 4000; i++) {
            QueueWorld.Set s = world.draw(probe, 0, probe.nextInt(6), 0, 0);
            mean += habit(s, 95)[1] / 4000;
        }
        double rate = A_DAY * 5 / 7 / mean;
        past = world.arrivals(r.split(), 0, PAST, .9 * rate, 0);
        coming = world.arrivals(r.split(), PAST, PAST + MONTHS, OVERLOAD * rate, 10_000);
        patience = new double[past.size() + coming.size()];
        SplittableRandom p = r.split();
        for (int i = 0; i < patience.length; i++) {
            patience[i] = 70 + 50 * p.nextDouble();
        }
    }

    /** Tried 0 or 1, minutes in all, saved 0 or 1. */
    private static double[] habit(QueueWorld.Set s, double patience) {
        if (QueueWorld.FAULTS.get(s.fault()).equals("panel_broken")) {
            return new double[] {0, s.look(), 0};
        }
        return limited(s, s.look() + patience);
    }

    /** With this many minutes in all; 0 = stripped when the fault is found. */
    private static double[] limited(QueueWorld.Set s, double stop) {
        double fix = Math.min(s.ends(), stop - s.look());
        if (fix <= 0) {
            return new double[] {0, stop <= 0 ? s.look() : Math.min(s.look(), Math.max(stop, 1)), 0};
        }
        return new double[] {1, s.look() + fix, s.solvable() && s.ends() <= fix ? 1 : 0};
    }

    Outcome run(Way way) {
        QueueDiary diary = new QueueDiary(world);
        int number = 0;
        for (QueueWorld.Set s : past) {
            int id = diary.arrive(s);
            double[] t = habit(s, patience[number++]);
            diary.turn(id, s.day() + 3, t[0] == 1, t[2] == 1, s.look(), t[1] - s.look());
        }
        Bench bench = new Bench(way, diary);
        int next = 0;
        double free = 0;
        double gain = 0;
        double promised = 0;
        double margin = 0;
        double hours = 0;
        int taken = 0;
        int saved = 0;
        for (int day = PAST; day < PAST + MONTHS; day++) {
            while (next < coming.size() && coming.get(next).day() <= day) {
                QueueWorld.Set s = coming.get(next);
                bench.open.add(new Waiting(diary.arrive(s), s, patience[past.size() + next]));
                next++;
            }
            bench.morning(day);
            free = day % 7 < 5 ? free + A_DAY : free;
            while (free > 0 && !bench.open.isEmpty()) {
                Waiting w = bench.take();
                if (w == null) {
                    free = Math.min(free, 0);
                    break;
                }
                promised += bench.promised(w);
                double[] t = bench.turn(w);
                free -= t[1];
                hours += t[1] / 60;
                diary.turn(w.id, day, t[0] == 1, t[2] == 1, w.set.look(), t[1] - w.set.look());
                double cost = t[0] * w.set.parts() + t[1] * QueueWorld.LABOUR / 60;
                gain += world.net(w.set, t[2] == 1) - world.net(w.set, false) - cost;
                margin += world.net(w.set, t[2] == 1) - cost;
                taken++;
                saved += (int) t[2];
            }
        }
        return new Outcome(gain, promised, margin, hours, taken, saved);
    }

    /** A set that waits. */
    private record Waiting(int id, QueueWorld.Set set, double patience) {}

    /** The bench of one way. */
    private final class Bench {
        final Way way;
        final QueueDiary diary;
        final List<Waiting> open = new ArrayList<>();
        private final Map<BenchModel.OnBench, Prospect> prospects = new HashMap<>();
        private @Nullable BenchModel model;
        private double shadow;

        Bench(Way way, QueueDiary diary) {
            this.way = way;
            this.diary = diary;
        }

        void morning(int day) {
            if (way == Way.FCFS) {
                return;
            }
            int since = day - PAST;
            if (since % REPRICE != 0) {
                return;
            }
            History h = diary.history();
            if (way == Way.ORACLE) {
                model = new BenchModel(world.new Oracle(), QueueWorld.LABOUR / 60);
            } else if (since % REFIT == 0 || model == null) {
                model = BenchModel.fit(h, day, BigDecimal.valueOf(QueueWorld.LABOUR));
            }
            BenchModel now = java.util.Objects.requireNonNull(model);
            prospects.clear();
            shadow = way == Way.SEPT || way == Way.ORDER ? 0 : shadow(now, h, day);
        }

        private double shadow(BenchModel now, History h, int day) {
            if (way != Way.ORACLE) {
                return Workload.shadowPrice(now, h, OpenBench.of(h, day), day, A_DAY / 60);
            }
            List<ShadowPrice.Work> work = new ArrayList<>();
            for (Waiting w : open) {
                Prospect p = now.of(QueueWorld.seen(w.set), 0);
                work.add(new ShadowPrice.Work(p.rate(), p.minutes(), 1));
            }
            for (QueueWorld.Set s : coming) {
                if (s.day() > day - 90 && s.day() <= day || s.day() <= PAST + 90 && day < PAST + 90) {
                    Prospect p = now.of(QueueWorld.seen(s), 0);
                    work.add(new ShadowPrice.Work(p.rate(), p.minutes(), 60.0 / 90));
                }
            }
            return ShadowPrice.of(work, A_DAY * 5 / 7 * 60);
        }

        private BenchModel.OnBench seen(Waiting w) {
            if (way == Way.ORACLE) {
                return QueueWorld.seen(w.set);
            }
            return new BenchModel.OnBench(
                    QueueWorld.family(w.set.family()),
                    world.inches[w.set.family()],
                    QueueWorld.CLAIMS.get(w.set.claim()),
                    "S" + w.set.supplier(),
                    null,
                    false,
                    0);
        }

        private Prospect prospect(Waiting w) {
            return prospects.computeIfAbsent(
                    seen(w), s -> java.util.Objects.requireNonNull(model).of(s, shadow));
        }

        @Nullable
        Waiting take() {
            Waiting best = switch (way) {
                case FCFS -> open.get(0);
                case SEPT, SEPT_STOPS ->
                    java.util.Collections.min(
                            open, Comparator.comparingDouble(w -> prospect(w).minutes()));
                default ->
                    java.util.Collections.max(
                            open, Comparator.comparingDouble(w -> prospect(w).rate()));
            };
            if (way != Way.FCFS
                    && way != Way.SEPT
                    && way != Way.SEPT_STOPS
                    && prospect(best).gain() <= 0) {
                return null;
            }
            open.remove(best);
            return best;
        }

        /** The gain that was expected when the set was taken. */
        double promised(Waiting w) {
            return model == null ? 0 : prospect(w).gain();
        }

        double[] turn(Waiting w) {
            if (way == Way.FCFS || way == Way.SEPT || way == Way.ORDER) {
                return habit(w.set, w.patience);
            }
            if (way == Way.LIKELY) {
                return limited(w.set, prospect(w).stopAt());
            }
            BenchModel.OnBench s = seen(w);
            String fault = QueueWorld.FAULTS.get(w.set.fault());
            Prospect found = java.util.Objects.requireNonNull(model)
                    .of(
                            new BenchModel.OnBench(
                                    s.family(), s.inches(), s.claim(), s.supplier(), fault, false, w.set.look()),
                            shadow);
            return limited(w.set, found.stops().getOrDefault(fault, 0));
        }
    }

    /** The table for the documentation. */
    static String markdown(int shops, long seed) {
        Way[] ways = Way.values();
        double[][] gain = new double[ways.length][shops];
        double[][] margin = new double[ways.length][shops];
        double[] kept = new double[2];
        double[][] taken = new double[ways.length][shops];
        double[][] saved = new double[ways.length][shops];
        for (int s = 0; s < shops; s++) {
            QueueStudy study = new QueueStudy(seed + s);
            for (Way way : ways) {
                Outcome o = study.run(way);
                if (way == Way.OURS) {
                    kept[0] += o.gain();
                    kept[1] += o.promised();
                }
                gain[way.ordinal()][s] = o.gain() / o.hours();
                margin[way.ordinal()][s] = o.margin() / o.hours();
                taken[way.ordinal()][s] = o.taken();
                saved[way.ordinal()][s] = o.saved();
            }
        }
        StringBuilder out = new StringBuilder(
                "| way | gain an hour | to FCFS | to the oracle | margin an hour | to FCFS | sets taken | saved |\n"
                        + "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        double[] first = gain[Way.FCFS.ordinal()];
        double[] best = gain[Way.ORACLE.ordinal()];
        for (Way way : ways) {
            int w = way.ordinal();
            out.append(String.format(
                    Locale.ROOT,
                    "| %s | %.1f | %s | %s | %.1f | %s | %.0f | %.0f |%n",
                    way.words,
                    mean(gain[w]),
                    ratio(gain[w], first),
                    ratio(gain[w], best),
                    mean(margin[w]),
                    ratio(margin[w], margin[Way.FCFS.ordinal()]),
                    mean(taken[w]),
                    mean(saved[w])));
        }
        return out.append(String.format(
                        Locale.ROOT,
                        "%nGain brought over gain expected, our order and stops: %.2f%n",
                        kept[0] / kept[1]))
                .toString();
    }

    /** Ratio of the sums, with the standard error over the shops. */
    private static String ratio(double[] a, double[] b) {
        double r = mean(a) / mean(b);
        double squares = 0;
        for (int i = 0; i < a.length; i++) {
            squares += Math.pow((a[i] - r * b[i]) / mean(b), 2);
        }
        return String.format(Locale.ROOT, "%.2f (%.2f)", r, Math.sqrt(squares / Math.max(1, a.length - 1) / a.length));
    }

    static double mean(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return sum / x.length;
    }

    public static void main(String[] args) {
        System.out.print(markdown(Integer.parseInt(args[0]), 1));
    }
}
