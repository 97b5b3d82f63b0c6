package org.salvedge.stats;

import java.util.stream.IntStream;

/**
 * Factor of a symmetric positive definite matrix, A = L L', and what follows from it.
 *
 * <p>Method: Golub and Van Loan, "Matrix Computations", 4th ed. (2013), section 4.2. Sums are taken in a fixed order, so that
 * results are the same on every machine.
 */
public final class Cholesky implements java.io.Serializable {
    private final double[][] l;

    private Cholesky(double[][] l) {
        this.l = l;
    }

    /**
     * @param a lower triangle, row i of length at least i + 1; overwritten by the factor
     * @throws ArithmeticException if it is not positive definite
     */
    public static Cholesky inPlace(double[][] a) {
        int n = a.length;
        for (int i = 0; i < n; i++) {
            double[] ri = a[i];
            for (int j = 0; j < i; j++) {
                ri[j] = (ri[j] - dot(ri, a[j], j)) / a[j][j];
            }
            double pivot = ri[i] - dot(ri, ri, i);
            if (!(pivot > 0)) {
                throw new ArithmeticException("not positive definite at row " + i + ": " + pivot);
            }
            ri[i] = Math.sqrt(pivot);
        }
        return new Cholesky(a);
    }

    private static double dot(double[] a, double[] b, int n) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int k = 0;
        for (; k + 3 < n; k += 4) {
            s0 += a[k] * b[k];
            s1 += a[k + 1] * b[k + 1];
            s2 += a[k + 2] * b[k + 2];
            s3 += a[k + 3] * b[k + 3];
        }
        for (; k < n; k++) {
            s0 += a[k] * b[k];
        }
        return s0 + s1 + s2 + s3;
    }

    /** The factor, lower triangle by rows: the matrix that was given. */
    public double[][] factor() {
        return l;
    }

    public int size() {
        return l.length;
    }

    /** Solves A x = b; b is overwritten by x. */
    public void solve(double[] b) {
        forward(b);
        backward(b);
    }

    /** Solves L x = b; b is overwritten by x. */
    public void forward(double[] b) {
        for (int i = 0; i < l.length; i++) {
            b[i] = (b[i] - dot(l[i], b, i)) / l[i][i];
        }
    }

    /** Solves L' x = b; b is overwritten by x. If b is standard normal, x has covariance A^-1. */
    public void backward(double[] b) {
        int i = l.length - 1;
        // Two rows at a time: as often read and written, in the order of one by one.
        for (; i > 0; i -= 2) {
            double[] row = l[i];
            double[] next = l[i - 1];
            double x = b[i] / row[i];
            double y = (b[i - 1] - row[i - 1] * x) / next[i - 1];
            b[i] = x;
            b[i - 1] = y;
            for (int j = 0; j < i - 1; j++) {
                b[j] = b[j] - row[j] * x - next[j] * y;
            }
        }
        if (i == 0) {
            b[0] /= l[0][0];
        }
    }

    /** The diagonal of A^-1. */
    public double[] inverseDiagonal() {
        return IntStream.range(0, l.length)
                .parallel()
                .mapToDouble(this::inverseDiagonal)
                .toArray();
    }

    /** One entry of it. */
    public double inverseDiagonal(int c) {
        int n = l.length;
        double[] column = new double[n];
        column[c] = 1 / l[c][c];
        double sum = column[c] * column[c];
        for (int i = c + 1; i < n; i++) {
            double[] row = l[i];
            double s = 0;
            for (int k = c; k < i; k++) {
                s += row[k] * column[k];
            }
            column[i] = -s / row[i];
            sum += column[i] * column[i];
        }
        return sum;
    }
}
