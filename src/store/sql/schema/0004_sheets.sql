--! SCHEMA_4
PRAGMA user_version = 4;

-- A sheet handed to a yard.
CREATE TABLE sheet (
	id INTEGER PRIMARY KEY,
	boat INTEGER NOT NULL REFERENCES boat (id),
	date INTEGER NOT NULL,	-- day
	remark TEXT
) STRICT;
CREATE INDEX sheet_by_boat ON sheet (boat, date);

-- A line of a sheet, and what came back.
CREATE TABLE sheetline (
	id INTEGER PRIMARY KEY,
	sheet INTEGER NOT NULL REFERENCES sheet (id),
	no INTEGER NOT NULL,	-- as printed
	task INTEGER REFERENCES task (id),	-- one of these two
	finding INTEGER REFERENCES finding (id),
	whose TEXT NOT NULL,	-- owner, yard: who does it
	answer TEXT,	-- SHA-256 of what the yard filled in, when it was read
	answered INTEGER,	-- day
	service INTEGER REFERENCES service (id)	-- that came of it
) STRICT;
CREATE INDEX sheetline_by_sheet ON sheetline (sheet, no);
CREATE INDEX sheetline_by_task ON sheetline (task) WHERE task IS NOT NULL;
CREATE INDEX sheetline_by_finding ON sheetline (finding) WHERE finding IS NOT NULL;
CREATE INDEX sheetline_by_service ON sheetline (service) WHERE service IS NOT NULL;
