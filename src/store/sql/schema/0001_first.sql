--! SCHEMA_1
PRAGMA application_id = 0x53706c74;	-- "Splt"
PRAGMA user_version = 1;

-- Dates are days since 1970-01-01, running times are seconds, money is cents, 63-bit keys are random.
-- NULL is "not recorded", which is neither zero nor never.  Enums are the words of src/model/words.c.

CREATE TABLE boat (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE,
	kind TEXT NOT NULL,	-- petrol-sterndrive, diesel-sterndrive, inboard, outboard, jet, sail
	berth TEXT NOT NULL,	-- where it lies in season: afloat, trailer, ashore, roof
	winter TEXT NOT NULL,	-- where it lies out of season
	water TEXT NOT NULL,	-- usual: fresh, brackish, salt
	launch INTEGER NOT NULL,	-- usual day of the year, month * 100 + day
	haul_out INTEGER NOT NULL,	-- usual day of the year, month * 100 + day
	place TEXT,	-- where it usually lies: a place's name
	since INTEGER,	-- first day this log knows of
	built INTEGER,	-- year
	catalogue TEXT,	-- that its tasks came from: its folder's name
	remark TEXT
) STRICT;

CREATE TABLE engine (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	name TEXT NOT NULL,	-- main, port, starboard, generator
	hours INTEGER,	-- seconds run before the log began
	estimated INTEGER,	-- 1: that figure is a guess
	remark TEXT,
	UNIQUE (boat, name)
) STRICT;

CREATE TABLE meter (
	id INTEGER PRIMARY KEY,
	engine INTEGER NOT NULL REFERENCES engine (id),
	fitted INTEGER NOT NULL,	-- day from which it counts
	start INTEGER NOT NULL,	-- its reading on that day, seconds
	engine_hours INTEGER,	-- the engine's seconds at that moment
	how TEXT NOT NULL,	-- first, replaced, reset, estimated
	remark TEXT
) STRICT;
CREATE INDEX meter_by_engine ON meter (engine, fitted);

CREATE TABLE fitting (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	path TEXT NOT NULL,	-- drive/transom/gimbal-bearing
	title TEXT NOT NULL,	-- for people
	engine INTEGER REFERENCES engine (id),	-- whose hours count for it
	variant TEXT,	-- the design that this boat has
	variants TEXT,	-- the designs there are, separated by spaces
	below_waterline INTEGER,	-- 1: its failure lets water in
	fuel INTEGER,	-- 1: its failure can burn
	rubber INTEGER,	-- 1: it ages on the shelf
	needs_off TEXT,	-- path of what must come off or be open first
	off_minutes INTEGER,	-- to take it off, or open it, and put it back
	retired INTEGER,	-- 1: this boat has none
	remark TEXT,
	UNIQUE (boat, path)
) STRICT;
CREATE INDEX fitting_by_engine ON fitting (engine) WHERE engine IS NOT NULL;

CREATE TABLE part (
	id INTEGER PRIMARY KEY,
	fitting INTEGER NOT NULL REFERENCES fitting (id),
	what TEXT NOT NULL,
	number TEXT,	-- as typed
	fitted INTEGER,	-- day
	removed INTEGER,	-- day
	made INTEGER,	-- day of manufacture
	remark TEXT
) STRICT;
CREATE INDEX part_by_fitting ON part (fitting, fitted);

CREATE TABLE stay (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	date INTEGER NOT NULL,	-- first day
	until INTEGER,	-- day it ended, not counted
	stand TEXT NOT NULL,	-- afloat, trailer, ashore, roof
	water TEXT,	-- fresh, brackish, salt
	place TEXT,
	remark TEXT
) STRICT;
CREATE INDEX stay_by_boat ON stay (boat, date);
CREATE INDEX stay_by_place ON stay (place) WHERE place IS NOT NULL;

CREATE TABLE season (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	launch INTEGER NOT NULL,	-- day
	haul_out INTEGER,	-- day
	planned INTEGER,	-- 1: dates intended
	remark TEXT
) STRICT;
CREATE INDEX season_by_boat ON season (boat, launch, haul_out);

