-- How a supplier sells a pack: only so many together (a case), and no fewer than so many.

ALTER TABLE pack ADD COLUMN sold_by BIGINT NOT NULL DEFAULT 1 CHECK (sold_by BETWEEN 1 AND 1000);

ALTER TABLE pack ADD COLUMN least BIGINT NOT NULL DEFAULT 1 CHECK (least BETWEEN 1 AND 1000);
