package org.salvedge.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.cli.ReceiveCommand.Received;
import org.salvedge.manifest.Manifest;
import org.salvedge.report.Digits;
import org.salvedge.report.Plural;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** What is said of a lot that was booked, and the mark by which its list is known again. */
final class Receipt {
    private static final String MARK = "sha-256 ";

    private Receipt() {}

    /** The lot with a note that names its list; it travels with the history. */
    static Lot noted(Lot lot, Manifest manifest) {
        return new Lot(
                lot.lot(),
                lot.supplier(),
                lot.boughtOn(),
                lot.currency(),
                lot.rate(),
                lot.price(),
                lot.premium(),
                lot.freight(),
                lot.otherCost(),
                lot.minutes(),
                lot.receivedOn(),
                lot.basis(),
                KeptFile.safe(manifest.file()) + ", " + MARK + manifest.sha256());
    }

    static boolean isOf(Lot lot, Manifest manifest) {
        return lot.note() != null && lot.note().contains(MARK + manifest.sha256());
    }

    static void print(Session session, Received received, Format format) {
        Money cost = received.lot().landedCost(session.shop().settings().currency());
        if (format == Format.JSON) {
            session.json(json(session, received, cost));
            return;
        }
        List<TvSet> sets = received.sets();
        long missing = missing(sets);
        long extra = sets.stream().filter(s -> s.line() == null).count();
        session.say("Lot " + received.lot().lot() + " from " + received.lot().supplier() + ": "
                + Plural.of(sets.size(), "set") + ", "
                + (sets.size() - missing) + " arrived" + (missing > 0 ? ", " + missing + " missing" : "")
                + (extra > 0 ? ", " + extra + " not on the list" : ""));
        session.say("Labels " + sets.get(0).unit() + " to "
                + sets.get(sets.size() - 1).unit() + "; landed cost "
                + Digits.grouped(cost.amount(), cost.amount().scale()) + " "
                + cost.currency()
                + (missing == sets.size() ? ", the lot's loss: no set arrived" : ", " + each(sets)));
        session.say("The list is kept as " + shown(session, received.kept()));
        if (!received.sheets().isEmpty()) {
            session.say("Labels and bench sheet: "
                    + String.join(
                            ", ",
                            received.sheets().stream()
                                    .map(p -> shown(session, p))
                                    .toList()));
        }
        Problems.tell(session, received.manifest().problems());
        if (!received.manifest().problems().isEmpty()) {
            session.remark(Plural.of(received.manifest().problems().size(), "problem") + " in the list, see above");
        }
    }

    private static String each(List<TvSet> sets) {
        List<Money> shares = sets.stream()
                .map(TvSet::landedCost)
                .filter(java.util.Objects::nonNull)
                .sorted()
                .toList();
        if (shares.isEmpty()) {
            return "not shared yet";
        }
        Money least = shares.get(0);
        Money most = shares.get(shares.size() - 1);
        return least.equals(most) ? least + " a set" : least + " to " + most + " a set";
    }

    private static long missing(List<TvSet> sets) {
        return sets.stream().filter(s -> !s.arrived()).count();
    }

    private static String shown(Session session, Path kept) {
        Path folder = session.shop().folder();
        return kept.startsWith(folder) ? folder.relativize(kept).toString() : kept.toString();
    }

    private static Map<String, @Nullable Object> json(Session session, Received received, Money cost) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("lot", received.lot().lot().value());
        json.put("sets", received.sets().size());
        json.put("missing", missing(received.sets()));
        json.put("extra", received.sets().stream().filter(s -> s.line() == null).count());
        json.put("landed_cost", cost);
        json.put(
                "units",
                received.sets().stream().map(TvSet::unit).map(UnitId::value).toList());
        json.put("problems", Problems.json(received.manifest().problems()));
        List<String> files = new ArrayList<>();
        files.add(shown(session, received.kept()));
        received.sheets().forEach(p -> files.add(shown(session, p)));
        json.put("files", files);
        return json;
    }
}
