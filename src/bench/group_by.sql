-- The same cells as `yield --by family,fault,fix`, counted and added up; no quantiles, no margins.
SELECT u.family, a.fault, a.fix, count(*), count(DISTINCT a.unit), sum(a.passed), sum(a.passed IS NOT NULL), sum(a.fix_minutes), sum(a.diagnosis_minutes), sum(a.parts_cost)
FROM attempts a JOIN units u ON u.unit = a.unit WHERE u.arrived GROUP BY 1, 2, 3 ORDER BY 1, 2, 3;
