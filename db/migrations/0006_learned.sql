-- What arrivals taught about the labels of a material.

-- How the made date was last read from a lot code (src/codes/lotdate.h has the words).
CREATE TABLE material_lot_date (
    material_id TEXT NOT NULL PRIMARY KEY REFERENCES material (id),
    read_as TEXT NOT NULL CHECK (LENGTH(read_as) BETWEEN 1 AND 40)
);

-- How many of an item are in a case that has a number of its own.
CREATE TABLE pack_case (
    gtin14 TEXT NOT NULL PRIMARY KEY CHECK (LENGTH(gtin14) = 14),
    pack_id TEXT NOT NULL REFERENCES pack (id),
    pieces BIGINT NOT NULL CHECK (pieces BETWEEN 1 AND 200)
);

-- A photograph of the label, a JPEG made small by the program.
CREATE TABLE material_photo (
    material_id TEXT NOT NULL PRIMARY KEY REFERENCES material (id),
    taken_ms BIGINT NOT NULL,
    jpeg BYTEA NOT NULL CHECK (LENGTH(jpeg) BETWEEN 1 AND 1500000)
);
