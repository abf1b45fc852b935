--! DUE_TASKS
-- What the due list asks of a boat's tasks; in the order of their keys, so that tables are read from front to back.
SELECT t.id, t.name, t.title, t.verb, t.place, t.mechanism, t.consequence, t.rule, t.minutes, t.variants, t.part,
	t.proof, t.caution, f.id, f.path, f.title, f.variant, f.engine, f.needs_off
FROM task t CROSS JOIN fitting f ON f.id = t.fitting
WHERE t.boat = ?1 AND t.retired IS NOT 1 AND f.retired IS NOT 1
ORDER BY t.id;

--! DUE_LIMITS
-- The limits of the boat's tasks, in the same order, from the covering indexes alone: those of retired tasks too.
SELECT l.id, l.task, l.kind, l.amount, l.hours, l.event, l.happening, l.standing, l.source,
	l.measured, l.salt, l.salt_hours
FROM task t CROSS JOIN "limit" l ON l.task = t.id
WHERE t.boat = ?1
ORDER BY t.id, l.id;

--! DUE_PARTS
-- The parts fitted now, the latest of a fitting last; a fluid is no part that a look or a renewal counts from.
SELECT p.fitting, p.fitted, p.made
FROM fitting f CROSS JOIN part p ON p.fitting = f.id
WHERE f.boat = ?1 AND p.removed IS NULL AND p.fitted IS NOT NULL AND p.what NOT LIKE 'fluid: %'
ORDER BY f.path, p.fitted;

--! DUE_OFF
-- A fitting that others need off or open, and what it needs itself.
SELECT title, needs_off, off_minutes, variant FROM fitting WHERE boat = ?1 AND path = ?2;

--! DUE_ENGINES
SELECT id FROM engine WHERE boat = ?1 ORDER BY name;

--! DUE_RATES
SELECT name, value FROM rate;

--! DUE_OPEN
-- What happened and is not closed.
SELECT date, kind FROM happening WHERE boat = ?1 AND closed IS NULL ORDER BY date;

--! DUE_FOUND
-- Open findings that ask for work.
SELECT id, date, level, words, makes_due FROM finding
WHERE boat = ?1 AND mended IS NULL AND makes_due IS NOT NULL
ORDER BY date;

-- boat, first day; from the last outing before that day on, since the salt it left may still be there.  From the
-- covering index alone
--! DUE_RUNS
SELECT date, engine, hours, water, rinsed, trip FROM outing
WHERE boat = ?1 AND date >= coalesce((SELECT max(date) FROM outing WHERE boat = ?1 AND date < ?2), ?2)
ORDER BY date;

--! DUE_STAYS
SELECT date, until, stand, water, place FROM stay WHERE boat = ?1 ORDER BY date;

--! DUE_PLACES
SELECT id, name, water, salinity, air FROM place ORDER BY id;

--! DUE_CLIMATES
-- In the order of the places.
SELECT place, month, water, air FROM climate ORDER BY place;

-- boat, first day
--! DUE_SEASONS
SELECT launch, haul_out FROM season WHERE boat = ?1 AND launch >= ?2 ORDER BY launch;

--! METER_ROWS
-- A meter's rows in the order of day and entry.
SELECT id, date, hours, reading FROM outing WHERE meter = ?1 ORDER BY date, id;

--! METER_ON
-- The meter of an engine that counts on a day.
SELECT * FROM meter WHERE engine = ?1 AND fitted <= ?2 ORDER BY fitted DESC, id DESC LIMIT 1;

--! METER_READING_AFTER
SELECT date FROM outing WHERE meter = ?1 AND date > ?2 AND reading IS NOT NULL ORDER BY date LIMIT 1;

--! METER_MOVE
-- Outings without a reading go over to the meter ?3.
UPDATE outing SET meter = ?3 WHERE meter = ?1 AND date > ?2;

--! ENGINE_OUTINGS_IN
-- How many, how long, and the sum of the squared lengths in hours times seconds, between two days.
SELECT count(*), coalesce(sum(hours), 0), coalesce(sum(hours * hours / 3600), 0) FROM outing
WHERE boat = ?1 AND date > ?3 AND date <= ?4 AND engine = ?2 AND hours > 0;

--! ENGINE_LAST_DAY
SELECT date FROM outing WHERE boat = ?1 AND date <= ?3 AND engine = ?2 ORDER BY date DESC LIMIT 1;

-- boat, date, id, how many: pages of a log, from a row back, and what comes after it
--! OUTINGS_OLDER
SELECT * FROM outing WHERE boat = ?1 AND date <= ?2 AND (date < ?2 OR id <= ?3) ORDER BY date DESC, id DESC LIMIT ?4;

--! OUTINGS_NEWER
SELECT * FROM outing WHERE boat = ?1 AND date >= ?2 AND (date > ?2 OR id > ?3) ORDER BY date, id LIMIT ?4;

--! OUTINGS_BY_DAY
-- Seconds of all engines and the number of outings, a day a row.
SELECT date, sum(hours), sum(trip IS NULL) FROM outing WHERE boat = ?1 GROUP BY date ORDER BY date;

-- meter, day, outing left out: the day of its last reading; and what was run from such a day up to another
--! METER_LAST
SELECT date FROM outing WHERE meter = ?1 AND date <= ?2 AND reading IS NOT NULL AND id <> ?3 AND trip IS NOT ?3
	ORDER BY date DESC LIMIT 1;

--! METER_SINCE
SELECT hours, reading FROM outing WHERE meter = ?1 AND date >= ?2 AND date <= ?3 AND id <> ?4 AND trip IS NOT ?4
	ORDER BY date, id;

--! OUTING_SET_HOURS
UPDATE outing SET hours = ?2 WHERE id = ?1;

--! ENGINE_HOURS
-- Seconds that the log holds of an engine, up to a day.
SELECT coalesce(sum(hours), 0), max(estimated) FROM outing WHERE boat = ?1 AND engine = ?2 AND date <= ?3;

--! ENGINE_TYPED_BESIDE
-- What was typed for a day beside the outing ?4; by a reading may be of days before, too.
SELECT coalesce(sum(hours), 0) FROM outing WHERE boat = ?1 AND engine = ?2 AND date = ?3 AND id <> ?4 AND reading IS NULL;

--! ENGINE_HOURS_ON
SELECT coalesce(sum(hours), 0) FROM outing WHERE boat = ?1 AND engine = ?2 AND date = ?3;

-- name
--! RATE_FOR
SELECT id FROM rate WHERE name = ?1;

-- boat, what, fitting
--! BOUND_FOR
SELECT id FROM bound WHERE boat = ?1 AND what = ?2 AND fitting IS ?3;

-- engine, day
--! METER_FITTED
SELECT id FROM meter WHERE engine = ?1 AND fitted = ?2;

-- services whose reading has not found its place among the day's outings yet
--! SERVICES_UNPLACED
SELECT * FROM service WHERE meter IS NOT NULL AND after IS NULL ORDER BY date, reading;

-- For export: by boat and day, as the index has them, and those of one day in any order.  SQLite would sort each day
-- by itself, which costs more than reading it
--! ALL_OUTING_BY_DAY
SELECT * FROM outing ORDER BY boat, date;

-- outing; it and the rows of other engines that belong to it, itself first
--! TRIP_ROWS
SELECT * FROM outing WHERE id = ?1 UNION ALL SELECT * FROM outing WHERE trip = ?1;
