package org.salvedge.stats;

/**
 * How much to buy once for a normal demand, when what is left over sells below cost.
 *
 * <p>Source: G. Cachon and C. Terwiesch, "Matching Supply with Demand", 3rd ed. (2013), chapter 12.
 *
 * @param price of a unit sold to demand
 * @param cost of a unit
 * @param salvage price of a unit left over, below the cost
 * @param mean of demand
 * @param sd of demand, above 0
 */
public record Newsvendor(double price, double cost, double salvage, double mean, double sd) {
    public Newsvendor {
        if (!(salvage < cost && cost < price && sd > 0)) {
            throw new IllegalArgumentException("salvage " + salvage + " < cost " + cost + " < price " + price
                    + " and sd " + sd + " > 0 must hold");
        }
    }

    /** Underage cost over the sum of underage and overage cost: the chance of meeting demand at the best quantity. */
    public double criticalRatio() {
        return (price - cost) / (price - salvage);
    }

    public double bestQuantity() {
        return mean + sd * Normals.quantile(criticalRatio());
    }

    /** Expected demand that is not met. */
    public double lostSales(double quantity) {
        double z = (quantity - mean) / sd;
        return sd * (Normals.density(z) - z * Normals.above(z));
    }

    public double sales(double quantity) {
        return mean - lostSales(quantity);
    }

    public double leftover(double quantity) {
        return quantity - sales(quantity);
    }

    public double profit(double quantity) {
        return (price - cost) * sales(quantity) - (cost - salvage) * leftover(quantity);
    }
}
