--! SCHEMA_5
PRAGMA user_version = 5;

-- A kind of part or consumable.
CREATE TABLE item (
	id INTEGER PRIMARY KEY,
	what TEXT NOT NULL,	-- "bellows, U-joint"
	unit TEXT,	-- L, m; NULL: pieces
	rubber INTEGER,	-- 1: it ages on the shelf
	shelf_months INTEGER,	-- months that it may lie
	lead_days INTEGER,	-- days from ordering to having
	keep REAL,	-- quantity always wanted on hand
	remark TEXT
) STRICT;

-- Numbers of an item, each as typed.
CREATE TABLE number (
	id INTEGER PRIMARY KEY,
	item INTEGER NOT NULL REFERENCES item (id),
	number TEXT NOT NULL,
	supplier TEXT,	-- whose number it is
	replaced_by INTEGER REFERENCES number (id),	-- the number that took its place
	remark TEXT
) STRICT;
CREATE INDEX number_by_item ON number (item);
CREATE INDEX number_by_replaced_by ON number (replaced_by) WHERE replaced_by IS NOT NULL;

-- So much of an item, bought together.
CREATE TABLE lot (
	id INTEGER PRIMARY KEY,
	item INTEGER NOT NULL REFERENCES item (id),
	quantity REAL NOT NULL,	-- that arrived, or was ordered
	number TEXT,	-- under which it was bought, as typed
	supplier TEXT,
	price INTEGER,	-- cents, of all of it
	currency TEXT,	-- ISO 4217
	ordered INTEGER,	-- day
	expected INTEGER,	-- day
	arrived INTEGER,	-- day; NULL: not yet
	made INTEGER,	-- day of manufacture
	place TEXT,	-- where it lies
	remark TEXT
) STRICT;
CREATE INDEX lot_by_item ON lot (item);

-- Taken out of a lot.
CREATE TABLE taken (
	id INTEGER PRIMARY KEY,
	lot INTEGER NOT NULL REFERENCES lot (id),
	date INTEGER NOT NULL,	-- day
	quantity REAL NOT NULL,	-- below zero: put back
	boat INTEGER REFERENCES boat (id),	-- for which; NULL: lost, thrown away, sent back
	job INTEGER REFERENCES job (id),
	service INTEGER REFERENCES service (id),
	remark TEXT
) STRICT;
CREATE INDEX taken_by_lot ON taken (lot, date);
CREATE INDEX taken_by_boat ON taken (boat, date) WHERE boat IS NOT NULL;
CREATE INDEX taken_by_job ON taken (job, date) WHERE job IS NOT NULL;
CREATE INDEX taken_by_service ON taken (service, date) WHERE service IS NOT NULL;

-- What a task needs of an item.
CREATE TABLE need (
	id INTEGER PRIMARY KEY,
	item INTEGER NOT NULL REFERENCES item (id),
	task INTEGER NOT NULL REFERENCES task (id),
	quantity REAL NOT NULL,
	on_condition INTEGER	-- 1: only when found bad
) STRICT;
CREATE INDEX need_by_item ON need (item);
CREATE INDEX need_by_task ON need (task);
