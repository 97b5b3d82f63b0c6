package org.salvedge.worth.study;

/** A row of numbers that stays as it is: weights by fault or claim, factors by fault or technician. */
final class Shares {
    private final double[] numbers;

    private Shares(double[] numbers) {
        this.numbers = numbers;
    }

    static Shares of(double... numbers) {
        return new Shares(numbers.clone());
    }

    double at(int i) {
        return numbers[i];
    }

    int size() {
        return numbers.length;
    }

    double[] copy() {
        return numbers.clone();
    }
}
