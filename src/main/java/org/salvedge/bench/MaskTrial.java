package org.salvedge.bench;

/**
 * One trial on a ribbon: these contacts were masked, and the picture was good or not.
 *
 * @param masked bit i set = contact i + 1 was masked
 */
public record MaskTrial(int masked, boolean good) {}
