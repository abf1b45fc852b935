-- Whole tables.  WALK_: by key, for comparing two files row by row; the only full scans of growing tables.
-- ALL_: in the order that people expect, for export.  OF_BOAT_: the same of one boat.

--! WALK_BOAT
SELECT * FROM boat ORDER BY id;
--! WALK_ENGINE
SELECT * FROM engine ORDER BY id;
--! WALK_METER
SELECT * FROM meter ORDER BY id;
--! WALK_FITTING
SELECT * FROM fitting ORDER BY id;
--! WALK_PART
SELECT * FROM part ORDER BY id;
--! WALK_STAY
SELECT * FROM stay ORDER BY id;
--! WALK_SEASON
SELECT * FROM season ORDER BY id;
--! WALK_OUTING
SELECT * FROM outing ORDER BY id;
--! WALK_HAPPENING
SELECT * FROM happening ORDER BY id;
--! WALK_TASK
SELECT * FROM task ORDER BY id;
--! WALK_LIMIT
SELECT * FROM "limit" ORDER BY id;
--! WALK_SERVICE
SELECT * FROM service ORDER BY id;
--! WALK_MEASUREMENT
SELECT * FROM measurement ORDER BY id;
--! WALK_BOUND
SELECT * FROM bound ORDER BY id;
--! WALK_RATE
SELECT * FROM rate ORDER BY id;
--! WALK_PLACE
SELECT * FROM place ORDER BY id;
--! WALK_CLIMATE
SELECT * FROM climate ORDER BY id;
--! WALK_FINDING
SELECT * FROM finding ORDER BY id;
--! WALK_WAIVER
SELECT * FROM waiver ORDER BY id;
--! WALK_SKIP
SELECT * FROM skip ORDER BY id;
--! WALK_PHOTO
SELECT * FROM photo ORDER BY id;
--! WALK_HEEDED
SELECT * FROM heeded ORDER BY id;
--! WALK_SHIPPED
SELECT * FROM shipped ORDER BY id;
--! WALK_FIGURE
SELECT * FROM figure ORDER BY id;
--! WALK_JOB
SELECT * FROM job ORDER BY id;
--! WALK_AIM
SELECT * FROM aim ORDER BY id;
--! WALK_STEP
SELECT * FROM step ORDER BY id;
--! WALK_REMOVAL
SELECT * FROM removal ORDER BY id;

--! WALK_SHEET
SELECT * FROM sheet ORDER BY id;

--! WALK_SHEETLINE
SELECT * FROM sheetline ORDER BY id;
--! WALK_ITEM
SELECT * FROM item ORDER BY id;
--! WALK_NUMBER
SELECT * FROM number ORDER BY id;
--! WALK_LOT
SELECT * FROM lot ORDER BY id;
--! WALK_TAKEN
SELECT * FROM taken ORDER BY id;
--! WALK_NEED
SELECT * FROM need ORDER BY id;

--! ALL_BOAT
SELECT * FROM boat ORDER BY name;
--! ALL_ENGINE
SELECT * FROM engine ORDER BY boat, name;
--! ALL_METER
SELECT * FROM meter ORDER BY engine, fitted, id;
--! ALL_FITTING
SELECT * FROM fitting ORDER BY boat, path;
--! ALL_PART
SELECT * FROM part ORDER BY fitting, fitted, id;
--! ALL_STAY
SELECT * FROM stay ORDER BY boat, date, id;
--! ALL_SEASON
SELECT * FROM season ORDER BY boat, launch, id;
--! ALL_OUTING
SELECT * FROM outing ORDER BY boat, date, id;
--! ALL_HAPPENING
SELECT * FROM happening ORDER BY boat, date, id;
--! ALL_TASK
SELECT * FROM task ORDER BY boat, name;
--! ALL_LIMIT
SELECT * FROM "limit" ORDER BY task, id;
--! ALL_SERVICE
SELECT * FROM service ORDER BY task, date, id;
--! ALL_MEASUREMENT
SELECT * FROM measurement ORDER BY boat, date, id;
--! ALL_BOUND
SELECT * FROM bound ORDER BY boat, what, id;
--! ALL_RATE
SELECT * FROM rate ORDER BY name;
--! ALL_PLACE
SELECT * FROM place ORDER BY name;
--! ALL_CLIMATE
SELECT * FROM climate ORDER BY place, month;
--! ALL_FINDING
SELECT * FROM finding ORDER BY boat, date, id;
--! ALL_WAIVER
SELECT * FROM waiver ORDER BY boat, date, id;
--! ALL_SKIP
SELECT * FROM skip ORDER BY boat, date, id;
--! ALL_PHOTO
SELECT * FROM photo ORDER BY boat, date, id;
--! ALL_HEEDED
SELECT * FROM heeded ORDER BY boat, date, id;
--! ALL_SHIPPED
SELECT * FROM shipped ORDER BY boat, what, name;
--! ALL_FIGURE
SELECT * FROM figure ORDER BY boat, fitting, what, id;
--! ALL_JOB
SELECT * FROM job ORDER BY boat, opened, id;
--! ALL_AIM
SELECT * FROM aim ORDER BY job, id;
--! ALL_STEP
SELECT * FROM step ORDER BY job, no, id;
--! ALL_REMOVAL
SELECT * FROM removal ORDER BY job, no, id;

