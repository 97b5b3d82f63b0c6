package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.Settings;

/** Audits that the shares of each lot's landed cost add up to it, and that sets that did not arrive carry none. */
final class AuditShares {
    private static final String RULE = "landed costs add up";

    private final Connection connection;
    private final Settings settings;
    private final Findings findings;
    private final Store store;

    AuditShares(Connection connection, Settings settings, Findings findings) {
        this.connection = connection;
        this.settings = settings;
        this.findings = findings;
        store = new Store(connection, settings.currency(), settings.codes());
    }

    private record Sums(long arrived, long unshared, long shares, long ofMissing) {}

    void run() throws SQLException {
        Map<Integer, Sums> byLot = new HashMap<>();
        String sql = "SELECT lot, sum(arrived), sum(arrived AND landed_cost IS NULL),"
                + " sum(iif(arrived, ifnull(landed_cost, 0), 0)), sum(iif(arrived, 0, ifnull(landed_cost, 0)))"
                + " FROM unit WHERE" + Store.STANDS + " GROUP BY lot";
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                byLot.put(row.getInt(1), new Sums(row.getLong(2), row.getLong(3), row.getLong(4), row.getLong(5)));
            }
        }
        for (Stored<Lot> stored : store.standing(Tables.LOTS, "1")) {
            Lot lot = stored.fact();
            Sums sums = byLot.get(store.codec().lots().find(lot.lot().value()));
            if (sums != null) {
                check(lot, sums);
            }
        }
    }

    private void check(Lot lot, Sums sums) {
        String where = "lot " + lot.lot();
        Money cost = lot.landedCost(settings.currency());
        if (sums.unshared() > 0) {
            findings.add(RULE, where, sums.unshared() + " sets that arrived carry no share");
        }
        if (sums.ofMissing() != 0) {
            findings.add(
                    RULE, where, "sets that did not arrive carry " + new Money(sums.ofMissing(), settings.currency()));
        }
        if (sums.arrived() > 0 && sums.shares() != cost.minor()) {
            findings.add(
                    RULE,
                    where,
                    "the shares add up to " + new Money(sums.shares(), settings.currency()) + ", the lot cost " + cost);
        }
    }
}
