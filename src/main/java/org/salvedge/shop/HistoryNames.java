package org.salvedge.shop;

/** The dictionaries of a history. */
final class HistoryNames implements java.io.Serializable {
    final Names lotNames = new Names();
    final Names suppliers = new Names();
    final Names families = new Names();
    final Names makers = new Names();
    final Names models = new Names();
    final Names claims = new Names();
    final Names faults = new Names();
    final Names fixes = new Names();
    final Names technicians = new Names();
    final Names channels = new Names();
}
