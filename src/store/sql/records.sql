-- One record at a time: a plain insert for imports, insert or update by key, read, delete.

--! ADD_BOAT
INSERT INTO boat VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16);

--! PUT_BOAT
INSERT INTO boat VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16)
ON CONFLICT (id) DO UPDATE SET
	name = excluded.name, kind = excluded.kind, berth = excluded.berth,
	winter = excluded.winter, water = excluded.water, launch = excluded.launch,
	haul_out = excluded.haul_out, place = excluded.place, since = excluded.since, built = excluded.built,
	catalogue = excluded.catalogue, remark = excluded.remark, edition = excluded.edition, units = excluded.units, delivered = excluded.delivered;

--! GET_BOAT
SELECT * FROM boat WHERE id = ?1;

--! DROP_BOAT
DELETE FROM boat WHERE id = ?1;

--! ADD_ENGINE
INSERT INTO engine VALUES (?1, ?2, ?3, ?4, ?5, ?6);

--! PUT_ENGINE
INSERT INTO engine VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, name = excluded.name, hours = excluded.hours,
	estimated = excluded.estimated, remark = excluded.remark;

--! GET_ENGINE
SELECT * FROM engine WHERE id = ?1;

--! DROP_ENGINE
DELETE FROM engine WHERE id = ?1;

--! ADD_METER
INSERT INTO meter VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);

--! PUT_METER
INSERT INTO meter VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
ON CONFLICT (id) DO UPDATE SET
	engine = excluded.engine, fitted = excluded.fitted, start = excluded.start,
	engine_hours = excluded.engine_hours, how = excluded.how, remark = excluded.remark;

--! GET_METER
SELECT * FROM meter WHERE id = ?1;

--! DROP_METER
DELETE FROM meter WHERE id = ?1;

--! ADD_FITTING
INSERT INTO fitting VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15);

--! PUT_FITTING
INSERT INTO fitting VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, path = excluded.path, title = excluded.title,
	engine = excluded.engine, variant = excluded.variant, variants = excluded.variants,
	below_waterline = excluded.below_waterline, fuel = excluded.fuel, rubber = excluded.rubber,
	needs_off = excluded.needs_off, off_minutes = excluded.off_minutes, retired = excluded.retired,
	remark = excluded.remark, opens_with = excluded.opens_with;

--! GET_FITTING
SELECT * FROM fitting WHERE id = ?1;

--! DROP_FITTING
DELETE FROM fitting WHERE id = ?1;

--! ADD_PART
INSERT INTO part VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8);

--! PUT_PART
INSERT INTO part VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
ON CONFLICT (id) DO UPDATE SET
	fitting = excluded.fitting, what = excluded.what, number = excluded.number,
	fitted = excluded.fitted, removed = excluded.removed, made = excluded.made,
	remark = excluded.remark;

--! GET_PART
SELECT * FROM part WHERE id = ?1;

--! DROP_PART
DELETE FROM part WHERE id = ?1;

--! ADD_STAY
INSERT INTO stay VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8);

--! PUT_STAY
INSERT INTO stay VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, date = excluded.date, until = excluded.until, stand = excluded.stand,
	water = excluded.water, place = excluded.place, remark = excluded.remark;

--! GET_STAY
SELECT * FROM stay WHERE id = ?1;

--! DROP_STAY
DELETE FROM stay WHERE id = ?1;

--! ADD_SEASON
INSERT INTO season VALUES (?1, ?2, ?3, ?4, ?5, ?6);

--! PUT_SEASON
INSERT INTO season VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, launch = excluded.launch, haul_out = excluded.haul_out,
	planned = excluded.planned, remark = excluded.remark;

--! GET_SEASON
SELECT * FROM season WHERE id = ?1;

--! DROP_SEASON
DELETE FROM season WHERE id = ?1;

--! ADD_OUTING
INSERT INTO outing VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13);

--! PUT_OUTING
INSERT INTO outing VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, date = excluded.date, engine = excluded.engine,
	hours = excluded.hours, water = excluded.water, rinsed = excluded.rinsed,
	trip = excluded.trip, meter = excluded.meter, reading = excluded.reading,
	estimated = excluded.estimated, place = excluded.place, remark = excluded.remark;

--! GET_OUTING
SELECT * FROM outing WHERE id = ?1;

--! DROP_OUTING
DELETE FROM outing WHERE id = ?1;

--! ADD_HAPPENING
INSERT INTO happening VALUES (?1, ?2, ?3, ?4, ?5, ?6);

--! PUT_HAPPENING
INSERT INTO happening VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, date = excluded.date, kind = excluded.kind, closed = excluded.closed,
	remark = excluded.remark;

--! GET_HAPPENING
SELECT * FROM happening WHERE id = ?1;

--! DROP_HAPPENING
DELETE FROM happening WHERE id = ?1;

