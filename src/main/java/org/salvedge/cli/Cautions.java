package org.salvedge.cli;

/** What a shop must know before the first set is opened. */
final class Cautions {
    static final String TEXT =
            "Before the first set is opened: mains and backlight supplies hold a dangerous charge after unplugging; panels are"
                    + " glass; electrostatic discharge kills drivers; cold-cathode tubes in old sets contain mercury; swollen or"
                    + " leaking parts are waste, and waste electrical equipment has its own law. Local codes and licensed"
                    + " practice come first.";

    private Cautions() {}

    /** Once in a shop's life: with its first turn at the bench. */
    static void say(Session session) {
        Wrap.at(Wording.width(session) - 2, TEXT).forEach(session::remark);
    }
}
