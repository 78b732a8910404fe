-- One statement ends with a semicolon at a line's end. Times are milliseconds since 1970 UTC; the offset is the place's own.
CREATE TABLE rig (
    id INTEGER PRIMARY KEY,
    fingerprint TEXT NOT NULL UNIQUE,
    form BLOB NOT NULL
);
CREATE TABLE take (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    uid TEXT NOT NULL UNIQUE,
    kept_millis INTEGER NOT NULL,
    offset_seconds INTEGER NOT NULL,
    name TEXT NOT NULL,
    duration_seconds REAL NOT NULL,
    instrument TEXT NOT NULL,
    rig_name TEXT NOT NULL,
    venue TEXT NOT NULL,
    note TEXT NOT NULL,
    tags TEXT NOT NULL,
    faults TEXT NOT NULL,
    rig INTEGER REFERENCES rig(id)
);
CREATE INDEX take_kept ON take(kept_millis);
CREATE TABLE assessment (
    take INTEGER PRIMARY KEY REFERENCES take(id),
    form BLOB NOT NULL
);
CREATE TABLE reading (
    name TEXT NOT NULL,
    take INTEGER NOT NULL REFERENCES take(id),
    value REAL NOT NULL,
    PRIMARY KEY (name, take)
) WITHOUT ROWID;
CREATE TABLE audio (
    take INTEGER PRIMARY KEY REFERENCES take(id),
    flac BLOB NOT NULL
);
CREATE TABLE event (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    uid TEXT NOT NULL UNIQUE,
    at_millis INTEGER NOT NULL,
    offset_seconds INTEGER NOT NULL,
    kind TEXT NOT NULL,
    instrument TEXT NOT NULL,
    note TEXT NOT NULL
);
CREATE INDEX event_at ON event(at_millis);
CREATE TABLE practice (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    uid TEXT NOT NULL UNIQUE,
    at_millis INTEGER NOT NULL,
    offset_seconds INTEGER NOT NULL,
    instrument TEXT NOT NULL,
    form BLOB NOT NULL
);
CREATE INDEX practice_at ON practice(at_millis);
