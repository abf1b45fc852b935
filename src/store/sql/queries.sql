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

-- meter, day, reading, remark, service; the row that this service's reading put into the log, when no other has it
--! UNLOGGED_BY_SERVICE
SELECT id FROM outing WHERE meter = ?1 AND date = ?2 AND reading = ?3 AND remark = ?4 AND NOT EXISTS
	(SELECT 1 FROM service WHERE meter = ?1 AND date = ?2 AND reading = ?3 AND id <> ?5);

-- fitting; what is in it now
--! PARTS_OF_FITTING
SELECT * FROM part WHERE fitting = ?1 AND removed IS NULL ORDER BY fitted, id;

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
UNION ALL SELECT 'bounds', count(*) FROM bound WHERE boat = ?1;

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
UNION ALL SELECT 'bounds', count(*) FROM bound WHERE fitting = ?1;

-- outing
--! REFERS_TO_OUTING
SELECT 'outings', count(*) FROM outing WHERE trip = ?1;

-- task
--! REFERS_TO_TASK
SELECT 'limits', count(*) FROM "limit" WHERE task = ?1
UNION ALL SELECT 'services', count(*) FROM service WHERE task = ?1;

-- place; stays and boats name theirs by a text, and outings too, which have taken its water already
--! REFERS_TO_PLACE
SELECT 'climates', count(*) FROM climate WHERE place = ?1
UNION ALL SELECT 'stays', count(*) FROM stay WHERE place = (SELECT name FROM place WHERE id = ?1)
UNION ALL SELECT 'boats', count(*) FROM boat WHERE place = (SELECT name FROM place WHERE id = ?1);
