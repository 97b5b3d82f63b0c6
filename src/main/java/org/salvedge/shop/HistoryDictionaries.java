package org.salvedge.shop;

/** The texts of a record by number. Only its builder adds to them. */
abstract sealed class HistoryDictionaries implements java.io.Serializable permits History, HistoryBuilder {
    final HistoryNames names;

    HistoryDictionaries(HistoryNames names) {
        this.names = names;
    }

    /** Dictionary of lots' names, by row. */
    public Names lotNames() {
        return names.lotNames;
    }

    /** Dictionary of suppliers. */
    public Names suppliers() {
        return names.suppliers;
    }

    /** Dictionary of model families. */
    public Names families() {
        return names.families;
    }

    /** Dictionary of makers, listed ones too. */
    public Names makers() {
        return names.makers;
    }

    /** Dictionary of model numbers, listed ones too. */
    public Names models() {
        return names.models;
    }

    /** Dictionary of claim codes. */
    public Names claims() {
        return names.claims;
    }

    /** Dictionary of fault codes. */
    public Names faults() {
        return names.faults;
    }

    /** Dictionary of fix codes. */
    public Names fixes() {
        return names.fixes;
    }

    /** Dictionary of technicians. */
    public Names technicians() {
        return names.technicians;
    }

    /** Dictionary of sales channels. */
    public Names channels() {
        return names.channels;
    }
}