--! ADD_TASK
INSERT INTO task VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18);

--! PUT_TASK
INSERT INTO task VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, name = excluded.name, fitting = excluded.fitting,
	title = excluded.title, verb = excluded.verb, place = excluded.place,
	mechanism = excluded.mechanism, consequence = excluded.consequence, rule = excluded.rule,
	minutes = excluded.minutes, variants = excluded.variants, part = excluded.part,
	proof = excluded.proof, caution = excluded.caution, retired = excluded.retired,
	remark = excluded.remark, state = excluded.state;

--! GET_TASK
SELECT * FROM task WHERE id = ?1;

--! DROP_TASK
DELETE FROM task WHERE id = ?1;

--! ADD_LIMIT
INSERT INTO "limit" VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12);

--! PUT_LIMIT
INSERT INTO "limit" VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)
ON CONFLICT (id) DO UPDATE SET
	task = excluded.task, kind = excluded.kind, amount = excluded.amount,
	hours = excluded.hours, salt = excluded.salt, salt_hours = excluded.salt_hours,
	event = excluded.event, happening = excluded.happening, measured = excluded.measured, standing = excluded.standing, source = excluded.source;

--! GET_LIMIT
SELECT * FROM "limit" WHERE id = ?1;

--! DROP_LIMIT
DELETE FROM "limit" WHERE id = ?1;

--! ADD_SERVICE
INSERT INTO service VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18);

--! PUT_SERVICE
INSERT INTO service VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)
ON CONFLICT (id) DO UPDATE SET
	task = excluded.task, date = excluded.date, earliest = excluded.earliest,
	hours_least = excluded.hours_least, hours_most = excluded.hours_most, outcome = excluded.outcome,
	meter = excluded.meter, reading = excluded.reading, after = excluded.after,
	made = excluded.made, estimated = excluded.estimated, seen = excluded.seen,
	proof = excluded.proof, who = excluded.who, cost = excluded.cost,
	currency = excluded.currency, remark = excluded.remark;

--! GET_SERVICE
SELECT * FROM service WHERE id = ?1;

--! DROP_SERVICE
DELETE FROM service WHERE id = ?1;

--! ADD_MEASUREMENT
INSERT INTO measurement VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12);

--! PUT_MEASUREMENT
INSERT INTO measurement VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, fitting = excluded.fitting, date = excluded.date,
	what = excluded.what, as_read = excluded.as_read, value = excluded.value,
	unit = excluded.unit, water = excluded.water, psu = excluded.psu, method = excluded.method,
	remark = excluded.remark;

--! GET_MEASUREMENT
SELECT * FROM measurement WHERE id = ?1;

--! DROP_MEASUREMENT
DELETE FROM measurement WHERE id = ?1;

--! ADD_BOUND
INSERT INTO bound VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10);

--! PUT_BOUND
INSERT INTO bound VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, fitting = excluded.fitting, what = excluded.what,
	watch_below = excluded.watch_below, watch_above = excluded.watch_above,
	stop_below = excluded.stop_below, stop_above = excluded.stop_above,
	standing = excluded.standing, source = excluded.source;

--! GET_BOUND
SELECT * FROM bound WHERE id = ?1;

--! DROP_BOUND
DELETE FROM bound WHERE id = ?1;

--! ADD_RATE
INSERT INTO rate VALUES (?1, ?2, ?3, ?4, ?5, ?6);

--! PUT_RATE
INSERT INTO rate VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (id) DO UPDATE SET
	name = excluded.name, value = excluded.value, unit = excluded.unit,
	standing = excluded.standing, source = excluded.source;

--! GET_RATE
SELECT * FROM rate WHERE id = ?1;

--! DROP_RATE
DELETE FROM rate WHERE id = ?1;

--! ADD_PLACE
INSERT INTO place VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);

--! PUT_PLACE
INSERT INTO place VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
ON CONFLICT (id) DO UPDATE SET
	name = excluded.name, water = excluded.water, salinity = excluded.salinity,
	as_read = excluded.as_read, air = excluded.air, remark = excluded.remark;

--! GET_PLACE
SELECT * FROM place WHERE id = ?1;

--! DROP_PLACE
DELETE FROM place WHERE id = ?1;

--! ADD_CLIMATE
INSERT INTO climate VALUES (?1, ?2, ?3, ?4, ?5);

--! PUT_CLIMATE
INSERT INTO climate VALUES (?1, ?2, ?3, ?4, ?5)
ON CONFLICT (id) DO UPDATE SET
	place = excluded.place, month = excluded.month, water = excluded.water, air = excluded.air;

--! GET_CLIMATE
SELECT * FROM climate WHERE id = ?1;

--! DROP_CLIMATE
DELETE FROM climate WHERE id = ?1;

