--! SCHEMA_2
PRAGMA user_version = 2;

ALTER TABLE boat ADD COLUMN edition INTEGER;	-- of the catalogue that its tasks came from
ALTER TABLE boat ADD COLUMN units TEXT;	-- inch, metric: shown beside what was typed
ALTER TABLE fitting ADD COLUMN opens_with TEXT;	-- paths of what costs almost nothing extra once this is off or open
ALTER TABLE task ADD COLUMN state TEXT;	-- what the boat must be in beyond the workplace: key-out, cold, ...

CREATE TABLE finding (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	fitting INTEGER REFERENCES fitting (id),
	task INTEGER REFERENCES task (id),	-- at whose work it was found
	outing INTEGER REFERENCES outing (id),	-- on which it was found
	measurement INTEGER REFERENCES measurement (id),	-- that shows it
	date INTEGER NOT NULL,	-- day
	words TEXT NOT NULL,	-- what was seen, as typed
	level TEXT NOT NULL,	-- hold, mend, watch
	proposed TEXT,	-- the level that the rules gave
	raised TEXT,	-- why the rules raised it
	rule TEXT,	-- which rule of the catalogue it met
	makes_due TEXT,	-- names of the tasks that it asks for at once, separated by spaces
	until INTEGER,	-- day by which it is to be mended
	allowed TEXT,	-- what may be done with it until then: "5 h, then look again"
	who TEXT,
	mended INTEGER,	-- day; NULL: open
	service INTEGER REFERENCES service (id),	-- that mended it
	left_as TEXT,	-- as left
	remark TEXT
) STRICT;
CREATE INDEX finding_by_boat ON finding (boat, mended, date);
CREATE INDEX finding_by_fitting ON finding (fitting) WHERE fitting IS NOT NULL;
CREATE INDEX finding_by_task ON finding (task) WHERE task IS NOT NULL;
CREATE INDEX finding_by_outing ON finding (outing) WHERE outing IS NOT NULL;
CREATE INDEX finding_by_measurement ON finding (measurement) WHERE measurement IS NOT NULL;
CREATE INDEX finding_by_service ON finding (service) WHERE service IS NOT NULL;

-- What holds the launch, let pass for a while by somebody who answers for it.
CREATE TABLE waiver (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	finding INTEGER REFERENCES finding (id),	-- one of these three
	task INTEGER REFERENCES task (id),
	happening INTEGER REFERENCES happening (id),
	date INTEGER NOT NULL,	-- from
	until INTEGER NOT NULL,	-- last day
	who TEXT NOT NULL,
	reason TEXT NOT NULL,
	ended INTEGER	-- day on which it was taken back; NULL: not
) STRICT;
CREATE INDEX waiver_by_boat ON waiver (boat, until);
CREATE INDEX waiver_by_finding ON waiver (finding) WHERE finding IS NOT NULL;
CREATE INDEX waiver_by_task ON waiver (task) WHERE task IS NOT NULL;
CREATE INDEX waiver_by_happening ON waiver (happening) WHERE happening IS NOT NULL;

-- A task of a list that was passed over; it stays due.
CREATE TABLE skip (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	task INTEGER NOT NULL REFERENCES task (id),
	list TEXT,	-- commissioning, first-day, mid-season, haul-out, lay-up, sea-trial; NULL: a happening's
	date INTEGER NOT NULL,	-- day
	reason TEXT NOT NULL,
	who TEXT
) STRICT;
CREATE INDEX skip_by_boat ON skip (boat, date);
CREATE INDEX skip_by_task ON skip (task);

CREATE TABLE photo (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	finding INTEGER REFERENCES finding (id),	-- one of these two
	service INTEGER REFERENCES service (id),
	path TEXT NOT NULL,	-- of the file, as typed
	digest TEXT NOT NULL,	-- SHA-256 of its bytes when it was put on record, in hexadecimal
	date INTEGER,	-- day it was taken
	remark TEXT
) STRICT;
CREATE INDEX photo_by_boat ON photo (boat, date);
CREATE INDEX photo_by_finding ON photo (finding) WHERE finding IS NOT NULL;
CREATE INDEX photo_by_service ON photo (service) WHERE service IS NOT NULL;

-- Cautions that somebody read and took to heart before a piece of work, once a day.
CREATE TABLE heeded (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	date INTEGER NOT NULL,	-- day
	work TEXT NOT NULL,	-- a list's name, a task's, a happening
	cautions TEXT NOT NULL,	-- their words, separated by spaces
	who TEXT NOT NULL
) STRICT;
CREATE INDEX heeded_by_boat ON heeded (boat, date, work);

-- The catalogue's fittings and tasks as they were taken over: what differs from these is the owner's.
CREATE TABLE shipped (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	what TEXT NOT NULL,	-- fitting, task
	name TEXT NOT NULL,	-- path, or name
	digest TEXT NOT NULL,	-- of the row, a task's with its limits
	UNIQUE (boat, what, name)
) STRICT;

-- Figures out of the boat's own manuals, which are never shipped.
CREATE TABLE figure (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	fitting INTEGER NOT NULL REFERENCES fitting (id),
	what TEXT NOT NULL,	-- torque, oil-quantity, ...
	as_read TEXT NOT NULL,	-- as it stands there
	value REAL,	-- the same in unit
	unit TEXT,
	source TEXT NOT NULL,	-- which manual, which page
	remark TEXT
) STRICT;
CREATE INDEX figure_by_boat ON figure (boat);
CREATE INDEX figure_by_fitting ON figure (fitting);
