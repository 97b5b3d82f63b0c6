package org.salvedge.cli;

import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.salvedge.ledger.Entry;
import org.salvedge.report.Column;
import org.salvedge.report.Digits;
import org.salvedge.report.Kind;
import org.salvedge.report.Plural;
import org.salvedge.report.Table;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;
import org.salvedge.yield.SetAccount;
import org.salvedge.yield.SetAccount.Standing;

/** Where sets stand and what they made, as {@code show} prints it below their entries. */
final class Accounts {
    private final Session session;
    private final AsOfView view;
    private final Currency book;

    Accounts(Session session, AsOfView view) {
        this.session = session;
        this.view = view;
        this.book = session.shop().settings().currency();
    }

    /** Of those of the sets that were there. */
    List<SetAccount> of(Lot lot, List<UnitId> units) {
        List<TvSet> sets = new ArrayList<>();
        List<List<Fact>> facts = new ArrayList<>();
        for (UnitId unit : units) {
            List<Entry> entries = view.entriesOf(unit);
            Optional<TvSet> set = AsOfView.setIn(entries);
            if (set.isPresent()) {
                sets.add(set.get());
                facts.add(standing(entries));
            }
        }
        return SetAccount.of(lot, sets, facts, session.shop().settings().labourRate(), book);
    }

    private static List<Fact> standing(List<Entry> entries) {
        List<Fact> standing = new ArrayList<>();
        for (Entry entry : entries) {
            Fact fact = entry.fact();
            if (entry.stands() && fact != null) {
                standing.add(fact);
            }
        }
        return standing;
    }

    void say(SetAccount account) {
        boolean done = account.standing().isFinal();
        session.say((view.day() == null ? "Now: " : view.day() + ": ")
                + account.standing().words() + ". " + account.minutes() + " min; " + (done ? "" : "so far ")
                + "net recovery " + shown(account.net()) + ", landed cost " + shown(account.landed())
                + (done ? ", margin " + shown(account.margin()) : "") + " " + book);
    }

    void say(Lot lot, List<SetAccount> accounts) {
        Table.Builder table = Table.of(
                Column.of("unit", "unit", Kind.TEXT),
                Column.of("set", "set", Kind.TEXT),
                Column.of("claimed", "claimed", Kind.TEXT),
                Column.of("now", "now", Kind.TEXT),
                Column.of("minutes", "min", Kind.NUMBER),
                Column.of("net", "net", Kind.MONEY),
                Column.of("landed", "landed", Kind.MONEY),
                Column.of("margin", "margin", Kind.MONEY));
        Money labour = SetAccount.labour(lot, session.shop().settings().labourRate(), book);
        Money net = labour.negated();
        Map<Standing, Integer> count = new EnumMap<>(Standing.class);
        for (SetAccount a : accounts) {
            TvSet set = a.set();
            table.row(
                    set.unit(),
                    set.maker() + " " + set.model(),
                    set.claimed(),
                    a.standing().words(),
                    a.minutes(),
                    a.net(),
                    a.landed(),
                    a.standing().isFinal() ? a.margin() : null);
            net = net.plus(a.net());
            count.merge(a.standing(), 1, Integer::sum);
        }
        session.print(table.build(), Format.TABLE);
        session.say(Plural.of(accounts.size(), "set")
                + (count.isEmpty() ? "" : ": ")
                + count.entrySet().stream()
                        .map(e -> e.getValue() + " " + e.getKey().words())
                        .collect(Collectors.joining(", "))
                + ".");
        Money cost = lot.landedCost(book);
        session.say("Net recovery so far " + shown(net) + ", landed cost " + shown(cost) + ", together "
                + shown(net.minus(cost)) + " " + book + ".");
        if (!labour.isZero()) {
            session.say("Net recovery is less " + shown(labour) + " for " + lot.minutes()
                    + " min of labour on the lot as a whole, which no set carries: without it, as in `yield --by lot`, "
                    + shown(net.plus(labour).minus(cost)) + ".");
        }
    }

    private static String shown(Money money) {
        return Digits.grouped(money.amount(), money.amount().scale());
    }
}
