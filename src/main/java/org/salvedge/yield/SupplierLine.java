package org.salvedge.yield;

/**
 * How one supplier's lots of the 24 months up to the month's end turned out.
 *
 * @param listed sets on its manifests
 * @param missing those of them that did not arrive
 * @param checked sets whose claim names a fault, or none, and whose fault was found
 * @param truth share of these whose fault was one that the claim means; shrunk to all suppliers, lots taken as whole
 * @param looked sets not claimed as cracked whose fault was found
 * @param glass share of these with broken glass, shrunk alike
 * @param finished lots of which nothing is here any more
 * @param spent landed cost of these
 * @param recovered their net recovery
 * @param adjust change of the prices paid at which its finished lots would have brought the same a unit of money as all lots together,
 *     shrunk; -0.1 = a tenth less
 * @param month sets of it decided in the month
 * @param monthSaved those of them that were saved
 */
public record SupplierLine(
        String supplier,
        int lots,
        int listed,
        int missing,
        int checked,
        Range truth,
        int looked,
        Range glass,
        int finished,
        org.salvedge.shop.Money spent,
        org.salvedge.shop.Money recovered,
        Range adjust,
        int month,
        int monthSaved) {}
