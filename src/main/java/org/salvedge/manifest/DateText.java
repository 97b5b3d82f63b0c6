package org.salvedge.manifest;

import java.util.regex.Pattern;
import org.salvedge.manifest.words.Folded;

/** Text that a spreadsheet program made of something that looked like a date to it. */
final class DateText {
    private static final String MONTH =
            "(jan|january|januar|janv|janvier|ene|enero|feb|february|februar|fevr|fevrier|fev|febrero"
                    + "|mar|march|marz|mrz|mars|marzo|apr|april|avr|avril|abr|abril|may|mai|mayo|jun|june|juni|juin|junio|jul|july|juli"
                    + "|juil|juillet|julio|aug|august|aout|ago|agosto|sep|sept|september|septembre|septiembre|oct|october|okt|oktober"
                    + "|octobre|octubre|nov|november|novembre|noviembre|dec|december|dez|dezember|decembre|dic|diciembre)";
    private static final Pattern DATE = Pattern.compile("\\d{1,2}[-./ ]+" + MONTH + "\\.?([-./ ]+\\d{2,4})?"
            + "|" + MONTH + "\\.?[-./ ]+\\d{1,4}"
            + "|\\d{1,2}[./-]\\d{1,2}[./-](19|20)?\\d{2}( 0?0:00(:00)?)?"
            + "|(19|20)\\d{2}[-./]\\d{1,2}[-./]\\d{1,2}([t ]\\d{1,2}:\\d{2}(:\\d{2}(\\.\\d+)?)?)?");

    private DateText() {}

    static boolean isDate(String text) {
        return text.length() >= 4
                && text.length() <= 30
                && DATE.matcher(Folded.fold(text).strip()).matches();
    }
}
