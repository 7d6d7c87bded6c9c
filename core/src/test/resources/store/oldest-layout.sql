-- A database as the first layout of the program left it, written down once and never changed: what
-- that layout's script made, what was noted of it, and rows of every sort. All content is invented.
CREATE TABLE document_version (
  change_number INTEGER NOT NULL PRIMARY KEY,
  kind          TEXT    NOT NULL,
  document_key  TEXT    NOT NULL,
  version       INTEGER NOT NULL,
  written_at    TEXT    NOT NULL,
  written_by    TEXT    NOT NULL,
  reason        TEXT    NOT NULL,
  content       TEXT,
  CONSTRAINT version_of_document UNIQUE (kind, document_key, version)
);
CREATE TABLE "flyway_schema_history" (
    "installed_rank" INT NOT NULL PRIMARY KEY,
    "version" VARCHAR(50),
    "description" VARCHAR(200) NOT NULL,
    "type" VARCHAR(20) NOT NULL,
    "script" VARCHAR(1000) NOT NULL,
    "checksum" INT,
    "installed_by" VARCHAR(100) NOT NULL,
    "installed_on" TEXT NOT NULL DEFAULT (strftime('%Y-%m-%d %H:%M:%f','now')),
    "execution_time" INT NOT NULL,
    "success" BOOLEAN NOT NULL
);
INSERT INTO "flyway_schema_history" VALUES(1,'1','documents','SQL','V1__documents.sql',1797958854,'','2025-01-01 00:00:00.000',6,1);
CREATE INDEX "flyway_schema_history_s_idx" ON "flyway_schema_history" ("success");
INSERT INTO document_version VALUES(1,'study','aster-2001',1,'2025-01-01T00:00:00Z','ann','first import','{"n":1}');
INSERT INTO document_version VALUES(2,'study','briar-2002',1,'2025-01-01T00:00:00.250Z','ann','first import','{"words":"über 5 ≤ cm"}');
INSERT INTO document_version VALUES(3,'study','aster-2001',2,'2025-01-02T10:11:12.345Z','bo','read again','{"n":2}');
INSERT INTO document_version VALUES(4,'study','briar-2002',2,'2025-01-03T00:00:00Z','bo','retracted',NULL);
INSERT INTO document_version VALUES(5,'import','0f0e0d0c-0b0a-4908-8706-050403020100',1,'2025-01-03T00:00:01Z','bo','second import','{"saved":0}');
