-- What was mixed: a pot of hot glue, a cup of epoxy, a jar of shellac. A batch, its parts and its figures are written
-- once; what happens to it is a list of notes that only grows. What is left of it is the sum of its notes.

CREATE TABLE batch (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    label TEXT NOT NULL UNIQUE CHECK (label <> ''),
    recipe_id TEXT NOT NULL REFERENCES recipes (recipe_id),
    name TEXT NOT NULL CHECK (name <> ''),
    made_ms BIGINT NOT NULL,
    amount_milli BIGINT NOT NULL CHECK (amount_milli > 0),
    dimension TEXT NOT NULL CHECK (dimension IN ('g', 'ml')),
    place_id TEXT REFERENCES place (id),
    who TEXT NOT NULL,
    created_ms BIGINT NOT NULL,
    -- Counts the acts that took the batch; raising it is also the lock against a second tablet.
    rev BIGINT NOT NULL DEFAULT 0
);

CREATE INDEX batch_made ON batch (made_ms);

-- A part that comes from the shelf names its container and the ledger's entry that took it out; water has neither. A
-- part from two containers is two rows.
CREATE TABLE batch_part (
    batch_id TEXT NOT NULL REFERENCES batch (id),
    part BIGINT NOT NULL CHECK (part >= 1),
    key TEXT NOT NULL CHECK (key <> ''),
    what TEXT NOT NULL,
    amount_milli BIGINT NOT NULL CHECK (amount_milli > 0),
    dimension TEXT NOT NULL CHECK (dimension IN ('g', 'ml', 'each', 'm')),
    container_id TEXT REFERENCES container (id),
    entry_id TEXT UNIQUE REFERENCES entry (id) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY (batch_id, part),
    CHECK ((container_id IS NULL) = (entry_id IS NULL))
);

CREATE INDEX batch_part_container ON batch_part (container_id);

-- What the recipe and the label fixed for it: ratio, grade, form, temperatures, pot life.
CREATE TABLE batch_figure (
    batch_id TEXT NOT NULL REFERENCES batch (id),
    figure TEXT NOT NULL CHECK (figure <> ''),
    low DOUBLE PRECISION,
    high DOUBLE PRECISION,
    text TEXT NOT NULL,
    unit TEXT NOT NULL,
    PRIMARY KEY (batch_id, figure),
    CHECK (low <= high),
    CHECK ((low IS NULL) = (high IS NULL))
);

CREATE TABLE batch_note (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    batch_id TEXT NOT NULL REFERENCES batch (id),
    -- The act it was part of; the ledger's entries of the same act carry the same.
    act_id TEXT NOT NULL CHECK (act_id <> ''),
    kind TEXT NOT NULL CHECK (kind IN ('mixed', 'soaked', 'heat_on', 'heat_read', 'heat_off', 'topped_up', 'weighed',
        'chilled', 'frozen', 'used', 'used_up', 'spoiled', 'thrown_away', 'remark', 'reversed')),
    at_ms BIGINT NOT NULL,
    recorded_ms BIGINT NOT NULL,
    -- Orders what was recorded in the same millisecond.
    seq BIGINT NOT NULL,
    delta_milli BIGINT NOT NULL,
    -- Of the glue, in degrees Celsius.
    temperature DOUBLE PRECISION CHECK (temperature BETWEEN -90 AND 300),
    -- Of vessel and contents together, in milligrams.
    weight_milli BIGINT CHECK (weight_milli > 0),
    place_id TEXT REFERENCES place (id),
    job_id TEXT REFERENCES job (id),
    reverses TEXT CHECK (reverses <> id) REFERENCES batch_note (id) DEFERRABLE INITIALLY DEFERRED,
    note TEXT NOT NULL,
    who TEXT NOT NULL,
    device TEXT NOT NULL,
    CHECK ((kind = 'reversed') = (reverses IS NOT NULL)),
    CHECK (kind <> 'mixed' OR delta_milli > 0),
    CHECK (kind NOT IN ('used', 'used_up', 'thrown_away') OR delta_milli <= 0),
    CHECK (kind IN ('mixed', 'used', 'used_up', 'thrown_away', 'reversed') OR delta_milli = 0),
    CHECK (kind <> 'heat_read' OR temperature IS NOT NULL),
    CHECK (kind <> 'weighed' OR weight_milli IS NOT NULL)
);

CREATE INDEX batch_note_batch ON batch_note (batch_id, at_ms, recorded_ms, seq);

CREATE INDEX batch_note_act ON batch_note (act_id);

CREATE UNIQUE INDEX batch_note_reversed_once ON batch_note (reverses) WHERE reverses IS NOT NULL;

CREATE UNIQUE INDEX batch_note_mixed_once ON batch_note (batch_id) WHERE kind = 'mixed';
