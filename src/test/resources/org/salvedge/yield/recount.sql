-- The counting rules in plain SQL over the tables of a history package, all columns as text, empty = not known.
-- Labour is 23.45 an hour; amounts in cents, times in millionths of a minute.

CREATE TABLE leaving AS
SELECT unit, "on", seq, exit, grade FROM exits WHERE gone <> 'false';
CREATE INDEX leaving_unit ON leaving (unit);

-- Every entry of a set in order: by day; on one day a comeback of an earlier day's exit (0), attempts (1), exits (2), a
-- comeback of that day's exit (3). A set stands sold when a day begins if more exits than restocked comebacks lie before it.
CREATE TABLE entry AS
SELECT unit, day, class, kind, id, row_number() OVER (PARTITION BY unit ORDER BY day, class, k1, k2) AS pos
FROM (
  SELECT unit, substr(started_at, 1, 10) AS day, 1 AS class, started_at AS k1, CAST(attempt AS INTEGER) AS k2,
         'attempt' AS kind, attempt AS id FROM attempts
  UNION ALL
  SELECT unit, "on", 2, CAST(seq AS INTEGER), 0, 'exit', "on" || '/' || seq FROM leaving
  UNION ALL
  SELECT unit, "on",
         CASE WHEN (SELECT count(*) FROM leaving l WHERE l.unit = c.unit AND l."on" < c."on")
                 > (SELECT count(*) FROM comebacks d WHERE d.unit = c.unit AND d.restocked = 'true' AND d."on" < c."on")
              THEN 0 ELSE 3 END,
         0, 0, CASE restocked WHEN 'true' THEN 'restocked' ELSE 'kept' END, "on" FROM comebacks c);
CREATE INDEX entry_unit ON entry (unit, pos);

CREATE TABLE turn AS
SELECT a.unit, CAST(a.attempt AS INTEGER) AS attempt, e.pos, substr(a.started_at, 1, 10) AS day, a.fault, a.fix, a.technician, a.grade,
       CAST(round(a.diagnosis_minutes * 1e6) AS INTEGER) + CAST(round(a.fix_minutes * 1e6) AS INTEGER) AS micros,
       CASE WHEN a.fix = 'none' OR a.fix_minutes = '' THEN NULL ELSE CAST(a.fix_minutes AS REAL) END AS fix_minutes,
       CAST(round(a.parts_cost * 100) AS INTEGER) AS parts,
       CASE WHEN a.passed = 'true' THEN 'pass'
            WHEN a.passed = 'false' THEN 'fail'
            WHEN a.fix = 'none' THEN 'none'
            WHEN EXISTS (SELECT 1 FROM entry l WHERE l.unit = a.unit AND l.pos > e.pos AND l.kind IN ('attempt', 'exit')) THEN 'fail'
            ELSE 'pending' END AS result
FROM attempts a JOIN entry e ON e.unit = a.unit AND e.kind = 'attempt' AND e.id = a.attempt;
CREATE INDEX turn_unit ON turn (unit, pos);