CREATE TABLE outing (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	date INTEGER NOT NULL,	-- day
	engine INTEGER REFERENCES engine (id),	-- NULL: none ran
	hours INTEGER NOT NULL CHECK (hours >= 0),	-- seconds run
	water TEXT,	-- fresh, brackish, salt; NULL: as usual
	rinsed INTEGER,	-- 1 yes, 0 no
	trip INTEGER REFERENCES outing (id),	-- the outing that this engine's row belongs to
	meter INTEGER REFERENCES meter (id),	-- whose reading it is
	reading INTEGER,	-- what the meter showed afterwards, seconds
	estimated INTEGER,	-- 1: a guess, or hours found unlogged
	place TEXT,
	remark TEXT
) STRICT;
-- Everything that the due list asks of an outing.
CREATE INDEX outing_by_boat ON outing (boat, date, engine, hours, water, rinsed, trip, estimated);
CREATE INDEX outing_by_trip ON outing (trip) WHERE trip IS NOT NULL;
-- Readings anchor an engine's total; few logs have one in every row.
CREATE INDEX outing_by_meter ON outing (meter, date, reading) WHERE meter IS NOT NULL;

CREATE TABLE happening (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	date INTEGER NOT NULL,	-- day
	kind TEXT NOT NULL,	-- grounding, swamping, ...
	closed INTEGER,	-- day on which all that it asked for was done
	remark TEXT
) STRICT;
CREATE INDEX happening_by_boat ON happening (boat, date);

CREATE TABLE task (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	name TEXT NOT NULL,	-- gimbal-bearing.grease
	fitting INTEGER NOT NULL REFERENCES fitting (id),
	title TEXT NOT NULL,	-- for people
	verb TEXT NOT NULL,	-- inspect, test, measure, grease, change, renew, tighten
	place TEXT NOT NULL,	-- anywhere, out, on-hose, afloat, shop
	mechanism TEXT NOT NULL,	-- what wears it
	consequence TEXT NOT NULL,	-- what a failure costs
	rule TEXT NOT NULL,	-- what restarts its clock
	minutes INTEGER,	-- hands on
	variants TEXT,	-- designs that it exists for
	part TEXT,	-- what to have at hand
	proof TEXT,	-- what proves it
	caution TEXT,	-- cautions it needs
	retired INTEGER,	-- 1: not wanted on this boat
	remark TEXT,
	UNIQUE (boat, name)
) STRICT;
CREATE INDEX task_by_boat ON task (boat);
CREATE INDEX task_by_fitting ON task (fitting);

CREATE TABLE "limit" (
	id INTEGER PRIMARY KEY,
	task INTEGER NOT NULL REFERENCES task (id),
	kind TEXT NOT NULL,	-- hours, months, outings, seasons, event, happening, first-hours, condition
	amount INTEGER,	-- months, outings or seasons
	hours INTEGER,	-- seconds
	salt INTEGER,	-- the same in salt water, where the source prints two: months, outings or seasons
	salt_hours INTEGER,	-- seconds
	event TEXT,	-- launch, first-day, mid-season, haul-out, lay-up
	happening TEXT,	-- grounding, swamping, ...
	measured TEXT,	-- condition: the measured value that asks for the task, anode-left, ...
	standing TEXT NOT NULL,	-- manual, published, practice, memory, owner
	source TEXT NOT NULL	-- where the figure comes from
) STRICT;
-- All of it, in the order of entry: the due list asks for every limit of a boat.
CREATE INDEX limit_by_task ON "limit" (task, id, kind, amount, hours, salt, salt_hours, event, happening, standing, source,
	measured);

