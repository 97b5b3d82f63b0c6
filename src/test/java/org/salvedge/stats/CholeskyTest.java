package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The factor against the matrix that it was made of, for odd and even sizes. */
class CholeskyTest {
    private static double[][] matrix(int n, SplittableRandom random) {
        double[][] b = new double[n][n];
        for (double[] row : b) {
            for (int j = 0; j < n; j++) {
                row[j] = random.nextGaussian();
            }
        }
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    a[i][j] += b[i][k] * b[j][k];
                }
            }
            a[i][i] += 0.5;
        }
        return a;
    }

    private static double[][] copy(double[][] a) {
        double[][] copy = new double[a.length][];
        for (int i = 0; i < a.length; i++) {
            copy[i] = a[i].clone();
        }
        return copy;
    }

    @Test
    void aSolutionTimesTheMatrixIsTheRightHandSide() {
        SplittableRandom random = new SplittableRandom(1);
        for (int n = 1; n <= 9; n++) {
            double[][] a = matrix(n, random);
            double[] right = random.doubles(n).toArray();
            double[] x = right.clone();
            Cholesky.inPlace(copy(a)).solve(x);
            for (int i = 0; i < n; i++) {
                double sum = 0;
                for (int j = 0; j < n; j++) {
                    sum += a[i][j] * x[j];
                }
                assertThat(sum).isCloseTo(right[i], within(1e-9));
            }
        }
    }

    @Test
    void theInversesDiagonalIsThatOfTheSolutionsOfUnitVectors() {
        SplittableRandom random = new SplittableRandom(2);
        for (int n = 1; n <= 9; n++) {
            Cholesky factor = Cholesky.inPlace(matrix(n, random));
            double[] diagonal = factor.inverseDiagonal();
            for (int c = 0; c < n; c++) {
                double[] unit = new double[n];
                unit[c] = 1;
                factor.solve(unit);
                assertThat(diagonal[c]).isCloseTo(unit[c], within(1e-9)).isEqualTo(factor.inverseDiagonal(c));
            }
        }
    }

    /** Draws must not change by a digit, however the rows are taken. */
    @Test
    void backwardSubtractsRowByRowFromTheLast() {
        SplittableRandom random = new SplittableRandom(3);
        for (int n = 1; n <= 9; n++) {
            Cholesky factor = Cholesky.inPlace(matrix(n, random));
            double[] b = random.doubles(n).toArray();
            double[] expected = b.clone();
            for (int i = n - 1; i >= 0; i--) {
                expected[i] /= factor.factor()[i][i];
                for (int j = 0; j < i; j++) {
                    expected[j] -= factor.factor()[i][j] * expected[i];
                }
            }
            factor.backward(b);
            assertThat(b).containsExactly(expected);
        }
    }
}
