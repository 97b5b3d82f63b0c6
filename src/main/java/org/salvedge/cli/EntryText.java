package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;
import org.salvedge.report.Plural;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Coded;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Part;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.TvSet;

/** A fact in one line, as it is printed when it is put on record and when a set is shown. */
final class EntryText {
    private final List<String> parts = new ArrayList<>();

    private EntryText() {}

    /** Everything that is known of it, what it is about first. */
    static String of(Fact fact) {
        if (fact instanceof Attempt a) {
            return a.unit() + " " + new EntryText().attempt(a);
        } else if (fact instanceof Exit e) {
            return e.unit() + " " + new EntryText().exit(e);
        } else if (fact instanceof Comeback c) {
            return c.unit() + " " + new EntryText().comeback(c);
        } else if (fact instanceof TvSet s) {
            return s.unit() + " " + new EntryText().set(s);
        } else if (fact instanceof Offer o) {
            return o.unit() + " "
                    + new EntryText().say("offered at " + o.price()).say("on", o.channel());
        } else if (fact instanceof Lot l) {
            return "lot " + l.lot() + " " + new EntryText().lot(l);
        } else if (fact instanceof Bid b) {
            return "bid " + b.number() + " " + new EntryText().bid(b);
        } else if (fact instanceof Part p) {
            return "part " + p.part() + " " + new EntryText().part(p);
        }
        return new EntryText().recipe((Recipe) fact).toString();
    }

    private EntryText attempt(Attempt a) {
        say(a.fault().code());
        say(a.fix().equals(Fix.NONE) ? "no fix" : a.fix().code());
        Quantity minutes = sum(a.diagnosisMinutes(), a.fixMinutes());
        say(minutes == null ? null : minutes + " min");
        if (a.passed() != null) {
            say(a.passed() ? "passed" : "failed");
        } else if (!a.fix().equals(Fix.NONE)) {
            say("no retest yet");
        }
        say("grade", a.grade());
        say("parts", a.partsCost());
        say(a.soakHours() == null ? null : "soaked " + a.soakHours() + " h");
        say("close up", a.residualClose());
        say("at viewing distance", a.residualViewing());
        yesNo(a.safetyTested(), "safety tested", "not safety tested");
        yesNo(a.ownerDataReset(), "owner data reset", "owner data not reset");
        say("by", a.technician());
        return say(quoted(a.note()));
    }

    private EntryText exit(Exit e) {
        if (!e.leaves()) {
            say("part takings");
        }
        say(word(e.kind()));
        say(
                e.gross().isZero() && e.kind() != ExitKind.SOLD
                        ? null
                        : (e.kind() == ExitKind.RETURNED ? "credit " : "for ") + e.gross());
        say("fees", e.fees());
        say("shipping", e.shipping());
        say("tax", e.tax());
        say(e.minutes() == null ? null : e.minutes() + " min");
        say("through", e.channel());
        say("grade", e.grade());
        yesNo(e.disclosed(), "workaround disclosed", "workaround not disclosed");
        return say("release checks unmet:", quoted(e.unmetReason()));
    }

    private static String word(ExitKind kind) {
        return kind == ExitKind.RETURNED ? "returned to the seller" : kind.code();
    }

    private EntryText comeback(Comeback c) {
        say("came back");
        say(c.restocked() ? "in stock again" : "not in stock");
        say(c.fault() == null ? null : c.fault().code());
        say("refund", c.refund());
        return say("cost", c.cost());
    }

    private EntryText set(TvSet s) {
        say(s.maker() + " " + s.model());
        say(s.inches() == null ? null : s.inches() + " in");
        say(s.family().equals(s.model()) ? null : "family " + s.family());
        say("claimed", s.claimed());
        say(quoted(s.claimedText()));
        say("serial", s.serial());
        say("listed as", listed(s));
        say(s.rows() == null ? null : s.rows() + " rows");
        say("panel", s.panel());
        say(
                s.line() == null
                        ? "not on the manifest"
                        : (s.sheet() == null ? "" : "sheet " + s.sheet() + " ") + "line " + s.line());
        say("asking", s.asking());
        yesNo(s.incomplete(), "incomplete", null);
        yesNo(s.arrived(), null, "did not arrive");
        say("landed cost", s.landedCost());
        say("at", s.place());
        say("waits for", s.waitingFor());
        return say("expected on", s.expectedOn());
    }

    private static @Nullable String listed(TvSet s) {
        StringJoiner listed = new StringJoiner(" ").setEmptyValue("");
        for (Object each : new @Nullable Object[] {s.listedMaker(), s.listedModel()}) {
            if (each != null) {
                listed.add(each.toString());
            }
        }
        if (s.listedInches() != null) {
            listed.add(s.listedInches() + " in");
        }
        return listed.length() == 0 ? null : listed.toString();
    }

    private EntryText lot(Lot l) {
        say("from " + l.supplier());
        say("bought on " + l.boughtOn());
        say("received on", l.receivedOn());
        say("price " + l.price() + " " + l.currency());
        say("premium", l.premium());
        say("freight", l.freight());
        say("other cost", l.otherCost());
        say("rate", l.rate() == null ? null : l.rate().toPlainString());
        say(l.minutes() == null ? null : l.minutes() + " min on the lot");
        say(l.basis() == null ? null : "cost shared by " + l.basis().code());
        return say(quoted(l.note()));
    }

    private EntryText bid(Bid b) {
        say("on " + b.on());
        say("from", b.supplier());
        say(b.sets() == null ? null : Plural.of(b.sets(), "set"));
        say("limit", b.limit());
        say("expected", b.mean());
        yesNo(b.won(), "won", "not won");
        say("hammer", b.hammer());
        say("lot", b.lot());
        return say(
                b.manifest() == null
                        ? null
                        : "manifest "
                                + b.manifest()
                                        .substring(0, Math.min(12, b.manifest().length())));
    }

    private EntryText part(Part p) {
        say(p.kind().code());
        say("number", p.number());
        say(p.fromUnit() == null ? "bought" : "out of " + p.fromUnit());
        say("on " + p.on());
        say("value " + p.value());
        say(p.tested() == null ? null : "tested " + p.tested().code());
        say(p.attempt() == null ? null : "used in attempt " + p.attempt());
        return say("gone on", p.goneOn());
    }

    private EntryText recipe(Recipe r) {
        say("recipe for " + r.panel() + " " + r.side().code());
        say("contacts " + r.contacts());
        say(r.signals());
        say("close up", r.residualClose());
        say("at viewing distance", r.residualViewing());
        say(r.used() == null ? null : "used " + r.used() + ", good " + (r.good() == null ? 0 : r.good()));
        return say(quoted(r.note()));
    }

    private EntryText say(@Nullable String words) {
        if (words != null && !words.isEmpty()) {
            parts.add(words);
        }
        return this;
    }

    private EntryText say(String what, @Nullable Object value) {
        return say(value == null ? null : what + " " + (value instanceof Coded c ? c.code() : value));
    }

    private void yesNo(@Nullable Boolean value, @Nullable String yes, @Nullable String no) {
        say(value == null ? null : value ? yes : no);
    }

    private static @Nullable String quoted(@Nullable String text) {
        return text == null ? null : '"' + text + '"';
    }

    private static @Nullable Quantity sum(@Nullable Quantity a, @Nullable Quantity b) {
        return a == null ? b : b == null ? a : new Quantity(Math.addExact(a.millionths(), b.millionths()));
    }

    @Override
    public String toString() {
        return String.join(", ", parts);
    }
}
