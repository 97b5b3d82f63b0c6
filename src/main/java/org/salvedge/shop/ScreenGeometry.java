package org.salvedge.shop;

/**
 * Size of a flat screen from its diagonal, and the distance from which it is meant to be seen.
 *
 * <p>Sources: Recommendation ITU-R BT.500 (design viewing distance: two adjacent picture elements subtend one minute of arc) with
 * BT.1845 and BT.2022, whose tables round it: 4.8, 3.2, 1.6 and 0.8 picture heights at 720, 1080, 2160 and 4320 rows.
 *
 * @param inches diagonal, above 0
 * @param across part of the aspect ratio, as 16
 * @param down part of the aspect ratio, as 9
 */
public record ScreenGeometry(double inches, double across, double down) {
    private static final double CM_PER_INCH = 2.54;
    private static final double MINUTE_OF_ARC = Math.PI / (180 * 60);

    public ScreenGeometry {
        if (!(inches > 0 && across > 0 && down > 0)) {
            throw new IllegalArgumentException("screen of " + inches + " inches, " + across + ":" + down);
        }
    }

    /** A screen of 16:9. */
    public static ScreenGeometry wide(double inches) {
        return new ScreenGeometry(inches, 16, 9);
    }

    public double heightCm() {
        return inches * CM_PER_INCH * down / Math.hypot(across, down);
    }

    public double widthCm() {
        return inches * CM_PER_INCH * across / Math.hypot(across, down);
    }

    public double areaSquareCm() {
        return heightCm() * widthCm();
    }

    /** The design viewing distance in centimetres for a picture of so many rows. */
    public double viewingDistanceCm(int rows) {
        return heightCm() * viewingHeights(rows);
    }

    /** The design viewing distance in picture heights: 1 / (rows x tan 1'). */
    public static double viewingHeights(int rows) {
        if (rows < 1) {
            throw new IllegalArgumentException(rows + " rows");
        }
        return 1 / (rows * Math.tan(MINUTE_OF_ARC));
    }
}
