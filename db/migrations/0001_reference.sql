-- What the trade knows in general: one table per file of db/reference, under the same names.
-- An empty cell is NULL ("not known"), except in a key, where it is an empty text.
-- Columns beginning with shop_ are the shop's own and survive a refresh of the reference data.

CREATE TABLE sources (
    key TEXT NOT NULL PRIMARY KEY,
    title TEXT,
    kind TEXT,
    status TEXT
);

CREATE TABLE pictograms (
    code TEXT NOT NULL PRIMARY KEY,
    symbol TEXT,
    means TEXT
);

CREATE TABLE families (
    family_id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    spread_faces TEXT,
    reversible_with TEXT,
    creep TEXT,
    source TEXT,
    confidence TEXT
);

CREATE TABLE family_figures (
    family_id TEXT NOT NULL REFERENCES families (family_id),
    figure TEXT NOT NULL,
    value DOUBLE PRECISION,
    low DOUBLE PRECISION,
    high DOUBLE PRECISION,
    text TEXT,
    unit TEXT,
    source TEXT,
    confidence TEXT,
    PRIMARY KEY (family_id, figure),
    CHECK (low <= high)
);

CREATE TABLE classes (
    class_id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    "group" TEXT,
    family TEXT REFERENCES families (family_id),
    form TEXT,
    vessel TEXT,
    counted_in TEXT NOT NULL CHECK (counted_in IN ('g', 'ml', 'each', 'm')),
    frost TEXT,
    moisture TEXT,
    hazard_note TEXT,
    spoilage_signs TEXT,
    bench_test TEXT,
    source TEXT,
    confidence TEXT
);

CREATE TABLE class_figures (
    class_id TEXT NOT NULL REFERENCES classes (class_id),
    figure TEXT NOT NULL,
    value DOUBLE PRECISION,
    low DOUBLE PRECISION,
    high DOUBLE PRECISION,
    text TEXT,
    unit TEXT,
    source TEXT,
    confidence TEXT,
    basis TEXT,
    shop_value DOUBLE PRECISION,
    shop_low DOUBLE PRECISION,
    shop_high DOUBLE PRECISION,
    shop_changed_ms BIGINT,
    PRIMARY KEY (class_id, figure),
    CHECK (low <= high),
    CHECK (shop_low <= shop_high)
);

CREATE TABLE class_hazards (
    class_id TEXT NOT NULL REFERENCES classes (class_id),
    pictogram TEXT NOT NULL,
    note TEXT,
    PRIMARY KEY (class_id, pictogram)
);

CREATE TABLE joints (
    joint TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL
);

CREATE TABLE joint_fitness (
    joint TEXT NOT NULL REFERENCES joints (joint),
    family_id TEXT NOT NULL REFERENCES families (family_id),
    rating TEXT NOT NULL CHECK (rating IN ('right', 'possible', 'wrong')),
    reason TEXT,
    source TEXT,
    confidence TEXT,
    PRIMARY KEY (joint, family_id)
);

CREATE TABLE residues (
    residue TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL
);

CREATE TABLE incompatibilities (
    under TEXT NOT NULL REFERENCES residues (residue),
    "over" TEXT NOT NULL REFERENCES families (family_id),
    result TEXT,
    source TEXT,
    severity TEXT NOT NULL CHECK (severity IN ('pass', 'warn', 'stop')),
    PRIMARY KEY (under, "over")
);

CREATE TABLE recipes (
    recipe_id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    "group" TEXT,
    note TEXT,
    based_on TEXT REFERENCES recipes (recipe_id) DEFERRABLE INITIALLY DEFERRED
);

CREATE TABLE recipe_figures (
    recipe_id TEXT NOT NULL REFERENCES recipes (recipe_id),
    item TEXT NOT NULL,
    parameter TEXT NOT NULL,
    value DOUBLE PRECISION,
    low DOUBLE PRECISION,
    high DOUBLE PRECISION,
    unit TEXT,
    source TEXT,
    confidence TEXT,
    PRIMARY KEY (recipe_id, item, parameter)
);

CREATE TABLE recipe_steps (
    recipe_id TEXT NOT NULL REFERENCES recipes (recipe_id),
    step BIGINT NOT NULL CHECK (step >= 1),
    text TEXT NOT NULL,
    PRIMARY KEY (recipe_id, step)
);

CREATE TABLE job_types (
    job_type_id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    family_id TEXT REFERENCES families (family_id),
    typical_class TEXT REFERENCES classes (class_id),
    counted_in TEXT NOT NULL CHECK (counted_in IN ('g', 'ml', 'each', 'm')),
    area_cm2 DOUBLE PRECISION,
    spread_g_per_m2 DOUBLE PRECISION,
    net DOUBLE PRECISION,
    waste_fraction DOUBLE PRECISION,
    fixed_loss DOUBLE PRECISION,
    extra DOUBLE PRECISION,
    estimate DOUBLE PRECISION,
    note TEXT,
    source TEXT,
    confidence TEXT,
    joint TEXT REFERENCES joints (joint),
    shop_per_month DOUBLE PRECISION CHECK (shop_per_month >= 0),
    shop_changed_ms BIGINT
);

CREATE TABLE job_type_parts (
    job_type_id TEXT NOT NULL REFERENCES job_types (job_type_id),
    part TEXT NOT NULL,
    area_cm2 DOUBLE PRECISION,
    count DOUBLE PRECISION,
    PRIMARY KEY (job_type_id, part)
);

CREATE TABLE job_type_consumables (
    job_type_id TEXT NOT NULL REFERENCES job_types (job_type_id),
    item TEXT NOT NULL,
    class_id TEXT REFERENCES classes (class_id),
    amount DOUBLE PRECISION CHECK (amount >= 0),
    unit TEXT CHECK (unit IN ('each', 'pr', 'm', 'g', 'ml', 'sheet')),
    PRIMARY KEY (job_type_id, item)
);

CREATE TABLE cautions (
    caution_id TEXT NOT NULL PRIMARY KEY,
    applies_to TEXT NOT NULL,
    moment TEXT NOT NULL,
    text TEXT NOT NULL,
    source TEXT,
    confidence TEXT
);

CREATE TABLE general_figures (
    topic TEXT NOT NULL,
    figure TEXT NOT NULL,
    value DOUBLE PRECISION,
    low DOUBLE PRECISION,
    high DOUBLE PRECISION,
    text TEXT,
    unit TEXT,
    source TEXT,
    confidence TEXT,
    PRIMARY KEY (topic, figure)
);
