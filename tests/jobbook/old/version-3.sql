pragma user_version = 3;
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE job (
  id integer primary key autoincrement,
  number text not null unique,
  created integer not null,
  customer text not null, customer_reference text not null,
  device text not null, serial text not null,
  symptom text not null, history text not null, condition text not null,
  board_uuid text not null, board_name text not null, board_revision text not null,
  board_file text not null, board_digest text not null,
  state text not null, currency text not null, internal_notes text not null
) strict;
INSERT INTO job VALUES(1,'2026-0001',1795986717842,'North pier, harbour office','HO-118','Tide logger','TL-0417','Third column of the keypad is dead','battery swollen','Salt marks','3f0e6f0a-5f3c-4c39-9d1c-1b6a7c1d2e90','tide logger main board','C','demo/device/tide-logger.netmend-board.json','31fb9cbf6a95816eeb9513955ac89136a784980163cbbaac0ad063550b4872b5','proving','EUR','short on time');
CREATE TABLE reading (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  purpose text not null,
  pin integer not null, label text not null, other_pin integer not null, other_label text not null,
  mode text not null, value real, settling text not null, time integer not null,
  meter text not null, taken_by text not null,
  plugged text not null, powered integer not null, lifted text not null, temperature real, handling text not null,
  injected real,
  verdict text not null, expected text not null, explanation text not null
) strict;
INSERT INTO reading VALUES(1,1,'fault',179,'J4.1',0,'GND','diode',0.0010000000000000000208,'settled',1775907603000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','-0.003 V to 0.004 V','reads 0.001 V; 3 good boards read 0.000 V to 0.001 V');
INSERT INTO reading VALUES(2,1,'fault',181,'J4.2',0,'GND','diode',0.65200000000000002398,'settled',1775907606000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.618 V to 0.675 V','reads 0.652 V, at 25 °C 0.647 V; 3 good boards read 0.640 V to 0.651 V');
INSERT INTO reading VALUES(3,1,'fault',184,'J4.3',0,'GND','diode',0.64900000000000002131,'settled',1775907609000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.622 V to 0.671 V','reads 0.649 V, at 25 °C 0.644 V; 3 good boards read 0.644 V to 0.651 V');
INSERT INTO reading VALUES(4,1,'fault',187,'J4.4',0,'GND','diode',0.65500000000000002664,'settled',1775907612000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.620 V to 0.670 V','reads 0.655 V, at 25 °C 0.650 V; 3 good boards read 0.641 V to 0.649 V');
INSERT INTO reading VALUES(5,1,'fault',190,'J4.5',0,'GND','diode',0.6500000000000000222,'settled',1775907615000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.618 V to 0.677 V','reads 0.650 V, at 25 °C 0.645 V; 3 good boards read 0.641 V to 0.654 V');
INSERT INTO reading VALUES(6,1,'fault',193,'J4.6',0,'GND','diode',0.64900000000000002131,'settled',1775907618000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.618 V to 0.670 V','reads 0.649 V, at 25 °C 0.644 V; 3 good boards read 0.640 V to 0.649 V');
INSERT INTO reading VALUES(7,1,'fault',196,'J4.7',0,'GND','diode',0.64700000000000001953,'settled',1775907621000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.618 V to 0.672 V','reads 0.647 V, at 25 °C 0.642 V; 3 good boards read 0.639 V to 0.649 V');
INSERT INTO reading VALUES(8,1,'fault',199,'J4.8',0,'GND','diode',0.64800000000000002042,'settled',1775907624000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.618 V to 0.671 V','reads 0.648 V, at 25 °C 0.643 V; 3 good boards read 0.641 V to 0.650 V');
INSERT INTO reading VALUES(9,1,'fault',202,'J4.9',0,'GND','diode',NULL,'settled',1775907627000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'open','0.619 V to 0.669 V','reads OL; 3 good boards read 0.640 V to 0.647 V; a good board reads something as telling once in 49308; odds of a fault here 409 to 1; press again: a missed contact reads OL too');
INSERT INTO reading VALUES(10,1,'fault',205,'J4.10',0,'GND','diode',0.43099999999999999422,'settled',1775907630000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.391 V to 0.450 V','reads 0.431 V, at 25 °C 0.423 V; 3 good boards read 0.414 V to 0.426 V');
INSERT INTO reading VALUES(11,1,'fault',208,'J4.11',0,'GND','diode',0.0020000000000000000416,'settled',1775907633000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','-0.002 V to 0.004 V','reads 0.002 V; 3 good boards read 0.001 V');
INSERT INTO reading VALUES(12,1,'fault',211,'J4.12',0,'GND','diode',0.56000000000000005329,'settled',1775907636000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.514 V to 0.590 V','reads 0.560 V, at 25 °C 0.554 V; 3 good boards read 0.545 V to 0.556 V');
INSERT INTO reading VALUES(13,1,'fault',213,'J4.13',0,'GND','diode',NULL,'settled',1775907639000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','OL','reads OL; 3 good boards read OL');
INSERT INTO reading VALUES(14,1,'fault',216,'J4.14',0,'GND','diode',0.0010000000000000000208,'settled',1775907642000,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','-0.003 V to 0.004 V','reads 0.001 V; 3 good boards read 0.000 V to 0.001 V');
INSERT INTO reading VALUES(15,1,'check',398,'C28.1',0,'GND','diode',0.64900000000000002131,'unknown',1795986718612,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'nothing to compare','','reads 0.649 V; no good board was measured here in this mode and condition, and nobody entered what to expect');
INSERT INTO reading VALUES(16,1,'check',0,'pad of J4.9',0,'GND','diode',NULL,'unknown',1795986718942,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'nothing to compare','','reads OL; no good board was measured here in this mode and condition, and nobody entered what to expect');
INSERT INTO reading VALUES(17,1,'proof',202,'J4.9',0,'GND','diode',0.65100000000000002309,'unknown',1795986753334,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.619 V to 0.669 V','reads 0.651 V, at 25 °C 0.646 V; 3 good boards read 0.640 V to 0.647 V; 2 mV above the expected 0.644 V, 0.2 times the spread; a good board reads something as telling once in 1; odds of a fault here 1 to 990; flagged from once in 20 on');
INSERT INTO reading VALUES(18,1,'proof',0,'via at (19.50, 9.00) mm',398,'C28.1','continuity',0.59999999999999997779,'unknown',1795986753334,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0 Ω to 1.48 Ω','0.6 Ω; expected 0 Ω to 1.48 Ω: twice the wire''s resistance, and what leads and meter may add');
INSERT INTO reading VALUES(19,1,'proof',199,'J4.8',0,'GND','diode',0.65300000000000002486,'unknown',1795986753334,'handheld-4000','bench 1','[]',0,'[]',22.0,'',NULL,'in range','0.618 V to 0.671 V','reads 0.653 V, at 25 °C 0.648 V; 3 good boards read 0.641 V to 0.650 V; 4 mV above the expected 0.644 V, 0.4 times the spread; a good board reads something as telling once in 1; odds of a fault here 1 to 922; flagged from once in 20 on');
CREATE TABLE suspect (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  what text not null, probability real not null, explanation text not null,
  x integer, y integer, way text not null
) strict;
INSERT INTO suspect VALUES(1,1,'open: track from (19.50, 11.00) mm to (47.40, 11.00) mm, inner layer 1 (inner 1), or 2 more places that read the same',0.6823240954695091176,'68.2 %: open: track from (19.50, 11.00) mm to (47.40, 11.00) mm, inner layer 1 (inner 1), or 2 more places that read the same. Before any reading 11.6 %. pad of J4.9 read OL; here OL is expected: 5.3 times likelier. C28.1 read 0.649 V, at 25 °C 0.644 V; here 0.644 ± 0.008 V is expected: 2.4 times likelier. J4.9 read OL; here OL is expected: 1.3 times likelier.',33450000,11000000,'[[19500000,11000000],[47400000,11000000]]');
INSERT INTO suspect VALUES(2,1,'open: via at (19.50, 9.00) mm',0.11556979936814178178,'11.6 %: open: via at (19.50, 9.00) mm. Before any reading 1.97 %. pad of J4.9 read OL; here OL is expected: 2.6 times likelier. C28.1 read 0.649 V, at 25 °C 0.644 V; here 0.644 ± 0.008 V is expected: 2.0 times likelier. J4.9 read OL; here OL is expected: 1.3 times likelier.',19500000,9000000,'[[19500000,9000000]]');
INSERT INTO suspect VALUES(3,1,'open: via at (47.40, 18.00) mm',0.11556979936814178178,'11.6 %: open: via at (47.40, 18.00) mm. Before any reading 1.97 %. pad of J4.9 read OL; here OL is expected: 2.6 times likelier. C28.1 read 0.649 V, at 25 °C 0.644 V; here 0.644 ± 0.008 V is expected: 2.0 times likelier. J4.9 read OL; here OL is expected: 1.3 times likelier.',47400000,18000000,'[[47400000,18000000]]');
INSERT INTO suspect VALUES(4,1,'none of these',0.0001905026847983094752,'< 0.1 %: none of these. Before any reading 4 %. C28.1 read 0.649 V, at 25 °C 0.644 V; here anything is possible: 80 times less likely. J4.9 read OL; here anything is possible: 2.3 times less likely. pad of J4.9 read OL; here anything is possible: 1.2 times less likely.',NULL,NULL,'[]');
CREATE TABLE repair_action (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  kind text not null, target text not null, reason text not null, jumper text
) strict;
INSERT INTO repair_action VALUES(1,1,'jumper','KEY_COL3','open: track from (19.50, 11.00) mm to (47.40, 11.00) mm, inner layer 1 (inner 1), or 2 more places that read the same','{"from":{"at":[19500000,9000000],"label":"via at (19.50, 9.00) mm","side":"top"},"net":"KEY_COL3","side":"top","to":{"at":[47400000,19500000],"label":"C28.1 (part terminal)","side":"top"},"way":[[19500000,9000000],[21124991,14487922],[21134791,14511581],[21149018,14532874],[21167126,14550982],[21188419,14565209],[21212078,14575009],[21237195,14580005],[47400000,19500000]],"wire":"enamelled copper 0.05 mm"}');
CREATE TABLE work_step (
  action integer not null references repair_action(id) on delete cascade,
  position integer not null,
  text text not null, is_check integer not null, expected text not null, done integer not null, note text not null,
  primary key (action, position)
) strict;
INSERT INTO work_step VALUES(1,0,'Make sure that the board is without power: battery disconnected and removed, capacitors discharged.',1,'0 V across the battery contacts and the large capacitors; otherwise discharge them and measure again.',1,'');
INSERT INTO work_step VALUES(1,1,'Uncover the top side at via at (19.50, 9.00) mm and C28.1 (part terminal); clean both with isopropyl alcohol and let them dry.',0,'',1,'');
INSERT INTO work_step VALUES(1,2,'Scrape the solder mask off via at (19.50, 9.00) mm until bare copper shows, no wider than the copper itself; mind the glass dust.',0,'',1,'');
INSERT INTO work_step VALUES(1,3,'Touch the bare copper at via at (19.50, 9.00) mm with the probe, before any tin.',1,'OL in diode mode: go on. OL where a value is expected: the break is on the other side of this place, stop. A short: this is another copper, stop.',1,'');
INSERT INTO work_step VALUES(1,4,'Touch the bare copper at C28.1 (part terminal) with the probe, before any tin.',1,'0.644 V ± 0.014 V in diode mode: go on. OL where a value is expected: the break is on the other side of this place, stop. A short: this is another copper, stop.',0,'');
INSERT INTO work_step VALUES(1,5,'Cover all other copper that scraping laid bare with UV mask and cure it; leave only the landing open.',0,'',0,'');
INSERT INTO work_step VALUES(1,6,'Measure from the bare landing to ground and to the copper that lay above or beside it.',1,'No short; otherwise take the mask off, clean, and mask again.',0,'');
INSERT INTO work_step VALUES(1,7,'Cut 42 mm of enamelled copper 0.05 mm; its insulation: strips in the tin of a hot iron, about 375 to 390 °C. Tin its ends.',0,'',0,'');
INSERT INTO work_step VALUES(1,8,'Pull the wire through tweezers and measure it from end to end.',1,'About 0.285 ohm or little more; otherwise an end is not stripped or the wire is nicked: take a new one.',0,'');
INSERT INTO work_step VALUES(1,9,'Tin via at (19.50, 9.00) mm and C28.1 (part terminal): little solder, fresh flux, start low with the heat.',0,'',0,'');
INSERT INTO work_step VALUES(1,10,'Look at both landings under the microscope, and measure each to its neighbours and to ground.',1,'Bright solder on the landing only, no short; otherwise wick it off and tin again.',0,'');
INSERT INTO work_step VALUES(1,11,'Solder the wire to via at (19.50, 9.00) mm.',0,'',0,'');
INSERT INTO work_step VALUES(1,12,'Measure from the wire''s free end to ground and to the neighbours of via at (19.50, 9.00) mm.',1,'OL in diode mode, no short; otherwise do the joint again.',0,'');
INSERT INTO work_step VALUES(1,13,'Lay the wire along the way in the picture (32.5 mm), flat on the board; nothing beside connectors, over the battery or under a shield wall.',0,'',0,'');
INSERT INTO work_step VALUES(1,14,'Solder the wire to C28.1 (part terminal).',0,'',0,'');
INSERT INTO work_step VALUES(1,15,'Measure from C28.1 (part terminal) to ground and to its neighbours.',1,'0.644 V ± 0.014 V in diode mode, no short; otherwise do the joint again.',0,'');
INSERT INTO work_step VALUES(1,16,'Fix the wire with mask at the 12 places marked and cure; eyes away from the UV lamp.',0,'',0,'');
INSERT INTO work_step VALUES(1,17,'Measure resistance from via at (19.50, 9.00) mm to C28.1 (part terminal), zeroed leads.',1,'About 0.285 ohm; more than twice that: a joint is bad.',0,'');
INSERT INTO work_step VALUES(1,18,'Take the line''s readings at both ends of the wire again.',1,'0.644 V ± 0.014 V in diode mode at both ends; otherwise a second break: go back to the readings.',0,'');
INSERT INTO work_step VALUES(1,19,'Close shield and lids, plug all assemblies, and look once more along the wire.',1,'Nothing presses on the wire and every lid closes; otherwise lay it anew.',0,'');
INSERT INTO work_step VALUES(1,20,'Power the board from a supply with a current limit and watch the current at start, then try the function.',1,'A start current as on a good board, and the function works; otherwise switch off at once.',0,'');
INSERT INTO work_step VALUES(1,21,'Keys 3, 6, 9 and Enter',1,'It works as on a good device',1,'');
CREATE TABLE proof (
  action integer not null references repair_action(id) on delete cascade,
  reading integer not null references reading(id) on delete cascade,
  primary key (action, reading)
) strict;
INSERT INTO proof VALUES(1,17);
INSERT INTO proof VALUES(1,18);
INSERT INTO proof VALUES(1,19);
CREATE TABLE photo (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  caption text not null, media_type text not null, bytes blob not null
) strict;
CREATE TABLE charge (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  what text not null, quantity integer not null, price integer not null
) strict;
INSERT INTO charge VALUES(1,1,'Track repair under the microscope',15000,480000);
CREATE TABLE event (
  id integer primary key autoincrement,
  job integer not null references job(id) on delete cascade,
  time integer not null, what text not null
) strict;
INSERT INTO event VALUES(1,1,1795986717842,'booked in');
INSERT INTO event VALUES(2,1,1795986718484,'probing');
INSERT INTO event VALUES(3,1,1795986720054,'first suspect: open: track from (19.50, 11.00) mm to (47.40, 11.00) mm, inner layer 1 (inner 1), or 2 more places that read the same');
INSERT INTO event VALUES(4,1,1795986720190,'suspect found');
INSERT INTO event VALUES(5,1,1795986721142,'repair action: jumper KEY_COL3');
INSERT INTO event VALUES(6,1,1795986753058,'repairing');
INSERT INTO event VALUES(7,1,1795986753642,'proving');
CREATE TABLE known_good_walk (
  id integer primary key autoincrement,
  board_uuid text not null,
  added integer not null,
  content text not null
) strict;
CREATE TABLE left_open (
  one integer primary key check (one = 1),
  job integer not null, board_file text not null, station integer
) strict;
INSERT INTO left_open VALUES(1,0,'',NULL);
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('job',1);
INSERT INTO sqlite_sequence VALUES('event',7);
INSERT INTO sqlite_sequence VALUES('known_good_walk',3);
INSERT INTO sqlite_sequence VALUES('reading',19);
INSERT INTO sqlite_sequence VALUES('suspect',4);
INSERT INTO sqlite_sequence VALUES('repair_action',1);
INSERT INTO sqlite_sequence VALUES('charge',1);
CREATE INDEX reading_of_job on reading(job);
CREATE INDEX suspect_of_job on suspect(job);
CREATE INDEX repair_action_of_job on repair_action(job);
CREATE INDEX event_of_job on event(job);
CREATE INDEX known_good_walk_of_board on known_good_walk(board_uuid);
COMMIT;
