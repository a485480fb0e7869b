-- What is known of the temperature of a place: readings, what is taken where there are none, and another place
-- that it goes with.

-- A random number after every change of a place's readings, so that a copy of them in memory knows that it is old.
ALTER TABLE place ADD COLUMN readings_mark BIGINT NOT NULL DEFAULT 0;

-- All readings of a place in one month of UTC, packed by the program (src/store/readingspack.h). First and last are
-- seconds since 1970; the checksum is that of the packed bytes.
CREATE TABLE reading_month (
    place_id TEXT NOT NULL REFERENCES place (id),
    month TEXT NOT NULL CHECK (LENGTH(month) = 7),
    readings BIGINT NOT NULL CHECK (readings > 0),
    first_s BIGINT NOT NULL,
    last_s BIGINT NOT NULL,
    checksum BIGINT NOT NULL,
    packed BYTEA NOT NULL,
    PRIMARY KEY (place_id, month),
    CHECK (first_s <= last_s)
);

-- Quarter 0 is December to February. The range over the year stands with the place.
CREATE TABLE place_range (
    place_id TEXT NOT NULL REFERENCES place (id),
    quarter BIGINT NOT NULL CHECK (quarter BETWEEN 0 AND 3),
    low DOUBLE PRECISION NOT NULL,
    high DOUBLE PRECISION NOT NULL,
    PRIMARY KEY (place_id, quarter),
    CHECK (low <= high)
);

CREATE TABLE place_follow (
    place_id TEXT NOT NULL PRIMARY KEY REFERENCES place (id),
    follows_id TEXT NOT NULL REFERENCES place (id),
    warmer DOUBLE PRECISION NOT NULL,
    damped DOUBLE PRECISION NOT NULL CHECK (damped BETWEEN 0 AND 1),
    CHECK (place_id <> follows_id)
);
