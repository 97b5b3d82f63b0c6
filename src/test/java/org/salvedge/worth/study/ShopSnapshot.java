package org.salvedge.worth.study;

import java.math.BigDecimal;
import org.salvedge.shop.History;

/**
 * What a shop knows at the end of a day.
 *
 * @param asOf epoch day
 * @param labourRate per hour
 */
record ShopSnapshot(History history, int asOf, BigDecimal labourRate) {}
