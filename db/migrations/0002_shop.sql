-- What this shop buys, where it stands, what it works on.
-- Ids are UUIDs made by the device. Amounts are whole thousandths, money whole minor units, moments
-- milliseconds of UTC, dates ISO 8601, yes and no are 1 and 0.

CREATE TABLE setting (
    key TEXT NOT NULL PRIMARY KEY,
    value TEXT NOT NULL
);

CREATE TABLE material (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    name TEXT NOT NULL CHECK (name <> ''),
    class_id TEXT REFERENCES classes (class_id),
    article_code TEXT NOT NULL,
    partner_id TEXT REFERENCES material (id) DEFERRABLE INITIALLY DEFERRED,
    vessel TEXT NOT NULL,
    note TEXT NOT NULL
);

CREATE TABLE material_figure (
    material_id TEXT NOT NULL REFERENCES material (id),
    figure TEXT NOT NULL CHECK (figure <> ''),
    value DOUBLE PRECISION,
    low DOUBLE PRECISION,
    high DOUBLE PRECISION,
    text TEXT NOT NULL,
    unit TEXT NOT NULL,
    source TEXT NOT NULL,
    confidence TEXT NOT NULL,
    basis TEXT NOT NULL,
    PRIMARY KEY (material_id, figure),
    CHECK (low <= high)
);

CREATE TABLE pack (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    material_id TEXT NOT NULL REFERENCES material (id),
    gtin14 TEXT UNIQUE CHECK (LENGTH(gtin14) = 14),
    amount_milli BIGINT NOT NULL CHECK (amount_milli > 0),
    dimension TEXT NOT NULL CHECK (dimension IN ('g', 'ml', 'each', 'm')),
    price_minor BIGINT CHECK (price_minor >= 0),
    currency TEXT CHECK (LENGTH(currency) = 3),
    supplier TEXT NOT NULL,
    lead_days DOUBLE PRECISION CHECK (lead_days >= 0),
    CHECK ((price_minor IS NULL) = (currency IS NULL))
);

CREATE INDEX pack_material ON pack (material_id);

CREATE TABLE place (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    name TEXT NOT NULL UNIQUE CHECK (name <> ''),
    assumed_low DOUBLE PRECISION,
    assumed_high DOUBLE PRECISION,
    note TEXT NOT NULL,
    CHECK (assumed_low <= assumed_high),
    CHECK ((assumed_low IS NULL) = (assumed_high IS NULL))
);

CREATE TABLE job (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    job_type_id TEXT REFERENCES job_types (job_type_id),
    name TEXT NOT NULL,
    piece TEXT NOT NULL,
    at_ms BIGINT
);
