-- Order lists as they were made, and what became of each line. What has arrived is not kept here: it follows from
-- the containers booked in. Jobs that are planned with a date.

CREATE TABLE order_list (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    month TEXT NOT NULL CHECK (LENGTH(month) = 10),
    made_ms BIGINT NOT NULL,
    service_percent DOUBLE PRECISION NOT NULL CHECK (service_percent > 0 AND service_percent < 100),
    device TEXT NOT NULL
);

CREATE TABLE order_line (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    list_id TEXT NOT NULL REFERENCES order_list (id),
    seq BIGINT NOT NULL,
    material_id TEXT NOT NULL REFERENCES material (id),
    pack_id TEXT NOT NULL REFERENCES pack (id),
    pack_name TEXT NOT NULL,
    supplier TEXT NOT NULL,
    pieces BIGINT NOT NULL CHECK (pieces >= 1),
    amount_milli BIGINT NOT NULL CHECK (amount_milli > 0),
    need_milli BIGINT NOT NULL CHECK (need_milli >= 0),
    usable_milli BIGINT NOT NULL CHECK (usable_milli >= 0),
    dimension TEXT NOT NULL CHECK (dimension IN ('g', 'ml', 'each', 'm')),
    price_minor BIGINT CHECK (price_minor >= 0),
    currency TEXT CHECK (LENGTH(currency) = 3),
    lead_days DOUBLE PRECISION NOT NULL CHECK (lead_days >= 0),
    why TEXT NOT NULL,
    CHECK ((price_minor IS NULL) = (currency IS NULL))
);

CREATE INDEX order_line_list ON order_line (list_id, seq);

CREATE INDEX order_line_pack ON order_line (pack_id);

CREATE TABLE order_event (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    line_id TEXT NOT NULL REFERENCES order_line (id),
    -- counted: another number is wanted; ordered; recalled: not ordered after all; closed: the rest will not come.
    kind TEXT NOT NULL CHECK (kind IN ('counted', 'ordered', 'recalled', 'closed')),
    pieces BIGINT CHECK (pieces BETWEEN 0 AND 10000),
    at_ms BIGINT NOT NULL,
    recorded_ms BIGINT NOT NULL,
    seq BIGINT NOT NULL,
    device TEXT NOT NULL,
    CHECK ((kind = 'counted') = (pieces IS NOT NULL))
);

CREATE INDEX order_event_line ON order_event (line_id, recorded_ms, seq);

CREATE TABLE planned_job (
    id TEXT NOT NULL PRIMARY KEY CHECK (id <> ''),
    job_type_id TEXT NOT NULL REFERENCES job_types (job_type_id),
    day TEXT NOT NULL CHECK (LENGTH(day) = 10),
    pieces BIGINT NOT NULL CHECK (pieces BETWEEN 1 AND 1000),
    piece TEXT NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('open', 'done', 'dropped')),
    changed_ms BIGINT NOT NULL
);
