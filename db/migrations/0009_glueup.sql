-- What is kept of a glue-up besides what it used: what was said, how the check and the stock stood then, and
-- photographs. A row is written once, with the entries of the same act, and never changed; an undoing adds one of
-- its own.

CREATE TABLE glue_up (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    act_id TEXT NOT NULL UNIQUE CHECK (act_id <> ''),
    job_id TEXT NOT NULL REFERENCES job (id),
    at_ms BIGINT NOT NULL,
    recorded_ms BIGINT NOT NULL,
    -- The client's piece and the work as they were called then; a job's row may be changed later.
    piece TEXT NOT NULL CHECK (piece <> ''),
    job_name TEXT NOT NULL,
    pieces BIGINT NOT NULL CHECK (pieces >= 1),
    -- NULL for a finish, which is of no family.
    family_id TEXT REFERENCES families (family_id),
    glue TEXT NOT NULL,
    answer TEXT NOT NULL CHECK (answer IN ('go', 'fix_first', 'stop', 'not_known')),
    first_fix TEXT NOT NULL,
    comes_apart TEXT NOT NULL,
    note TEXT NOT NULL,
    device TEXT NOT NULL
);

CREATE INDEX glue_up_job ON glue_up (job_id);

-- One thing said or measured: a number in the unit of its kind, or a word. What was not said has no row.
CREATE TABLE glue_up_fact (
    glue_up_id TEXT NOT NULL REFERENCES glue_up (id),
    fact TEXT NOT NULL CHECK (fact <> ''),
    value DOUBLE PRECISION,
    text TEXT NOT NULL,
    PRIMARY KEY (glue_up_id, fact),
    CHECK ((value IS NULL) <> (text = ''))
);

CREATE TABLE glue_up_gate (
    glue_up_id TEXT NOT NULL REFERENCES glue_up (id),
    step BIGINT NOT NULL CHECK (step >= 1),
    gate TEXT NOT NULL CHECK (gate <> ''),
    name TEXT NOT NULL,
    result TEXT NOT NULL CHECK (result IN ('pass', 'warn', 'stop', 'unknown')),
    text TEXT NOT NULL,
    PRIMARY KEY (glue_up_id, step)
);

-- How each container that was used stood then.
CREATE TABLE glue_up_container (
    glue_up_id TEXT NOT NULL REFERENCES glue_up (id),
    container_id TEXT NOT NULL REFERENCES container (id),
    verdict TEXT NOT NULL CHECK (verdict IN ('good', 'test_first', 'do_not_use', 'not_known')),
    reason TEXT NOT NULL,
    -- NULL: not known.
    frost_events BIGINT CHECK (frost_events >= 0),
    PRIMARY KEY (glue_up_id, container_id)
);

-- Photographs, each a JPEG made small by the program.
CREATE TABLE glue_up_photo (
    glue_up_id TEXT NOT NULL REFERENCES glue_up (id),
    step BIGINT NOT NULL CHECK (step >= 1),
    jpeg BYTEA NOT NULL CHECK (LENGTH(jpeg) BETWEEN 1 AND 1500000),
    PRIMARY KEY (glue_up_id, step)
);

CREATE TABLE glue_up_undone (
    glue_up_id TEXT NOT NULL PRIMARY KEY REFERENCES glue_up (id),
    act_id TEXT NOT NULL CHECK (act_id <> ''),
    at_ms BIGINT NOT NULL,
    device TEXT NOT NULL
);