--! ADD_FINDING
INSERT INTO finding VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20);

--! PUT_FINDING
INSERT INTO finding VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, fitting = excluded.fitting, task = excluded.task, outing = excluded.outing,
	measurement = excluded.measurement, date = excluded.date, words = excluded.words,
	level = excluded.level, proposed = excluded.proposed, raised = excluded.raised,
	rule = excluded.rule, makes_due = excluded.makes_due, until = excluded.until,
	allowed = excluded.allowed, who = excluded.who, mended = excluded.mended,
	service = excluded.service, left_as = excluded.left_as, remark = excluded.remark;

--! GET_FINDING
SELECT * FROM finding WHERE id = ?1;

--! DROP_FINDING
DELETE FROM finding WHERE id = ?1;

--! ADD_WAIVER
INSERT INTO waiver VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10);

--! PUT_WAIVER
INSERT INTO waiver VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, finding = excluded.finding, task = excluded.task,
	happening = excluded.happening, date = excluded.date, until = excluded.until, who = excluded.who,
	reason = excluded.reason, ended = excluded.ended;

--! GET_WAIVER
SELECT * FROM waiver WHERE id = ?1;

--! DROP_WAIVER
DELETE FROM waiver WHERE id = ?1;

--! ADD_SKIP
INSERT INTO skip VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);

--! PUT_SKIP
INSERT INTO skip VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, task = excluded.task, list = excluded.list, date = excluded.date,
	reason = excluded.reason, who = excluded.who;

--! GET_SKIP
SELECT * FROM skip WHERE id = ?1;

--! DROP_SKIP
DELETE FROM skip WHERE id = ?1;

--! ADD_PHOTO
INSERT INTO photo VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9);

--! PUT_PHOTO
INSERT INTO photo VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, finding = excluded.finding, service = excluded.service, path = excluded.path,
	digest = excluded.digest, date = excluded.date, remark = excluded.remark, removal = excluded.removal;

--! GET_PHOTO
SELECT * FROM photo WHERE id = ?1;

--! DROP_PHOTO
DELETE FROM photo WHERE id = ?1;

--! ADD_HEEDED
INSERT INTO heeded VALUES (?1, ?2, ?3, ?4, ?5, ?6);

--! PUT_HEEDED
INSERT INTO heeded VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, date = excluded.date, work = excluded.work, cautions = excluded.cautions,
	who = excluded.who;

--! GET_HEEDED
SELECT * FROM heeded WHERE id = ?1;

--! DROP_HEEDED
DELETE FROM heeded WHERE id = ?1;

--! ADD_SHIPPED
INSERT INTO shipped VALUES (?1, ?2, ?3, ?4, ?5);

--! PUT_SHIPPED
INSERT INTO shipped VALUES (?1, ?2, ?3, ?4, ?5)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, what = excluded.what, name = excluded.name, digest = excluded.digest;

--! GET_SHIPPED
SELECT * FROM shipped WHERE id = ?1;

--! DROP_SHIPPED
DELETE FROM shipped WHERE id = ?1;

--! ADD_FIGURE
INSERT INTO figure VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9);

--! PUT_FIGURE
INSERT INTO figure VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, fitting = excluded.fitting, what = excluded.what, as_read = excluded.as_read,
	value = excluded.value, unit = excluded.unit, source = excluded.source, remark = excluded.remark;

--! GET_FIGURE
SELECT * FROM figure WHERE id = ?1;

--! DROP_FIGURE
DELETE FROM figure WHERE id = ?1;

--! ADD_JOB
INSERT INTO job VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11);

--! PUT_JOB
INSERT INTO job VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, name = excluded.name, title = excluded.title, template = excluded.template,
	opened = excluded.opened, paused = excluded.paused, closed = excluded.closed,
	place = excluded.place, who = excluded.who, remark = excluded.remark;

--! GET_JOB
SELECT * FROM job WHERE id = ?1;

--! DROP_JOB
DELETE FROM job WHERE id = ?1;

--! ADD_AIM
INSERT INTO aim VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);

--! PUT_AIM
INSERT INTO aim VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
ON CONFLICT (id) DO UPDATE SET
	job = excluded.job, task = excluded.task, finding = excluded.finding, service = excluded.service,
	undone = excluded.undone, reason = excluded.reason;

--! GET_AIM
SELECT * FROM aim WHERE id = ?1;

--! DROP_AIM
DELETE FROM aim WHERE id = ?1;

--! ADD_STEP
INSERT INTO step VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10);

--! PUT_STEP
INSERT INTO step VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)
ON CONFLICT (id) DO UPDATE SET
	job = excluded.job, no = excluded.no, kind = excluded.kind, text = excluded.text,
	done = excluded.done, seen = excluded.seen, who = excluded.who, task = excluded.task,
	on_condition = excluded.on_condition;

