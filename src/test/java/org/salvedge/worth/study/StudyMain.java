package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Prints the study's table. Arguments: {@code shops=12 lots=10 draws=2000 seed=1000 threads=2 worlds=STEADY,BAD}, each with that
 * default, worlds all; {@code model=0} leaves the estimate out.
 */
final class StudyMain {
    private StudyMain() {}

    public static void main(String[] args) {
        int shops = (int) number(args, "shops", 12);
        int lots = (int) number(args, "lots", 10);
        int draws = (int) number(args, "draws", 2000);
        long seed = number(args, "seed", Study.DEV_SEED);
        if (seed < Study.DEV_SEED || seed + shops > Study.DEV_SEED + 1000) {
            throw new IllegalArgumentException("seeds from 1000 to 1999 only; the others are for the final table");
        }
        List<Study.Plan> plans = new ArrayList<>();
        for (World world : worlds(args)) {
            plans.add(new Study.Plan(world, seed, shops, lots, draws, false));
        }
        boolean withModel = number(args, "model", 1) == 1;
        Study study = new Study(withModel ? forecasters() : baselines(), (int) number(args, "threads", 2));
        Map<String, List<Judged>> judged = study.run(plans);
        System.out.print(StudyTable.markdown(judged));
        String subject = judged.keySet().iterator().next();
        System.out.print("\n" + Diagnosis.markdown(judged.getOrDefault(subject, List.of())));
    }

    static List<Forecaster> forecasters() {
        return List.of(new ShopModelForecaster(), new PlainAverage(), new FamilyClaimMeans());
    }

    private static List<Forecaster> baselines() {
        return List.of(new PlainAverage(), new FamilyClaimMeans());
    }

    private static long number(String[] args, String key, long otherwise) {
        return Arrays.stream(args)
                .filter(a -> a.startsWith(key + "="))
                .mapToLong(a -> Long.parseLong(a.substring(key.length() + 1)))
                .findFirst()
                .orElse(otherwise);
    }

    private static List<World> worlds(String[] args) {
        return Arrays.stream(args)
                .filter(a -> a.startsWith("worlds="))
                .findFirst()
                .map(a -> Arrays.stream(a.substring(7).split(","))
                        .map(World::valueOf)
                        .toList())
                .orElse(List.of(World.values()));
    }
}
