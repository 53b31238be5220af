-- The same text runs on SQLite and on PostgreSQL. Times of a film are presentation seconds, floor values metres in the
-- court frame. Flags are 0 or 1. Structured values that are read whole are JSON text.

CREATE TABLE films (
    id TEXT PRIMARY KEY,
    sha256 TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    practice_day TEXT NOT NULL,
    title TEXT NOT NULL,
    folder TEXT NOT NULL,
    film_path TEXT,
    width_px INTEGER NOT NULL,
    height_px INTEGER NOT NULL,
    duration_s DOUBLE PRECISION NOT NULL,
    frames BIGINT NOT NULL,
    rules TEXT NOT NULL,
    not_seen TEXT NOT NULL,
    simulated INTEGER NOT NULL
);
CREATE INDEX films_by_day ON films (practice_day, id);

-- Stretches filmed without a cut by a camera that stood still; calibrations belong to them.
CREATE TABLE shots (
    film_id TEXT NOT NULL,
    number INTEGER NOT NULL,
    from_s DOUBLE PRECISION NOT NULL,
    to_s DOUBLE PRECISION NOT NULL,
    PRIMARY KEY (film_id, number)
);

CREATE TABLE runs (
    id TEXT PRIMARY KEY,
    film_id TEXT NOT NULL,
    settings TEXT NOT NULL,
    imported_at TEXT NOT NULL,
    holds INTEGER NOT NULL
);

CREATE TABLE calibrations (
    run_id TEXT NOT NULL,
    shot_number INTEGER NOT NULL,
    source TEXT NOT NULL,
    status TEXT NOT NULL,
    reason TEXT NOT NULL,
    pixel_to_floor TEXT NOT NULL,
    PRIMARY KEY (run_id, shot_number)
);

CREATE TABLE tracks (
    film_id TEXT NOT NULL,
    track_id INTEGER NOT NULL,
    team TEXT NOT NULL,
    team_probability DOUBLE PRECISION NOT NULL,
    from_s DOUBLE PRECISION NOT NULL,
    to_s DOUBLE PRECISION NOT NULL,
    jersey_number INTEGER,
    jersey_probability DOUBLE PRECISION,
    PRIMARY KEY (film_id, track_id)
);

CREATE TABLE possessions (
    id TEXT PRIMARY KEY,
    film_id TEXT NOT NULL,
    number INTEGER NOT NULL,
    from_s DOUBLE PRECISION NOT NULL,
    to_s DOUBLE PRECISION NOT NULL,
    attack TEXT NOT NULL,
    attack_probability DOUBLE PRECISION NOT NULL,
    attacked_end TEXT NOT NULL,
    ball_seen INTEGER NOT NULL,
    outcome TEXT NOT NULL,
    attackers TEXT NOT NULL,
    defenders TEXT NOT NULL,
    spacing TEXT NOT NULL,
    not_seen TEXT NOT NULL
);
CREATE INDEX possessions_by_film ON possessions (film_id, number);

CREATE TABLE findings (
    id TEXT PRIMARY KEY,
    film_id TEXT NOT NULL,
    possession_id TEXT NOT NULL,
    number INTEGER NOT NULL,
    kind TEXT NOT NULL,
    flag INTEGER NOT NULL,
    label TEXT NOT NULL,
    from_s DOUBLE PRECISION NOT NULL,
    to_s DOUBLE PRECISION NOT NULL,
    probability DOUBLE PRECISION NOT NULL,
    level DOUBLE PRECISION,
    sentence TEXT NOT NULL,
    body TEXT NOT NULL
);
CREATE INDEX findings_by_film ON findings (film_id, number);
CREATE INDEX findings_by_kind ON findings (kind);

CREATE TABLE finding_roles (
    finding_id TEXT NOT NULL,
    position INTEGER NOT NULL,
    film_id TEXT NOT NULL,
    role TEXT NOT NULL,
    track_id INTEGER NOT NULL,
    PRIMARY KEY (finding_id, position)
);
CREATE INDEX finding_roles_by_track ON finding_roles (film_id, track_id);

CREATE TABLE players (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    number INTEGER,
    squad TEXT NOT NULL,
    position TEXT NOT NULL,
    active INTEGER NOT NULL
);

-- Who a track is, as the analyst said. The places let the track be found again after the film was measured anew.
CREATE TABLE assignments (
    film_id TEXT NOT NULL,
    track_id INTEGER NOT NULL,
    player_id TEXT NOT NULL,
    places TEXT NOT NULL,
    found INTEGER NOT NULL,
    PRIMARY KEY (film_id, track_id)
);

-- What is judged: a finding as it stood when it was first judged, or something the analyst saw and the program did not.
CREATE TABLE subjects (
    id TEXT PRIMARY KEY,
    film_id TEXT NOT NULL,
    finding_id TEXT,
    by_hand INTEGER NOT NULL,
    kind TEXT NOT NULL,
    label TEXT NOT NULL,
    from_s DOUBLE PRECISION NOT NULL,
    to_s DOUBLE PRECISION NOT NULL,
    roles TEXT NOT NULL,
    places TEXT NOT NULL,
    sentence TEXT NOT NULL
);
CREATE INDEX subjects_by_film ON subjects (film_id);
CREATE INDEX subjects_by_finding ON subjects (finding_id);

-- Only ever added to; the last one of a subject that was not taken back holds.
CREATE TABLE verdicts (
    id TEXT PRIMARY KEY,
    turn BIGINT NOT NULL UNIQUE,
    subject_id TEXT NOT NULL,
    film_id TEXT NOT NULL,
    answer TEXT NOT NULL,
    kind TEXT NOT NULL,
    label TEXT NOT NULL,
    from_s DOUBLE PRECISION NOT NULL,
    to_s DOUBLE PRECISION NOT NULL,
    roles TEXT NOT NULL,
    grade INTEGER,
    note TEXT NOT NULL,
    author TEXT NOT NULL,
    given_at TEXT NOT NULL,
    taken_back INTEGER NOT NULL
);
CREATE INDEX verdicts_by_subject ON verdicts (subject_id, turn);
CREATE INDEX verdicts_by_film ON verdicts (film_id, turn);

CREATE TABLE notes (
    id TEXT PRIMARY KEY,
    film_id TEXT NOT NULL,
    possession_number INTEGER NOT NULL,
    body TEXT NOT NULL,
    written_at TEXT NOT NULL
);
CREATE INDEX notes_by_film ON notes (film_id);

-- Label files as they were handed out.
CREATE TABLE labels (
    id TEXT PRIMARY KEY,
    film_id TEXT NOT NULL,
    annotator TEXT NOT NULL,
    body TEXT NOT NULL,
    written_at TEXT NOT NULL
);

CREATE TABLE settings (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
);
