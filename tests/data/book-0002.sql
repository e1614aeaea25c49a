PRAGMA application_id = 1667460203;
PRAGMA user_version = 2;
CREATE TABLE meta (
  name TEXT PRIMARY KEY,
  value REAL NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO meta (name, value) VALUES ('clock', 1772539200000);
INSERT INTO meta (name, value) VALUES ('practice', 1);
CREATE TABLE fact (
  seq INTEGER PRIMARY KEY,
  entry INTEGER NOT NULL,
  job TEXT,
  happened_at REAL NOT NULL,
  entered_at REAL NOT NULL,
  by_whom TEXT NOT NULL,
  type TEXT NOT NULL,
  undoes INTEGER,
  body TEXT NOT NULL
) STRICT;
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (1, 1, NULL, 1772524800000, 1772524800000, 'clerk', 'bell', NULL, '{"type":"bell","bell":"opening","dueAt":1772523000000,"posted":false}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (2, 2, NULL, 1772524800000, 1772524800000, 'tomek', 'air', NULL, '{"type":"air","value":19,"typed":{"value":19,"unit":null},"humidity":50}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (3, 3, '501', 1772524800000, 1772524800000, 'tomek', 'procedure-begun', NULL, '{"type":"procedure-begun","procedure":{"name":"bonded-panel","title":"outer panel, bonded, riveted and spot-welded","version":"example 1","example":true,"steps":[{"id":"plan","joint":null,"act":"Read the repair method; name every joint, its order, material and lamp","role":"technician","needs":[],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["repair method open at the car","glue or rivet or weld named for each joint"],"cautions":["before-work"],"sign":["foreman"],"starts":[]},{"id":"old-panel-off","joint":null,"act":"Old panel off per the repair method; flanges straight and bare of old glue","role":"technician","needs":[{"need":"step","step":"plan"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["sanding"],"sign":null,"starts":[]},{"id":"dry-fit","joint":null,"act":"Dry fit with clamps, drill the rivet holes, mark the place","role":"technician","needs":[{"need":"step","step":"old-panel-off"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["gap even all round","clamps counted and laid out in order"],"cautions":["clamps"],"sign":["technician","foreman"],"starts":[]},{"id":"abrade","joint":null,"act":"Abrade only the width that is needed; welding edges per the repair method","role":"technician","needs":[{"need":"step","step":"dry-fit"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["sanding"],"sign":null,"starts":[]},{"id":"clean","joint":null,"act":"Wipe in one direction with a clean cloth, dry with a second; do not touch it again","role":"technician","needs":[{"need":"step","step":"abrade"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["solvent"],"sign":null,"starts":[]},{"id":"climate","joint":null,"act":"Read air, humidity and metal at the coldest spot","role":"apprentice","needs":[{"need":"step","step":"dry-fit"}],"done":{"by":"word"},"enter":["air","metal"],"openedDays":null,"taps":[],"cautions":["reading"],"sign":null,"starts":[]},{"id":"bond","joint":"j1","act":"Paste on both faces, no bare metal left, edges sealed","role":"technician","needs":[{"need":"dew-margin"},{"need":"within","step":"clean","minutes":45},{"need":"within","step":"climate","minutes":180},{"need":"not-before","step":"clean","minutes":5}],"done":{"by":"entry","entry":"pasted"},"enter":["batch","expiry","opened"],"openedDays":28,"taps":["cartridge warm, mixer right, nozzle new","both components flow","first mixer length binned","witness bead laid and dated"],"cautions":["paste"],"sign":null,"starts":[]},{"id":"set","joint":"j1","act":"Set the panel once, no sliding; clamp from the outside in","role":"technician","needs":[{"need":"step","step":"bond"}],"done":{"by":"entry","entry":"closed"},"enter":[],"openedDays":null,"taps":["squeeze-out seen all round","gap even all round"],"cautions":["clamps"],"sign":null,"starts":[]},{"id":"rivet","joint":"j1","act":"Rivet wet per the repair method; wipe squeeze-out while it is soft","role":"technician","needs":[{"need":"step","step":"set"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["clamps"],"sign":null,"starts":[]},{"id":"weld-wet","joint":"j2","act":"Weld beside the wet paste, only where the repair method says so","role":"technician","needs":[{"need":"step","step":"set"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["cavity, trim, fuel and wax looked at","second person with extinguisher"],"cautions":["weld-wet","fire-watch"],"sign":null,"starts":["fire-watch"]},{"id":"lamp-gentle","joint":"j1","act":"If a lamp is planned, first stage per the sheet; probe on the coldest side","role":"apprentice","needs":[{"need":"step","step":"rivet"},{"need":"step","step":"weld-wet"}],"done":{"by":"entry","entry":"lamp-set"},"enter":[],"openedDays":null,"taps":[],"cautions":["lamp","battery","reading"],"sign":null,"starts":[]},{"id":"handling","joint":"j1","act":"Press the witness bead at the coldest spot; hard or soft?","role":"apprentice","needs":[{"need":"step","step":"rivet"},{"need":"step","step":"weld-wet"}],"done":{"by":"check","milestone":"handling"},"enter":[],"openedDays":null,"taps":[],"cautions":[],"sign":null,"starts":[]},{"id":"clamps-off","joint":"j1","act":"Clamps off one at a time; then roll gently, no lifting at the sill","role":"technician","needs":[{"need":"confirmed","joint":"j1","milestone":"handling"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["clamps-off"],"sign":null,"starts":[]},{"id":"lamp-hot","joint":"j1","act":"If a lamp is planned, turn it up to the sheet''s next stage, never above its maximum","role":"technician","needs":[{"need":"confirmed","joint":"j1","milestone":"handling"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["lamp","battery","reading"],"sign":null,"starts":[]},{"id":"full","joint":"j1","act":"Lamp off first; then the witness bead at the coldest spot, hard or soft?","role":"technician","needs":[{"need":"step","step":"handling"}],"done":{"by":"check","milestone":"full"},"enter":[],"openedDays":null,"taps":[],"cautions":[],"sign":null,"starts":[]},{"id":"weld-after","joint":"j3","act":"Last welds per the repair method; short spots, cool between, earth lead close","role":"technician","needs":[{"need":"step","step":"clamps-off"},{"need":"confirmed","joint":"j1","milestone":"full"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["cavity, trim, fuel and wax looked at","second person with extinguisher"],"cautions":["weld-after","fire-watch"],"sign":null,"starts":["fire-watch"]},{"id":"grind","joint":null,"act":"Grind residue and weld spots off with extraction","role":"technician","needs":[{"need":"step","step":"weld-after"},{"need":"confirmed","joint":"j1","milestone":"full"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["metal is cool again","mask and gloves on"],"cautions":["sanding"],"sign":null,"starts":[]},{"id":"prime","joint":null,"act":"Clean, treat bare metal and prime it within the time of its sheet","role":"technician","needs":[{"need":"within","step":"grind","minutes":120}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["fire watch over and answered","if there was any"],"cautions":["solvent","isocyanate"],"sign":null,"starts":[]},{"id":"before-paint","joint":null,"act":"Look at every joint of this car; filler, if any, is sanded and dry","role":"technician","needs":[{"need":"step","step":"prime"},{"need":"cures-done"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":[],"sign":["foreman"],"starts":[]},{"id":"paint","joint":null,"act":"Paint per the paint sheet; mask what must stay bare","role":"technician","needs":[{"need":"step","step":"before-paint"},{"need":"cures-done"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["mask and gloves on"],"cautions":["isocyanate","solvent"],"sign":null,"starts":[]},{"id":"bake","joint":null,"act":"Bake by metal temperature, below the limit of everything in the car","role":"technician","needs":[{"need":"step","step":"paint"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":["nothing on this car waits for strength","batteries, gas struts and aerosol cans looked at"],"cautions":["bake","battery"],"sign":null,"starts":[]},{"id":"seal","joint":"j4","act":"Paint through-dry? Seal the seams per the repair method, tool before it skins","role":"technician","needs":[{"need":"not-before","step":"bake","minutes":60}],"done":{"by":"entry","entry":"closed"},"enter":["batch","expiry"],"openedDays":null,"taps":[],"cautions":["paste"],"sign":null,"starts":[]},{"id":"sealed","joint":"j4","act":"Cut the test bead; soft inside or through?","role":"technician","needs":[{"need":"step","step":"seal"}],"done":{"by":"check","milestone":"through"},"enter":[],"openedDays":null,"taps":[],"cautions":[],"sign":null,"starts":[]},{"id":"wax","joint":"j5","act":"Cavity wax last, on a cool car, per the repair method","role":"technician","needs":[{"need":"step","step":"weld-wet"},{"need":"step","step":"weld-after"},{"need":"step","step":"bake"},{"need":"step","step":"seal"},{"need":"confirmed","joint":"j1","milestone":"full"}],"done":{"by":"entry","entry":"closed"},"enter":[],"openedDays":null,"taps":["car is cool","no hot work planned on this car any more","drains open"],"cautions":["wax"],"sign":null,"starts":["heat-ban"]},{"id":"drip-free","joint":"j5","act":"Look for drips; wipe the trim, open the drains","role":"apprentice","needs":[{"need":"step","step":"wax"}],"done":{"by":"check","milestone":"drip-free"},"enter":[],"openedDays":null,"taps":[],"cautions":[],"sign":null,"starts":[]},{"id":"refit","joint":null,"act":"Refit, calibrate per the vehicle maker, water test when the sealant allows","role":"technician","needs":[{"need":"step","step":"drip-free"},{"need":"step","step":"sealed"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":["before-work"],"sign":null,"starts":[]},{"id":"handover","joint":null,"act":"Every milestone confirmed or decided by name; close the record","role":"technician","needs":[{"need":"step","step":"refit"},{"need":"cures-done"}],"done":{"by":"word"},"enter":[],"openedDays":null,"taps":[],"cautions":[],"sign":["foreman"],"starts":[]}]}}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (4, 3, '501', 1772524800000, 1772524800000, 'tomek', 'cautioned', NULL, '{"type":"cautioned","step":"plan","caution":"before-work"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (5, 4, '7203', 1772524800000, 1772524800000, 'tomek', 'cure-opened', NULL, '{"type":"cure-opened","cure":{"joint":"j1","card":"P1","run":1},"card":{"name":"P1","title":"panel epoxy","version":"example 1","example":true,"basis":"panel-temperature","milestones":[{"kind":"handling","laws":[{"law":"credit","rows":[{"temperature":15,"minutes":450},{"temperature":20,"minutes":300},{"temperature":30,"minutes":150},{"temperature":40,"minutes":75},{"temperature":65,"minutes":25}]}]},{"kind":"full","laws":[{"law":"credit","rows":[{"temperature":15,"minutes":3120},{"temperature":20,"minutes":2160},{"temperature":30,"minutes":1080},{"temperature":40,"minutes":480},{"temperature":65,"minutes":80}]}]}],"openTime":{"by":"rows","rows":[{"temperature":20,"minutes":60},{"temperature":30,"minutes":30}]},"maxPanel":85,"maxLamp":null,"recoatBy":null,"marginPercent":0,"noHeatAfter":false},"owner":"tomek"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (6, 4, '7203', 1772524800000, 1772524800000, 'tomek', 'pasted', NULL, '{"type":"pasted","cure":{"joint":"j1","card":"P1","run":1},"earliest":1772524800000}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (7, 5, '7203', 1772524800000, 1772524800000, 'tomek', 'closed', NULL, '{"type":"closed","cure":{"joint":"j1","card":"P1","run":1}}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (8, 6, '7203', 1772524800000, 1772524800000, 'tomek', 'lamp-set', NULL, '{"type":"lamp-set","joint":"j1","setting":30,"typed":{"value":30,"unit":null},"lamp":null,"heater":"lamp"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (9, 7, '7203', 1772524800000, 1772524800000, 'tomek', 'reading', NULL, '{"type":"reading","joint":"j1","value":31,"typed":{"value":31,"unit":null},"method":"unstated"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (10, 8, '502', 1772524800000, 1772524800000, 'wren', 'cure-opened', NULL, '{"type":"cure-opened","cure":{"joint":"j1","card":"F1","run":1},"card":{"name":"F1","title":"seam filler","version":"example 1","example":true,"basis":"panel-temperature","milestones":[{"kind":"sand","laws":[{"law":"credit","rows":[{"temperature":15,"minutes":630},{"temperature":20,"minutes":420},{"temperature":30,"minutes":210},{"temperature":60,"minutes":45}]}]}],"openTime":null,"maxPanel":70,"maxLamp":null,"recoatBy":null,"marginPercent":0,"noHeatAfter":false},"owner":"wren"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (11, 8, '502', 1772524800000, 1772524800000, 'wren', 'closed', NULL, '{"type":"closed","cure":{"joint":"j1","card":"F1","run":1}}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (12, 9, '502', 1772524800000, 1772524800000, 'wren', 'undone', 8, '{"type":"undone","entry":8}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (13, 10, '503', 1772524800000, 1772524800000, 'wren', 'cure-opened', NULL, '{"type":"cure-opened","cure":{"joint":"j1","card":"F1","run":1},"card":{"name":"F1","title":"seam filler","version":"example 1","example":true,"basis":"panel-temperature","milestones":[{"kind":"sand","laws":[{"law":"credit","rows":[{"temperature":15,"minutes":630},{"temperature":20,"minutes":420},{"temperature":30,"minutes":210},{"temperature":60,"minutes":45}]}]}],"openTime":null,"maxPanel":70,"maxLamp":null,"recoatBy":null,"marginPercent":0,"noHeatAfter":false},"owner":"wren"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (14, 10, '503', 1772524800000, 1772524800000, 'wren', 'closed', NULL, '{"type":"closed","cure":{"joint":"j1","card":"F1","run":1}}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (15, 11, '7203', 1772528400000, 1772528400000, 'clerk', 'reminder-raised', NULL, '{"type":"reminder-raised","cure":{"joint":"j1","card":"P1","run":1},"kind":"still-on","round":2,"step":0,"dueAt":1772528400000,"to":"tomek"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (16, 12, '7203', 1772532000000, 1772532000000, 'clerk', 'reminder-raised', NULL, '{"type":"reminder-raised","cure":{"joint":"j1","card":"P1","run":1},"kind":"still-on","round":2,"step":1,"dueAt":1772528400000,"to":"tomek"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (17, 13, '7203', 1772533200000, 1772533200000, 'clerk', 'reminder-raised', NULL, '{"type":"reminder-raised","cure":{"joint":"j1","card":"P1","run":1},"kind":"handling","round":1,"step":0,"dueAt":1772533200000,"to":"tomek"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (18, 14, '7203', 1772533800000, 1772533800000, 'clerk', 'reminder-raised', NULL, '{"type":"reminder-raised","cure":{"joint":"j1","card":"P1","run":1},"kind":"handling","round":1,"step":1,"dueAt":1772533200000,"to":"tomek"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (19, 15, '7203', 1772535000000, 1772535000000, 'clerk', 'reminder-raised', NULL, '{"type":"reminder-raised","cure":{"joint":"j1","card":"P1","run":1},"kind":"handling","round":1,"step":2,"dueAt":1772533200000,"to":"tomek"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (20, 16, '7203', 1772535600000, 1772535600000, 'tomek', 'checked', NULL, '{"type":"checked","cure":{"joint":"j1","card":"P1","run":1},"milestone":"handling","result":"hard","role":"other"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (21, 17, '7203', 1772535600000, 1772535600000, 'tomek', 'lamp-set', NULL, '{"type":"lamp-set","joint":"j1","setting":65,"typed":{"value":65,"unit":null},"lamp":null,"heater":"lamp"}');
INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body) VALUES (22, 18, '7203', 1772539200000, 1772539200000, 'clerk', 'reminder-raised', NULL, '{"type":"reminder-raised","cure":{"joint":"j1","card":"P1","run":1},"kind":"still-on","round":3,"step":0,"dueAt":1772539200000,"to":"tomek"}');
CREATE TABLE open_job (
  job TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;
INSERT INTO open_job (job) VALUES ('501');
INSERT INTO open_job (job) VALUES ('503');
INSERT INTO open_job (job) VALUES ('7203');
CREATE TABLE guest (
  person TEXT PRIMARY KEY,
  name TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE reminder (
  job TEXT NOT NULL,
  key TEXT NOT NULL,
  joint TEXT NOT NULL,
  card TEXT NOT NULL,
  run INTEGER NOT NULL,
  kind TEXT NOT NULL,
  round INTEGER NOT NULL,
  step INTEGER NOT NULL,
  due_at REAL NOT NULL,
  ring_at REAL NOT NULL,
  route TEXT NOT NULL,
  to_whom TEXT NOT NULL,
  PRIMARY KEY (job, key)
) STRICT, WITHOUT ROWID;
INSERT INTO reminder (job, key, joint, card, run, kind, round, step, due_at, ring_at, route, to_whom) VALUES ('503', '503/j1/F1#1/sand/r1/s0/2026-03-03T15:36:00.000Z/wren', 'j1', 'F1', 1, 'sand', 1, 0, 1772552160000, 1772552160000, 'alone', 'wren');
INSERT INTO reminder (job, key, joint, card, run, kind, round, step, due_at, ring_at, route, to_whom) VALUES ('7203', '7203/j1/P1#1/still-on/r3/s1/2026-03-03T12:00:00.000Z/tomek', 'j1', 'P1', 1, 'still-on', 3, 1, 1772539200000, 1772542800000, 'alone', 'tomek');
CREATE TABLE post (
  seq INTEGER PRIMARY KEY,
  key TEXT NOT NULL,
  at REAL NOT NULL,
  due_at REAL NOT NULL,
  to_whom TEXT NOT NULL,
  about TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT;
INSERT INTO post (seq, key, at, due_at, to_whom, about, answer) VALUES (1, '7203/j1/P1#1/still-on/r2/s0/2026-03-03T09:00:00.000Z/tomek', 1772528400000, 1772528400000, 'tomek', '{"job":"7203","joint":"j1","card":"P1","kind":"still-on"}', '{"tone":"question","lines":[[{"kind":"text","text":"7203 "},{"kind":"strong","text":"still on?"},{"kind":"text","text":" lamp 30 °C, last seen 08:00."}],[{"kind":"text","text":"handling strength 10:20 if it stays on."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"On","line":"on 7203 j1"},{"label":"Off","line":"off 7203 j1"},{"label":"Not sure","line":"off 7203 j1 don''t know when"}]}');
INSERT INTO post (seq, key, at, due_at, to_whom, about, answer) VALUES (2, '7203/j1/P1#1/still-on/r2/s1/2026-03-03T09:00:00.000Z/tomek', 1772532000000, 1772528400000, 'tomek', '{"job":"7203","joint":"j1","card":"P1","kind":"still-on"}', '{"tone":"question","lines":[[{"kind":"text","text":"7203 "},{"kind":"strong","text":"still on?"},{"kind":"text","text":" lamp 30 °C, last seen 08:00."}],[{"kind":"text","text":"handling strength 10:20 if it stays on."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"On","line":"on 7203 j1"},{"label":"Off","line":"off 7203 j1"},{"label":"Not sure","line":"off 7203 j1 don''t know when"}]}');
INSERT INTO post (seq, key, at, due_at, to_whom, about, answer) VALUES (3, '7203/j1/P1#1/handling/r1/s0/2026-03-03T10:20:00.000Z/tomek', 1772533200000, 1772533200000, 'tomek', '{"job":"7203","joint":"j1","card":"P1","kind":"handling"}', '{"tone":"question","lines":[[{"kind":"text","text":"7203 "},{"kind":"strong","text":"handling strength due 10:20"},{"kind":"text","text":" by the clock, not confirmed since 08:00."}],[{"kind":"text","text":"Was the lamp on all the time? If not, say so first."}],[{"kind":"text","text":"Try the witness bead at the coldest spot."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Hard","line":"check 7203 j1 handling hard"},{"label":"Soft","line":"check 7203 j1 handling soft"},{"label":"Lamp was off","line":"off 7203 j1 don''t know when"},{"label":"Later 10","line":"later 7203 j1"}]}');
INSERT INTO post (seq, key, at, due_at, to_whom, about, answer) VALUES (4, '7203/j1/P1#1/handling/r1/s1/2026-03-03T10:20:00.000Z/tomek', 1772533800000, 1772533200000, 'tomek', '{"job":"7203","joint":"j1","card":"P1","kind":"handling"}', '{"tone":"question","lines":[[{"kind":"text","text":"7203 "},{"kind":"strong","text":"handling strength due 10:20"},{"kind":"text","text":" by the clock, not confirmed since 08:00."}],[{"kind":"text","text":"No answer for 10 min."}],[{"kind":"text","text":"Was the lamp on all the time? If not, say so first."}],[{"kind":"text","text":"Try the witness bead at the coldest spot."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Hard","line":"check 7203 j1 handling hard"},{"label":"Soft","line":"check 7203 j1 handling soft"},{"label":"Lamp was off","line":"off 7203 j1 don''t know when"},{"label":"Later 10","line":"later 7203 j1"}]}');
INSERT INTO post (seq, key, at, due_at, to_whom, about, answer) VALUES (5, '7203/j1/P1#1/handling/r1/s2/2026-03-03T10:20:00.000Z/tomek', 1772535000000, 1772533200000, 'tomek', '{"job":"7203","joint":"j1","card":"P1","kind":"handling"}', '{"tone":"question","lines":[[{"kind":"text","text":"7203 "},{"kind":"strong","text":"handling strength due 10:20"},{"kind":"text","text":" by the clock, not confirmed since 08:00."}],[{"kind":"text","text":"No answer for 30 min."}],[{"kind":"text","text":"Was the lamp on all the time? If not, say so first."}],[{"kind":"text","text":"Try the witness bead at the coldest spot."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Hard","line":"check 7203 j1 handling hard"},{"label":"Soft","line":"check 7203 j1 handling soft"},{"label":"Lamp was off","line":"off 7203 j1 don''t know when"},{"label":"Later 10","line":"later 7203 j1"}]}');
INSERT INTO post (seq, key, at, due_at, to_whom, about, answer) VALUES (6, '7203/j1/P1#1/still-on/r3/s0/2026-03-03T12:00:00.000Z/tomek', 1772539200000, 1772539200000, 'tomek', '{"job":"7203","joint":"j1","card":"P1","kind":"still-on"}', '{"tone":"question","lines":[[{"kind":"text","text":"7203 "},{"kind":"strong","text":"still on?"},{"kind":"text","text":" lamp 65 °C, last seen 11:00."}],[{"kind":"text","text":"Without heat nothing goes on."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"On","line":"on 7203 j1"},{"label":"Off","line":"off 7203 j1"},{"label":"Not sure","line":"off 7203 j1 don''t know when"}]}');
CREATE TABLE seen (
  message TEXT PRIMARY KEY,
  at REAL NOT NULL,
  reply TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO seen (message, at, reply, answer) VALUES ('page:52578f71-5439-4137-b203-5fc9746355d4', 1772524800000, 'page:52578f71-5439-4137-b203-5fc9746355d4', '{"tone":"plain","lines":[[{"kind":"text","text":"Air "},{"kind":"strong","text":"19 °C"},{"kind":"text","text":", 50 % humidity noted 08:00."}],[{"kind":"text","text":"Dew point 8.3 °C: metal at least "},{"kind":"strong","text":"11.4 °C"},{"kind":"text","text":"."}],[{"kind":"text","text":"No running wait changes."}]],"buttons":[{"label":"Undo","line":"undo 2"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:5f316216-5e1d-4eb2-807d-be043e851e69', 1772524800000, 'page:5f316216-5e1d-4eb2-807d-be043e851e69', '{"tone":"plain","lines":[[{"kind":"text","text":"7203 lamp 30 °C since 08:00."}],[{"kind":"text","text":"Handling strength "},{"kind":"strong","text":"13:26"},{"kind":"text","text":" by the clock."}],[{"kind":"text","text":"Take one reading to lock in about 10:43: until then only the air counts."}],[{"kind":"text","text":"Never leave a lamp or pad alone. Nothing wet with solvent near it, no tyre, glass edge or high-voltage part."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Undo","line":"undo 6"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:677543bc-1da7-45ba-8140-d01e96cc876c', 1772535600000, 'page:677543bc-1da7-45ba-8140-d01e96cc876c', '{"tone":"plain","lines":[[{"kind":"text","text":"7203 lamp 65 °C since 11:00."}],[{"kind":"text","text":"Full strength: no time yet, 54 % of the wait by 17:00, then it waits for the lamp."}],[{"kind":"text","text":"Read again once it is warm: until then 31 °C counts."}],[{"kind":"text","text":"Hot enough for a battery: high-voltage parts made dead, and shielded or out, per the vehicle maker? Never leave the heat alone."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"I stay","line":"stay 7203 j1"},{"label":"Undo","line":"undo 17"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:9b8ac6c0-b37e-4b1e-852a-d931f9dfb7d8', 1772524800000, 'page:9b8ac6c0-b37e-4b1e-852a-d931f9dfb7d8', '{"tone":"plain","lines":[[{"kind":"text","text":"7203 P1 paste on 08:00."}],[{"kind":"text","text":"Close the panel by "},{"kind":"strong","text":"09:00"},{"kind":"text","text":" (60 min at 19 °C)."}],[{"kind":"text","text":"Gloves, eyes. Tap Closed when the panel is set."}],[{"kind":"text","text":"Dew point 8.3 °C: metal at least "},{"kind":"strong","text":"11.4 °C"},{"kind":"text","text":"."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Closed","line":"closed 7203 j1"},{"label":"Undo","line":"undo 4"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:ab1d7c40-ff4b-4c0b-94a8-0db9344695ae', 1772524800000, 'page:ab1d7c40-ff4b-4c0b-94a8-0db9344695ae', '{"tone":"plain","lines":[[{"kind":"text","text":"7203 closed 08:00."}],[{"kind":"text","text":"Handling strength "},{"kind":"strong","text":"13:26"},{"kind":"text","text":" by the clock."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Undo","line":"undo 5"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:b2554a58-2f0d-45ce-a977-4bc221c3fe7f', 1772535600000, 'page:b2554a58-2f0d-45ce-a977-4bc221c3fe7f', '{"tone":"plain","lines":[[{"kind":"text","text":"7203 handling strength "},{"kind":"strong","text":"confirmed"},{"kind":"text","text":" 11:00 by Tomek."}],[{"kind":"text","text":"Full strength: no time yet, 54 % of the wait by 17:00, then it waits for the lamp."}],[{"kind":"text","text":"Clamps off one at a time, if the repair method agrees; stop if the gap moves."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Undo","line":"undo 16"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:ba7057c3-be67-4a9b-b24f-5ad3265e53c8', 1772524800000, 'page:ba7057c3-be67-4a9b-b24f-5ad3265e53c8', '{"tone":"plain","lines":[[{"kind":"text","text":"501 "},{"kind":"strong","text":"bonded-panel"},{"kind":"text","text":" begun 08:00, Tomek: outer panel, bonded, riveted and spot-welded, 27 steps."}],[{"kind":"text","text":"Next: "},{"kind":"strong","text":"plan"},{"kind":"text","text":": Read the repair method; name every joint, its order, material and lamp. Technician or above. Battery, airbags, high voltage: made dead by somebody qualified? If not known, ask the foreman."}],[{"kind":"text","text":"Data sheet, vehicle maker''s method, local rules and your licence come first. This is a reminder, not permission."}],[{"kind":"text","text":"bonded-panel is an example procedure, not the vehicle maker''s method."}]],"buttons":[{"label":"Repair method open at t…","line":"tap 501 plan 1"},{"label":"Glue or rivet or weld n…","line":"tap 501 plan 2"},{"label":"Undo","line":"undo 3"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:c22a5279-028d-46da-b0a9-22ef824efbb9', 1772524800000, 'page:c22a5279-028d-46da-b0a9-22ef824efbb9', '{"tone":"plain","lines":[[{"kind":"text","text":"502 F1 closed 08:00, air 19 °C."}],[{"kind":"text","text":"Sanding time "},{"kind":"strong","text":"15:36"},{"kind":"text","text":" by the clock."}],[{"kind":"text","text":"F1 is an example card, not your data sheet."}]],"buttons":[{"label":"Undo","line":"undo 8"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:c854c797-597f-4e86-9c0f-504471bff8ee', 1772524800000, 'page:c854c797-597f-4e86-9c0f-504471bff8ee', '{"tone":"plain","lines":[[{"kind":"text","text":"7203 reading 31 °C."}],[{"kind":"text","text":"Handling strength "},{"kind":"strong","text":"10:20"},{"kind":"text","text":" by the clock (was 13:26)."}],[{"kind":"text","text":"Probe, not finger, at the coldest spot. Bare shiny metal lies to infrared."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[{"label":"Undo","line":"undo 7"}]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:c87ea13c-44ae-4029-abde-8844082388de', 1772524800000, 'page:c87ea13c-44ae-4029-abde-8844082388de', '{"tone":"plain","lines":[[{"kind":"strong","text":"502 taken back:"},{"kind":"text","text":" closed of 08:00. Both stay in the record."}]],"buttons":[]}');
INSERT INTO seen (message, at, reply, answer) VALUES ('page:f1aa1adb-b151-4144-a602-3e940e5027fc', 1772524800000, 'page:f1aa1adb-b151-4144-a602-3e940e5027fc', '{"tone":"plain","lines":[[{"kind":"text","text":"503 F1 closed 08:00, air 19 °C."}],[{"kind":"text","text":"Sanding time "},{"kind":"strong","text":"15:36"},{"kind":"text","text":" by the clock."}],[{"kind":"text","text":"F1 is an example card, not your data sheet."}]],"buttons":[{"label":"Undo","line":"undo 10"}]}');
CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE,
  chat TEXT NOT NULL,
  lane TEXT NOT NULL,
  urgent INTEGER NOT NULL CHECK (urgent IN (0, 1)),
  state TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'sending', 'sent', 'refused')),
  attempts INTEGER NOT NULL DEFAULT 0,
  not_before REAL NOT NULL,
  target TEXT NOT NULL,
  mention TEXT,
  answer TEXT NOT NULL,
  created_at REAL NOT NULL,
  claimed_at REAL,
  ended_at REAL,
  channel TEXT,
  ts TEXT,
  reason TEXT
) STRICT;
CREATE TABLE thread (
  job TEXT PRIMARY KEY,
  channel TEXT NOT NULL,
  ts TEXT NOT NULL,
  at REAL NOT NULL,
  UNIQUE (channel, ts)
) STRICT;
CREATE TABLE inbox (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  at REAL NOT NULL,
  payload TEXT
) STRICT;
CREATE TABLE profile (
  chat_id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  at REAL NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE asked (
  post INTEGER PRIMARY KEY REFERENCES post (seq),
  job TEXT
) STRICT;
INSERT INTO asked (post, job) VALUES (6, '7203');
CREATE TABLE sheet (
  job TEXT PRIMARY KEY,
  change INTEGER NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO sheet (job, change, answer) VALUES ('501', 1, '{"tone":"plain","lines":[[{"kind":"strong","text":"Job 501"}],[{"kind":"text","text":"Times, checks and warnings of this job are in this thread."}]],"buttons":[]}');
INSERT INTO sheet (job, change, answer) VALUES ('502', 2, '{"tone":"plain","lines":[[{"kind":"strong","text":"Job 502"}],[{"kind":"text","text":"Times, checks and warnings of this job are in this thread."}]],"buttons":[]}');
INSERT INTO sheet (job, change, answer) VALUES ('503', 1, '{"tone":"plain","lines":[[{"kind":"strong","text":"Job 503"}],[{"kind":"text","text":"j1 F1, Wren, no lamp: sanding time earliest "},{"kind":"strong","text":"Tue 3 Mar 15:36"},{"kind":"text","text":", not checked"}],[{"kind":"text","text":"Times, checks and warnings of this job are in this thread."}],[{"kind":"text","text":"F1 is an example card, not your data sheet."}]],"buttons":[]}');
INSERT INTO sheet (job, change, answer) VALUES ('7203', 6, '{"tone":"plain","lines":[[{"kind":"strong","text":"Job 7203"}],[{"kind":"text","text":"j1 P1, Tomek, lamp 65 °C: handling strength confirmed Tue 3 Mar 11:00 by Tomek; full strength: no time yet"}],[{"kind":"text","text":"Times, checks and warnings of this job are in this thread."}],[{"kind":"text","text":"P1 is an example card, not your data sheet."}]],"buttons":[]}');
CREATE INDEX fact_by_job ON fact (job);
CREATE INDEX fact_by_entry ON fact (entry);
CREATE INDEX fact_by_person ON fact (by_whom, entry) WHERE type NOT IN ('undone', 'reminder-raised', 'bell');
CREATE INDEX fact_undoing ON fact (undoes) WHERE undoes IS NOT NULL;
CREATE INDEX reminder_by_ring ON reminder (ring_at, key);
CREATE INDEX seen_by_age ON seen (at);
CREATE INDEX outbox_waiting ON outbox (lane, urgent DESC, seq) WHERE state = 'waiting';
CREATE INDEX outbox_not_before ON outbox (not_before) WHERE state = 'waiting';
CREATE UNIQUE INDEX outbox_one_sending_per_lane ON outbox (lane) WHERE state = 'sending';
CREATE INDEX inbox_open ON inbox (seq) WHERE payload IS NOT NULL;
CREATE INDEX inbox_handled ON inbox (at) WHERE payload IS NULL;
CREATE INDEX asked_by_job ON asked (job);
CREATE TRIGGER fact_is_never_changed BEFORE UPDATE ON fact BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is never changed');
END;
CREATE TRIGGER fact_is_never_removed BEFORE DELETE ON fact BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is never removed');
END;
