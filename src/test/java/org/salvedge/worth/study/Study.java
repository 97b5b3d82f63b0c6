package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;

/** Runs forecasters over invented shops. The same seeds give the same scores on any number of threads. */
final class Study {
    /** For looking at while the estimate is worked on. */
    static final long DEV_SEED = 1_000;

    /** For the table in the documentation, and for nothing before it: whoever tunes on these has no proof left. */
    static final long FINAL_SEED = 910_001;

    /** A market in which a lot is worth next to nothing still has a price. */
    private static final double LEAST_ASKING_A_SET = 1;

    /**
     * @param shops seeds from first on
     * @param offered lots a shop
     * @param draws of the oracle a lot
     * @param extra for that world's own table only, not for the one over all worlds
     */
    record Plan(World world, long first, int shops, int offered, int draws, boolean extra) {}

    private final List<Forecaster> forecasters;
    private final int threads;

    Study(List<Forecaster> forecasters, int threads) {
        this.forecasters = List.copyOf(forecasters);
        this.threads = threads;
    }

    /** What each forecaster said, by its name, the oracle last; in the order of the plans. */
    Map<String, List<Judged>> run(List<Plan> plans) {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Map<String, List<Judged>>>> shops = new ArrayList<>();
            for (Plan plan : plans) {
                LongStream.range(plan.first(), plan.first() + plan.shops())
                        .forEach(seed -> shops.add(pool.submit(() -> shop(plan, seed))));
            }
            Map<String, List<Judged>> all = new LinkedHashMap<>();
            for (Future<Map<String, List<Judged>>> shop : shops) {
                shop.get()
                        .forEach((name, lots) -> all.computeIfAbsent(name, k -> new ArrayList<>())
                                .addAll(lots));
            }
            return all;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private Map<String, List<Judged>> shop(Plan plan, long seed) {
        InventedShop shop = new InventedShop(plan.world(), seed, plan.offered());
        Dice prices = new Dice(seed * 31 + 7);
        Map<String, Forecaster.Fitted> fitted = new LinkedHashMap<>();
        for (Forecaster forecaster : forecasters) {
            fitted.put(forecaster.name(), forecaster.fit(shop.snapshot()));
        }
        Map<String, List<Judged>> judged = new LinkedHashMap<>();
        long draw = seed * 7_919;
        for (InventedShop.Candidate lot : shop.candidates()) {
            Forecast truth = shop.oracle(lot, plan.draws(), ++draw);
            double worth = Math.max(
                    truth.mean(), LEAST_ASKING_A_SET * lot.offer().sets().size());
            double asking = worth * prices.between(0.8, 1.2);
            fitted.forEach((name, f) -> judged.computeIfAbsent(name, k -> new ArrayList<>())
                    .add(judge(plan, seed, lot, f.forecast(lot.offer()), truth, asking)));
            judged.computeIfAbsent("oracle", k -> new ArrayList<>()).add(judge(plan, seed, lot, truth, truth, asking));
        }
        return judged;
    }

    private static Judged judge(
            Plan plan, long seed, InventedShop.Candidate lot, Forecast said, Forecast truth, double asking) {
        return new Judged(
                plan.world(),
                seed,
                said,
                truth,
                lot.outcome() / 100.0,
                asking,
                lot.spoiled(),
                lot.known(),
                plan.extra(),
                lot.offer().sets().size());
    }
}
