--! SCHEMA_3
PRAGMA user_version = 3;

-- Work done in one go, from opening to closing; paused, it waits for another winter.
CREATE TABLE job (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	name TEXT NOT NULL,	-- short, unique in the boat: drive-off-2026
	title TEXT NOT NULL,	-- for people
	template TEXT,	-- of the catalogue, that its steps came from
	opened INTEGER NOT NULL,	-- day
	paused INTEGER,	-- day since which it rests; NULL: it does not
	closed INTEGER,	-- day; NULL: open
	place TEXT,	-- where things lie: the trays, the drive
	who TEXT,
	remark TEXT,
	UNIQUE (boat, name)
) STRICT;

-- What a job is for: a task or a finding.
CREATE TABLE aim (
	id INTEGER PRIMARY KEY,
	job INTEGER NOT NULL REFERENCES job (id),
	task INTEGER REFERENCES task (id),	-- one of these two
	finding INTEGER REFERENCES finding (id),
	service INTEGER REFERENCES service (id),	-- that came of it
	undone INTEGER,	-- day on which it was left undone
	reason TEXT	-- why
) STRICT;
CREATE INDEX aim_by_job ON aim (job);
CREATE INDEX aim_by_task ON aim (task) WHERE task IS NOT NULL;
CREATE INDEX aim_by_finding ON aim (finding) WHERE finding IS NOT NULL;
CREATE INDEX aim_by_service ON aim (service) WHERE service IS NOT NULL;

-- A line of a job: a tool or part to carry, a step, a proof.
CREATE TABLE step (
	id INTEGER PRIMARY KEY,
	job INTEGER NOT NULL REFERENCES job (id),
	no INTEGER NOT NULL,	-- order in the job
	kind TEXT NOT NULL,	-- tool, part, consumable, state, step, proof
	text TEXT NOT NULL,
	done INTEGER,	-- day; NULL: open
	seen TEXT,	-- what was seen; while it is open, why it is left undone
	who TEXT,
	task INTEGER REFERENCES task (id),	-- that it does, or proves
	on_condition INTEGER	-- 1: only when found bad
) STRICT;
CREATE INDEX step_by_job ON step (job, no);
CREATE INDEX step_by_task ON step (task) WHERE task IS NOT NULL;

-- The strip-down list: what came off, or how something stood, and how it went back.
CREATE TABLE removal (
	id INTEGER PRIMARY KEY,
	job INTEGER NOT NULL REFERENCES job (id),
	no INTEGER NOT NULL,	-- order in which it came off
	kind TEXT NOT NULL,	-- part, fastener, retainer, plug, setting
	what TEXT NOT NULL,	-- 6 bolts is count and what
	count INTEGER,	-- how many came off; NULL: it is no thing to count
	size TEXT,	-- of tool or fastener, as typed: 5/8 in
	as_found TEXT,	-- figure or position: 3/8 in proud, 4 o'clock
	orientation TEXT,	-- which way round
	tray TEXT,	-- tray or bag
	state TEXT NOT NULL,	-- reuse, renew, missing, extra
	fitting INTEGER REFERENCES fitting (id),	-- whose it is
	off INTEGER NOT NULL,	-- day
	back INTEGER,	-- day it went back; NULL: not yet
	back_count INTEGER,	-- how many went back
	as_left TEXT,	-- figure or position
	why TEXT,	-- why it differs from what was found
	who TEXT,
	remark TEXT
) STRICT;
CREATE INDEX removal_by_job ON removal (job, no);
CREATE INDEX removal_by_fitting ON removal (fitting) WHERE fitting IS NOT NULL;

ALTER TABLE photo ADD COLUMN removal INTEGER REFERENCES removal (id);	-- of the strip-down list
CREATE INDEX photo_by_removal ON photo (removal) WHERE removal IS NOT NULL;
ALTER TABLE boat ADD COLUMN delivered INTEGER;	-- day on which all of it was new; NULL: bought used, or not known
