-- Questions that logbook/ asks.  ?1, ?2 ... are named in the comment above each; columns are read by place.
-- To add one: write it here; it is SQL_NAME in C after the next make, and tests/store/test_sql.c checks its plan.

-- name
--! BOAT_BY_NAME
SELECT * FROM boat WHERE name = ?1;

-- boat, name
--! ENGINE_BY_NAME
SELECT * FROM engine WHERE boat = ?1 AND name = ?2;

-- boat, path
--! FITTING_BY_PATH
SELECT * FROM fitting WHERE boat = ?1 AND path = ?2;

-- boat, name
--! TASK_BY_NAME
SELECT * FROM task WHERE boat = ?1 AND name = ?2;

-- name
--! PLACE_BY_NAME
SELECT * FROM place WHERE name = ?1;

-- place
--! CLIMATE_OF_PLACE
SELECT * FROM climate WHERE place = ?1 ORDER BY month;

-- place, month
--! CLIMATE_FOR
SELECT id FROM climate WHERE place = ?1 AND month = ?2;

-- task
--! LIMITS_OF_TASK
SELECT * FROM "limit" WHERE task = ?1 ORDER BY id;

-- task; the newest first, from the covering index alone
--! SERVICES_OF_TASK
SELECT date, outcome, after, made, estimated, earliest, hours_least, hours_most FROM service WHERE task = ?1 ORDER BY date DESC;

-- task, first day, last day; the newest first
--! SERVICES_BETWEEN
SELECT * FROM service WHERE task = ?1 AND date >= ?2 AND date <= ?3 ORDER BY date DESC, id DESC;

-- boat
--! FINDINGS_OPEN
SELECT * FROM finding WHERE boat = ?1 AND mended IS NULL ORDER BY date, id;

-- fitting; the newest first
--! FINDINGS_OF_FITTING
SELECT * FROM finding WHERE fitting = ?1 ORDER BY date DESC, id DESC;

-- finding
--! PHOTOS_OF_FINDING
SELECT * FROM photo WHERE finding = ?1 ORDER BY id;

-- job
--! AIMS_OF_JOB
SELECT * FROM aim WHERE job = ?1 ORDER BY id;

-- job
--! STEPS_OF_JOB
SELECT * FROM step WHERE job = ?1 ORDER BY no;

-- job
--! REMOVALS_OF_JOB
SELECT * FROM removal WHERE job = ?1 ORDER BY no;

-- removal
--! PHOTOS_OF_REMOVAL
SELECT * FROM photo WHERE removal = ?1 ORDER BY id;

--! WAIVERS_OF_FINDING
SELECT * FROM waiver WHERE finding = ?1 ORDER BY id;

-- meter, day, reading, remark, service; the row that this service's reading put into the log, when no other has it
--! UNLOGGED_BY_SERVICE
SELECT id FROM outing WHERE meter = ?1 AND date = ?2 AND reading = ?3 AND remark = ?4 AND NOT EXISTS
	(SELECT 1 FROM service WHERE meter = ?1 AND date = ?2 AND reading = ?3 AND id <> ?5);

-- task, first and last day; whole
--! SERVICES_NEAR
SELECT * FROM service WHERE task = ?1 AND date BETWEEN ?2 AND ?3 ORDER BY date, id;

-- fitting; what is in it now, and what was filled into it: a part whose name begins with 'fluid: '
--! PARTS_OF_FITTING
SELECT * FROM part WHERE fitting = ?1 AND removed IS NULL AND what NOT LIKE 'fluid: %' ORDER BY fitted, id;
--! FLUIDS_OF_FITTING
SELECT * FROM part WHERE fitting = ?1 AND removed IS NULL AND what LIKE 'fluid: %' ORDER BY fitted, id;

-- What still refers to a row: plural and count, and only where there is any.