--! GET_STEP
SELECT * FROM step WHERE id = ?1;

--! DROP_STEP
DELETE FROM step WHERE id = ?1;

--! ADD_REMOVAL
INSERT INTO removal VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19);

--! PUT_REMOVAL
INSERT INTO removal VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19)
ON CONFLICT (id) DO UPDATE SET
	job = excluded.job, no = excluded.no, kind = excluded.kind, what = excluded.what,
	count = excluded.count, size = excluded.size, as_found = excluded.as_found,
	orientation = excluded.orientation, tray = excluded.tray, state = excluded.state,
	fitting = excluded.fitting, off = excluded.off, back = excluded.back,
	back_count = excluded.back_count, as_left = excluded.as_left, why = excluded.why,
	who = excluded.who, remark = excluded.remark;

--! GET_REMOVAL
SELECT * FROM removal WHERE id = ?1;

--! DROP_REMOVAL
DELETE FROM removal WHERE id = ?1;

--! ADD_SHEET
INSERT INTO sheet VALUES (?1, ?2, ?3, ?4);

--! PUT_SHEET
INSERT INTO sheet VALUES (?1, ?2, ?3, ?4)
ON CONFLICT (id) DO UPDATE SET
	boat = excluded.boat, date = excluded.date, remark = excluded.remark;

--! GET_SHEET
SELECT * FROM sheet WHERE id = ?1;

--! DROP_SHEET
DELETE FROM sheet WHERE id = ?1;

--! ADD_SHEETLINE
INSERT INTO sheetline VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9);

--! PUT_SHEETLINE
INSERT INTO sheetline VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)
ON CONFLICT (id) DO UPDATE SET
	sheet = excluded.sheet, no = excluded.no, task = excluded.task, finding = excluded.finding,
	whose = excluded.whose, answer = excluded.answer, answered = excluded.answered,
	service = excluded.service;

--! GET_SHEETLINE
SELECT * FROM sheetline WHERE id = ?1;

--! DROP_SHEETLINE
DELETE FROM sheetline WHERE id = ?1;

--! ADD_ITEM
INSERT INTO item VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8);

--! PUT_ITEM
INSERT INTO item VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
ON CONFLICT (id) DO UPDATE SET
	what = excluded.what, unit = excluded.unit, rubber = excluded.rubber,
	shelf_months = excluded.shelf_months, lead_days = excluded.lead_days, keep = excluded.keep,
	remark = excluded.remark;

--! GET_ITEM
SELECT * FROM item WHERE id = ?1;

--! DROP_ITEM
DELETE FROM item WHERE id = ?1;

--! ADD_NUMBER
INSERT INTO number VALUES (?1, ?2, ?3, ?4, ?5, ?6);

--! PUT_NUMBER
INSERT INTO number VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT (id) DO UPDATE SET
	item = excluded.item, number = excluded.number, supplier = excluded.supplier,
	replaced_by = excluded.replaced_by, remark = excluded.remark;

--! GET_NUMBER
SELECT * FROM number WHERE id = ?1;

--! DROP_NUMBER
DELETE FROM number WHERE id = ?1;

--! ADD_LOT
INSERT INTO lot VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13);

--! PUT_LOT
INSERT INTO lot VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)
ON CONFLICT (id) DO UPDATE SET
	item = excluded.item, quantity = excluded.quantity, number = excluded.number,
	supplier = excluded.supplier, price = excluded.price, currency = excluded.currency,
	ordered = excluded.ordered, expected = excluded.expected, arrived = excluded.arrived,
	made = excluded.made, place = excluded.place, remark = excluded.remark;

--! GET_LOT
SELECT * FROM lot WHERE id = ?1;

--! DROP_LOT
DELETE FROM lot WHERE id = ?1;

--! ADD_TAKEN
INSERT INTO taken VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8);

--! PUT_TAKEN
INSERT INTO taken VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
ON CONFLICT (id) DO UPDATE SET
	lot = excluded.lot, date = excluded.date, quantity = excluded.quantity, boat = excluded.boat,
	job = excluded.job, service = excluded.service, remark = excluded.remark;

--! GET_TAKEN
SELECT * FROM taken WHERE id = ?1;

--! DROP_TAKEN
DELETE FROM taken WHERE id = ?1;

--! ADD_NEED
INSERT INTO need VALUES (?1, ?2, ?3, ?4, ?5);

--! PUT_NEED
INSERT INTO need VALUES (?1, ?2, ?3, ?4, ?5)
ON CONFLICT (id) DO UPDATE SET
	item = excluded.item, task = excluded.task, quantity = excluded.quantity,
	on_condition = excluded.on_condition;

--! GET_NEED
SELECT * FROM need WHERE id = ?1;

--! DROP_NEED
DELETE FROM need WHERE id = ?1;
