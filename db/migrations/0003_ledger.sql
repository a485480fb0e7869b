-- The containers, and the ledger of everything that happened to them. An amount is the sum of its entries.

CREATE TABLE container (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    label TEXT NOT NULL UNIQUE CHECK (label <> ''),
    material_id TEXT NOT NULL REFERENCES material (id),
    pack_id TEXT REFERENCES pack (id),
    lot TEXT NOT NULL,
    serial TEXT NOT NULL,
    made TEXT CHECK (LENGTH(made) = 10),
    printed TEXT CHECK (LENGTH(printed) = 10),
    printed_is_use_by BIGINT NOT NULL CHECK (printed_is_use_by IN (0, 1)),
    found_undated BIGINT NOT NULL CHECK (found_undated IN (0, 1)),
    capacity_milli BIGINT NOT NULL CHECK (capacity_milli >= 0),
    dimension TEXT NOT NULL CHECK (dimension IN ('g', 'ml', 'each', 'm')),
    vessel TEXT NOT NULL,
    parent_id TEXT REFERENCES container (id) DEFERRABLE INITIALLY DEFERRED,
    price_minor BIGINT CHECK (price_minor >= 0),
    currency TEXT CHECK (LENGTH(currency) = 3),
    created_ms BIGINT NOT NULL,
    -- Counts the acts that took the container; raising it is also the lock against a second tablet.
    rev BIGINT NOT NULL DEFAULT 0,
    CHECK ((price_minor IS NULL) = (currency IS NULL))
);

CREATE INDEX container_material_lot ON container (material_id, lot);

CREATE TABLE entry (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    act_id TEXT NOT NULL CHECK (act_id <> ''),
    kind TEXT NOT NULL CHECK (kind IN ('arrived', 'opened', 'used', 'counted', 'moved', 'decanted', 'mixed',
        'tested', 'retired', 'held', 'released', 'reversed')),
    container_id TEXT REFERENCES container (id),
    at_ms BIGINT NOT NULL,
    recorded_ms BIGINT NOT NULL,
    -- Orders what was recorded in the same millisecond.
    seq BIGINT NOT NULL,
    delta_milli BIGINT NOT NULL,
    place_id TEXT REFERENCES place (id),
    job_id TEXT REFERENCES job (id),
    other_id TEXT REFERENCES container (id),
    lot_material_id TEXT REFERENCES material (id),
    lot TEXT NOT NULL,
    passed BIGINT CHECK (passed IN (0, 1)),
    wood_failure DOUBLE PRECISION CHECK (wood_failure BETWEEN 0 AND 100),
    grainy BIGINT NOT NULL CHECK (grainy IN (0, 1)),
    reverses TEXT CHECK (reverses <> id) REFERENCES entry (id) DEFERRABLE INITIALLY DEFERRED,
    note TEXT NOT NULL,
    device TEXT NOT NULL,
    CHECK (container_id IS NOT NULL OR lot_material_id IS NOT NULL),
    CHECK (container_id IS NOT NULL OR kind IN ('held', 'released', 'reversed')),
    CHECK (container_id IS NULL OR kind NOT IN ('held', 'released')),
    CHECK (container_id IS NOT NULL OR delta_milli = 0),
    CHECK ((kind = 'reversed') = (reverses IS NOT NULL)),
    CHECK (kind <> 'tested' OR passed IS NOT NULL),
    CHECK (kind <> 'arrived' OR delta_milli >= 0),
    CHECK (kind NOT IN ('used', 'retired', 'tested') OR delta_milli <= 0),
    CHECK (kind NOT IN ('opened', 'moved') OR delta_milli = 0)
);

CREATE INDEX entry_container ON entry (container_id, at_ms, recorded_ms, seq);

CREATE INDEX entry_act ON entry (act_id);

CREATE INDEX entry_lot ON entry (lot_material_id, lot) WHERE container_id IS NULL;

CREATE INDEX entry_recorded ON entry (recorded_ms, seq);

CREATE UNIQUE INDEX entry_reversed_once ON entry (reverses) WHERE reverses IS NOT NULL;