-- boat
--! REFERS_TO_BOAT
SELECT 'engines', count(*) FROM engine WHERE boat = ?1
UNION ALL SELECT 'fittings', count(*) FROM fitting WHERE boat = ?1
UNION ALL SELECT 'stays', count(*) FROM stay WHERE boat = ?1
UNION ALL SELECT 'seasons', count(*) FROM season WHERE boat = ?1
UNION ALL SELECT 'outings', count(*) FROM outing WHERE boat = ?1
UNION ALL SELECT 'happenings', count(*) FROM happening WHERE boat = ?1
UNION ALL SELECT 'tasks', count(*) FROM task WHERE boat = ?1
UNION ALL SELECT 'measurements', count(*) FROM measurement WHERE boat = ?1
UNION ALL SELECT 'bounds', count(*) FROM bound WHERE boat = ?1
UNION ALL SELECT 'findings', count(*) FROM finding WHERE boat = ?1
UNION ALL SELECT 'waivers', count(*) FROM waiver WHERE boat = ?1
UNION ALL SELECT 'skips', count(*) FROM skip WHERE boat = ?1
UNION ALL SELECT 'photos', count(*) FROM photo WHERE boat = ?1
UNION ALL SELECT 'heeded', count(*) FROM heeded WHERE boat = ?1
UNION ALL SELECT 'shipped', count(*) FROM shipped WHERE boat = ?1
UNION ALL SELECT 'figures', count(*) FROM figure WHERE boat = ?1
UNION ALL SELECT 'jobs', count(*) FROM job WHERE boat = ?1
UNION ALL SELECT 'sheets', count(*) FROM sheet WHERE boat = ?1
UNION ALL SELECT 'taken', count(*) FROM taken WHERE boat = ?1;

-- engine
--! REFERS_TO_ENGINE
SELECT 'meters', count(*) FROM meter WHERE engine = ?1
UNION ALL SELECT 'fittings', count(*) FROM fitting WHERE engine = ?1
UNION ALL SELECT 'outings', count(*) FROM outing
	WHERE boat = (SELECT boat FROM engine WHERE id = ?1) AND engine = ?1;

-- meter
--! REFERS_TO_METER
SELECT 'outings', count(*) FROM outing WHERE meter = ?1
UNION ALL SELECT 'services', count(*) FROM service WHERE meter = ?1;

-- fitting
--! REFERS_TO_FITTING
SELECT 'parts', count(*) FROM part WHERE fitting = ?1
UNION ALL SELECT 'tasks', count(*) FROM task WHERE fitting = ?1
UNION ALL SELECT 'measurements', count(*) FROM measurement WHERE fitting = ?1
UNION ALL SELECT 'bounds', count(*) FROM bound WHERE fitting = ?1
UNION ALL SELECT 'findings', count(*) FROM finding WHERE fitting = ?1
UNION ALL SELECT 'figures', count(*) FROM figure WHERE fitting = ?1
UNION ALL SELECT 'removals', count(*) FROM removal WHERE fitting = ?1;

-- outing
--! REFERS_TO_OUTING
SELECT 'outings', count(*) FROM outing WHERE trip = ?1
UNION ALL SELECT 'findings', count(*) FROM finding WHERE outing = ?1;

-- task
--! REFERS_TO_TASK
SELECT 'limits', count(*) FROM "limit" WHERE task = ?1
UNION ALL SELECT 'services', count(*) FROM service WHERE task = ?1
UNION ALL SELECT 'findings', count(*) FROM finding WHERE task = ?1
UNION ALL SELECT 'waivers', count(*) FROM waiver WHERE task = ?1
UNION ALL SELECT 'skips', count(*) FROM skip WHERE task = ?1
UNION ALL SELECT 'aims', count(*) FROM aim WHERE task = ?1
UNION ALL SELECT 'steps', count(*) FROM step WHERE task = ?1
UNION ALL SELECT 'sheet-lines', count(*) FROM sheetline WHERE task = ?1
UNION ALL SELECT 'needs', count(*) FROM need WHERE task = ?1;

