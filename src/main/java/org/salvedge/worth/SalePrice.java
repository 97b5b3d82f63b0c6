package org.salvedge.worth;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;

/**
 * What a set that passed sells for, out of the shop's own sales: by size, maker, family and grade, along the months, as the lot
 * estimate has it. Medians; book currency.
 */
public final class SalePrice {
    private final Records records;
    private final PriceModel sales;

    private SalePrice(Records records, PriceModel sales) {
        this.records = records;
        this.sales = sales;
    }

    /** @param history the record as it stood at the end of {@code asOf}, with every column */
    public static SalePrice fit(History history, LocalDate asOf, Settings settings) {
        double hourly = settings.labourRate().doubleValue();
        Records records = new Records(history, (int) asOf.toEpochDay(), hourly / 60);
        return new SalePrice(records, PriceModel.ofSales(records, hourly));
    }

    /**
     * @param inches 0 = not known: as the family's other sets
     * @param grade null = none was given
     * @param monthsAhead from the day of the record
     */
    public double median(String family, String maker, double inches, @Nullable Grade grade, double monthsAhead) {
        int f = records.history.families().find(family);
        double size = inches > 0 ? Math.log(inches / Records.USUAL_INCHES) : f >= 0 ? records.familyLogInches[f] : 0;
        return Math.exp(sales.expected(
                f,
                records.history.makers().find(maker),
                size,
                grade == null ? PriceModel.NO_GRADE : grade.ordinal(),
                monthsAhead));
    }

    /** Standard deviation of the log of single prices about the median. */
    public double spread() {
        return Math.sqrt(2 * Math.log(sales.smear()));
    }
}
