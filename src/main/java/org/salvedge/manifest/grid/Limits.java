package org.salvedge.manifest.grid;

/**
 * What a file may cost before it is refused. What a file declares about itself is never believed.
 *
 * @param fileBytes of the file itself
 * @param unpackedBytes of all the parts of a packed file together
 * @param ratio unpacked to packed size; small files may reach {@link #FREE_UNPACKED} whatever their ratio
 * @param memoryBytes that the cells may take, by our own count
 * @param parts in a packed file
 * @param columns to the right of these are not read
 * @param textLength of one cell
 */
record Limits(
        long fileBytes, long unpackedBytes, long ratio, long memoryBytes, int parts, int columns, int textLength) {
    static final long FREE_UNPACKED = 24L << 20;

    /** Room left beside the cells for the sets read from them, as a part of the whole heap. */
    private static final double SHARE_OF_HEAP = 0.45;

    static Limits of(long heapBytes) {
        long memory = Math.min(600L << 20, (long) (heapBytes * SHARE_OF_HEAP));
        return new Limits(256L << 20, 1536L << 20, 150, memory, 20_000, 1024, 32_767);
    }

    /** Most that the parts of a packed file of this size may unpack to. */
    long unpackedFor(long packedBytes) {
        return Math.min(unpackedBytes, Math.max(FREE_UNPACKED, packedBytes * ratio));
    }
}