-- place; stays and boats name theirs by a text, and outings too, which have taken its water already
--! REFERS_TO_PLACE
SELECT 'climates', count(*) FROM climate WHERE place = ?1
UNION ALL SELECT 'stays', count(*) FROM stay WHERE place = (SELECT name FROM place WHERE id = ?1)
UNION ALL SELECT 'boats', count(*) FROM boat WHERE place = (SELECT name FROM place WHERE id = ?1);

-- finding
--! REFERS_TO_FINDING
SELECT 'waivers', count(*) FROM waiver WHERE finding = ?1
UNION ALL SELECT 'photos', count(*) FROM photo WHERE finding = ?1
UNION ALL SELECT 'aims', count(*) FROM aim WHERE finding = ?1
UNION ALL SELECT 'sheet-lines', count(*) FROM sheetline WHERE finding = ?1;

-- measurement
--! REFERS_TO_MEASUREMENT
SELECT 'findings', count(*) FROM finding WHERE measurement = ?1;

-- service
--! REFERS_TO_SERVICE
SELECT 'findings', count(*) FROM finding WHERE service = ?1
UNION ALL SELECT 'photos', count(*) FROM photo WHERE service = ?1
UNION ALL SELECT 'aims', count(*) FROM aim WHERE service = ?1
UNION ALL SELECT 'sheet-lines', count(*) FROM sheetline WHERE service = ?1
UNION ALL SELECT 'taken', count(*) FROM taken WHERE service = ?1;

-- happening
--! REFERS_TO_HAPPENING
SELECT 'waivers', count(*) FROM waiver WHERE happening = ?1;

-- job
--! REFERS_TO_JOB
SELECT 'aims', count(*) FROM aim WHERE job = ?1
UNION ALL SELECT 'steps', count(*) FROM step WHERE job = ?1
UNION ALL SELECT 'removals', count(*) FROM removal WHERE job = ?1
UNION ALL SELECT 'taken', count(*) FROM taken WHERE job = ?1;

-- removal
--! REFERS_TO_REMOVAL
SELECT 'photos', count(*) FROM photo WHERE removal = ?1;

-- sheet
--! REFERS_TO_SHEET
SELECT 'sheet-lines', count(*) FROM sheetline WHERE sheet = ?1;

-- item
--! REFERS_TO_ITEM
SELECT 'numbers', count(*) FROM number WHERE item = ?1
UNION ALL SELECT 'lots', count(*) FROM lot WHERE item = ?1
UNION ALL SELECT 'needs', count(*) FROM need WHERE item = ?1;

-- number
--! REFERS_TO_NUMBER
SELECT 'numbers', count(*) FROM number WHERE replaced_by = ?1;

-- lot
--! REFERS_TO_LOT
SELECT 'taken', count(*) FROM taken WHERE lot = ?1;

-- boat, day, work
--! HEEDED_ON
SELECT cautions FROM heeded WHERE boat = ?1 AND date = ?2 AND work = ?3;

-- boat, day; those that let something pass on that day
--! WAIVERS_ON
SELECT * FROM waiver WHERE boat = ?1 AND until >= ?2 AND date <= ?2 AND (ended IS NULL OR ended > ?2) ORDER BY until, id;

-- boat
--! HAPPENINGS_OPEN
SELECT * FROM happening WHERE boat = ?1 AND closed IS NULL ORDER BY date, id;

-- boat, day; those not mended by then
--! FINDINGS_OPEN_ON
SELECT * FROM finding WHERE boat = ?1 AND (mended IS NULL OR mended > ?2) ORDER BY date, id;

-- task, day; up to then, the newest first
--! OUTCOMES_OF_TASK
SELECT date, outcome, id FROM service WHERE task = ?1 AND date <= ?2 ORDER BY date DESC, id DESC;

-- fitting, first day, last day; a row when it was renewed then, and not only said to have been
--! RENEWED_BETWEEN
SELECT 1
FROM task t CROSS JOIN service s ON s.task = t.id
WHERE t.fitting = ?1 AND s.date >= ?2 AND s.date <= ?3 AND (s.outcome = 'renewed' OR (s.outcome = 'done' AND t.verb = 'renew'))
LIMIT 1;