--! ALL_SHEET
SELECT * FROM sheet ORDER BY boat, date, id;

--! ALL_SHEETLINE
SELECT * FROM sheetline ORDER BY sheet, no, id;
--! ALL_ITEM
SELECT * FROM item ORDER BY what, id;
--! ALL_NUMBER
-- One that took another's place comes before that, so that an import knows it when the other is read.
WITH RECURSIVE later (id, steps) AS (
	SELECT id, 0 FROM number WHERE replaced_by IS NULL
	UNION ALL
	SELECT n.id, steps + 1 FROM later JOIN number AS n ON n.replaced_by = later.id
)
SELECT number.* FROM number LEFT JOIN later USING (id) ORDER BY coalesce(steps, 0), item, number, number.id;
--! ALL_LOT
SELECT * FROM lot ORDER BY item, arrived, id;
--! ALL_TAKEN
SELECT * FROM taken ORDER BY lot, date, id;
--! ALL_NEED
SELECT * FROM need ORDER BY task, id;

--! OF_BOAT_BOAT
SELECT * FROM boat WHERE id = ?1;
--! OF_BOAT_ENGINE
SELECT * FROM engine WHERE boat = ?1 ORDER BY name;
--! OF_BOAT_METER
SELECT meter.* FROM engine CROSS JOIN meter ON meter.engine = engine.id
WHERE engine.boat = ?1 ORDER BY engine.name, meter.fitted, meter.id;
--! OF_BOAT_FITTING
SELECT * FROM fitting WHERE boat = ?1 ORDER BY path;
--! OF_BOAT_PART
SELECT part.* FROM fitting CROSS JOIN part ON part.fitting = fitting.id
WHERE fitting.boat = ?1 ORDER BY fitting.path, part.fitted, part.id;
--! OF_BOAT_STAY
SELECT * FROM stay WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_SEASON
SELECT * FROM season WHERE boat = ?1 ORDER BY launch, id;
--! OF_BOAT_OUTING
SELECT * FROM outing WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_HAPPENING
SELECT * FROM happening WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_TASK
SELECT * FROM task WHERE boat = ?1 ORDER BY name;
--! OF_BOAT_LIMIT
SELECT "limit".* FROM task CROSS JOIN "limit" ON "limit".task = task.id
WHERE task.boat = ?1 ORDER BY task.name, "limit".id;
--! OF_BOAT_SERVICE
SELECT service.* FROM task CROSS JOIN service ON service.task = task.id
WHERE task.boat = ?1 ORDER BY task.name, service.date, service.id;
--! OF_BOAT_MEASUREMENT
SELECT * FROM measurement WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_BOUND
SELECT * FROM bound WHERE boat = ?1 ORDER BY what, id;
--! OF_BOAT_FINDING
SELECT * FROM finding WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_WAIVER
SELECT * FROM waiver WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_SKIP
SELECT * FROM skip WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_PHOTO
SELECT * FROM photo WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_HEEDED
SELECT * FROM heeded WHERE boat = ?1 ORDER BY date, id;
--! OF_BOAT_SHIPPED
SELECT * FROM shipped WHERE boat = ?1 ORDER BY what, name;
--! OF_BOAT_FIGURE
SELECT * FROM figure WHERE boat = ?1 ORDER BY fitting, what, id;
--! OF_BOAT_JOB
SELECT * FROM job WHERE boat = ?1 ORDER BY opened, id;
--! OF_BOAT_AIM
SELECT aim.* FROM job CROSS JOIN aim ON aim.job = job.id WHERE job.boat = ?1 ORDER BY job.opened, job.id, aim.id;
--! OF_BOAT_STEP
SELECT step.* FROM job CROSS JOIN step ON step.job = job.id WHERE job.boat = ?1 ORDER BY job.opened, job.id, step.no, step.id;
--! OF_BOAT_REMOVAL
SELECT removal.* FROM job CROSS JOIN removal ON removal.job = job.id WHERE job.boat = ?1 ORDER BY job.opened, job.id, removal.no, removal.id;

--! OF_BOAT_SHEET
SELECT * FROM sheet WHERE boat = ?1 ORDER BY date, id;

--! OF_BOAT_SHEETLINE
SELECT sheetline.* FROM sheet CROSS JOIN sheetline ON sheetline.sheet = sheet.id WHERE sheet.boat = ?1 ORDER BY sheet.date, sheet.id, sheetline.no, sheetline.id;
--! OF_BOAT_NEED
SELECT need.* FROM task CROSS JOIN need ON need.task = task.id WHERE task.boat = ?1 ORDER BY task.name, need.id;