CREATE TABLE state AS
SELECT u.unit, u.lot, l.supplier, u.family, u.maker, u.model, u.inches, u.claimed, CAST(round(u.landed_cost * 100) AS INTEGER) AS landed,
       (SELECT max(pos) FROM entry e WHERE e.unit = u.unit AND kind = 'exit') AS exit_pos,
       (SELECT max(pos) FROM entry e WHERE e.unit = u.unit AND kind = 'restocked') AS restock_pos,
       (SELECT max(pos) FROM entry e WHERE e.unit = u.unit AND kind = 'attempt') AS turn_pos,
       (SELECT max(pos) FROM turn t WHERE t.unit = u.unit AND result = 'pass') AS pass_pos,
       (SELECT min(pos) FROM turn t WHERE t.unit = u.unit AND fix <> 'none') AS first_pos,
       coalesce((SELECT max(pos) FROM turn t WHERE t.unit = u.unit AND fix <> 'none'),
                (SELECT max(pos) FROM turn t WHERE t.unit = u.unit)) AS deciding_pos,
       (SELECT count(*) FROM turn t WHERE t.unit = u.unit) AS attempts,
       (SELECT coalesce(sum(micros), 0) FROM turn t WHERE t.unit = u.unit)
         + (SELECT coalesce(sum(CAST(round(minutes * 1e6) AS INTEGER)), 0) FROM exits x WHERE x.unit = u.unit) AS micros,
       (SELECT coalesce(sum(CAST(round(gross * 100) AS INTEGER) - CAST(round(fees * 100) AS INTEGER)
           - CAST(round(shipping * 100) AS INTEGER) - CAST(round(tax * 100) AS INTEGER)), 0) FROM exits x WHERE x.unit = u.unit)
         - (SELECT coalesce(sum(parts), 0) FROM turn t WHERE t.unit = u.unit)
         - (SELECT coalesce(sum(CAST(round(refund * 100) AS INTEGER) + CAST(round(cost * 100) AS INTEGER)), 0)
            FROM comebacks c WHERE c.unit = u.unit) AS cash
FROM units u JOIN lots l ON l.lot = u.lot
WHERE u.arrived = 'true';

CREATE TABLE fact AS
SELECT s.*,
       CASE WHEN NOT decided THEN '' WHEN saved THEN substr(pass_day, 1, 7) ELSE substr(exit_on, 1, 7) END AS month,
       coalesce(substr(exit_on, 1, 7), '') AS exit_month,
       coalesce(nullif(exit_grade, ''), pass_grade, '') AS grade
FROM (
  SELECT s.*, passed OR gone AND exit_kind IN ('sold', 'stripped', 'recycled') AS decided,
         passed OR gone AND exit_kind = 'sold' AND latest = 'pass' AS saved,
         gone AND exit_kind IN ('returned', 'lost') AS aside
  FROM (
    SELECT s.*, cash - landed - (2 * 2345 * micros + 60000000) / 120000000 AS margin,
           NOT gone AND coalesce(turn_pos = pass_pos, 0) AND coalesce(restock_pos < turn_pos, 1) AS passed,
           (SELECT exit FROM leaving l WHERE l.unit = s.unit AND l."on" || '/' || l.seq = exit_id) AS exit_kind,
           (SELECT grade FROM leaving l WHERE l.unit = s.unit AND l."on" || '/' || l.seq = exit_id) AS exit_grade,
           substr(exit_id, 1, 10) AS exit_on,
           (SELECT grade FROM turn t WHERE t.unit = s.unit AND t.pos = pass_pos) AS pass_grade,
           (SELECT day FROM turn t WHERE t.unit = s.unit AND t.pos = pass_pos) AS pass_day,
           (SELECT result FROM turn t WHERE t.unit = s.unit AND t.pos < exit_pos AND result IN ('pass', 'fail')
            ORDER BY pos DESC LIMIT 1) AS latest,
           (SELECT result FROM turn t WHERE t.unit = s.unit AND t.pos = first_pos) AS first_result,
           coalesce((SELECT fault FROM turn t WHERE t.unit = s.unit AND t.pos = deciding_pos), '') AS deciding_fault,
           coalesce((SELECT fix FROM turn t WHERE t.unit = s.unit AND t.pos = deciding_pos), '') AS deciding_fix,
           coalesce((SELECT technician FROM turn t WHERE t.unit = s.unit AND t.pos = deciding_pos), '') AS deciding_technician
    FROM (
      SELECT s.*, g.gone, CASE WHEN g.gone THEN (SELECT id FROM entry e WHERE e.unit = s.unit AND e.pos = s.exit_pos) END AS exit_id
      FROM state s JOIN (SELECT unit, exit_pos IS NOT NULL AND coalesce(restock_pos < exit_pos, 1) AS gone FROM state) g USING (unit)
    ) s
  ) s
) s;
CREATE INDEX fact_unit ON fact (unit);
