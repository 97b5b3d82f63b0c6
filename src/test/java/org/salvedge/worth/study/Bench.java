package org.salvedge.worth.study;

/**
 * The shop's own way of working.
 *
 * @param labourRate per hour
 * @param budget minutes after which a technician gives up, by technician
 * @param speed factor on minutes, by technician
 * @param minutesADay of all technicians
 * @param learntDay day since which masking works well; far in the past where it always did
 * @param strip share of a set's price that its parts bring
 * @param local share of sales to people who come and fetch
 */
record Bench(
        int labourRate, Shares budget, Shares speed, double minutesADay, int learntDay, double strip, double local) {

    static Bench draw(double minutesADay, int learntDay, Dice dice) {
        int technicians = dice.whole(2, 3);
        double[] budget = new double[technicians];
        double[] speed = new double[technicians];
        for (int t = 0; t < technicians; t++) {
            budget[t] = dice.between(65, 130);
            speed[t] = dice.between(0.85, 1.2);
        }
        return new Bench(
                dice.whole(16, 24),
                Shares.of(budget),
                Shares.of(speed),
                minutesADay,
                learntDay,
                dice.between(0.07, 0.13),
                dice.between(0.1, 0.5));
    }

    /** Working days, five a week, since the first day; the inverse of {@link #day}. */
    static double workdays(int day) {
        return (day / 7) * 5 + Math.min(5, day % 7);
    }

    static int day(double workdays) {
        int w = (int) workdays;
        return (w / 5) * 7 + w % 5;
    }
}
