package org.salvedge.shop;

/** Gives a set's label by the id that the reader of the record gave the set; safe for threads. */
@FunctionalInterface
public interface LabelSource {
    String of(int setId);
}