CREATE TABLE service (
	id INTEGER PRIMARY KEY,
	task INTEGER NOT NULL REFERENCES task (id),
	date INTEGER NOT NULL,	-- day; or the last that it can have been
	earliest INTEGER,	-- the first day that it can have been; NULL: it was that day
	hours_least INTEGER,	-- seconds the engine had run then, at least and at most, where the day is not known
	hours_most INTEGER,
	outcome TEXT NOT NULL,	-- done, good, bad, renewed, topped-up, not-seen, claimed
	meter INTEGER REFERENCES meter (id),	-- whose reading it is
	reading INTEGER,	-- what the meter showed, seconds
	after INTEGER,	-- seconds run later that same day
	made INTEGER,	-- date printed on what went in
	estimated INTEGER,	-- 1: from memory
	seen TEXT,	-- what was seen
	proof TEXT,	-- what proves it
	who TEXT,
	cost INTEGER,	-- cents
	currency TEXT,	-- ISO 4217
	remark TEXT
) STRICT;
-- Everything that the due list asks of a service.
CREATE INDEX service_by_task ON service (task, date, outcome, after, made, estimated, earliest, hours_least, hours_most);
CREATE INDEX service_by_meter ON service (meter) WHERE meter IS NOT NULL;

CREATE TABLE measurement (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	fitting INTEGER REFERENCES fitting (id),
	date INTEGER NOT NULL,	-- day
	what TEXT NOT NULL,	-- anode-left, bearing-roughness, ...
	as_read TEXT NOT NULL,	-- as it was read
	value REAL,	-- the same in unit
	unit TEXT,
	water TEXT,	-- that it was read in: fresh, brackish, salt
	psu REAL,	-- its salinity
	method TEXT,
	remark TEXT
) STRICT;
CREATE INDEX measurement_by_boat ON measurement (boat, date);
CREATE INDEX measurement_by_fitting ON measurement (fitting) WHERE fitting IS NOT NULL;

-- Limits of measured values out of the boat's own manuals; they take the place of the program's.
CREATE TABLE bound (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	fitting INTEGER REFERENCES fitting (id),	-- NULL: wherever it is measured
	what TEXT NOT NULL,	-- anode-left, ...
	watch_below REAL,	-- all in the unit of that value; NULL: as without this row
	watch_above REAL,
	stop_below REAL,
	stop_above REAL,
	standing TEXT NOT NULL,
	source TEXT NOT NULL
) STRICT;
CREATE INDEX bound_by_boat ON bound (boat, what);
CREATE INDEX bound_by_fitting ON bound (fitting) WHERE fitting IS NOT NULL;

CREATE TABLE rate (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE,	-- corrosion.salt: a constant of the wear of fittings
	value REAL NOT NULL,
	unit TEXT,
	standing TEXT NOT NULL,
	source TEXT NOT NULL
) STRICT;

CREATE TABLE place (
	id INTEGER PRIMARY KEY,
	name TEXT NOT NULL UNIQUE,	-- as stays and boats name it
	water TEXT,	-- fresh, brackish, salt; agrees with the salinity
	salinity REAL,	-- PSU
	as_read TEXT,	-- the salinity as it was read
	air TEXT,	-- corrosivity, ISO 9223: c1, c2, c3, c4, c5, cx
	remark TEXT
) STRICT;

CREATE TABLE climate (
	id INTEGER PRIMARY KEY,
	place INTEGER NOT NULL REFERENCES place (id),
	month INTEGER NOT NULL,	-- 1 to 12
	water REAL,	-- mean, C
	air REAL,	-- mean, C
	UNIQUE (place, month)
) STRICT;

-- The journal: one row for each command that changed anything.  It is not part of what a changeset records.
-- The changeset stands last, so that a large one can be written piece by piece.
CREATE TABLE entry (
	seq INTEGER PRIMARY KEY,	-- 1, 2, 3, ...
	at INTEGER NOT NULL,	-- UTC seconds since 1970
	who TEXT NOT NULL,
	device TEXT NOT NULL,
	what TEXT NOT NULL,	-- in words
	schema INTEGER NOT NULL,	-- user_version when it was written
	undoes INTEGER REFERENCES entry (seq),	-- the entry whose inverse this is
	redoes INTEGER REFERENCES entry (seq),	-- the undoing entry whose inverse this is
	previous BLOB NOT NULL,	-- hash of the entry before; 32 zero bytes at the first
	hash BLOB NOT NULL,	-- SHA-256 over all other columns; src/store/entry.h gives the bytes
	changeset BLOB NOT NULL	-- SQLite's changeset format
) STRICT;
