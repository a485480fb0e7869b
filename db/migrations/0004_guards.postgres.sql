-- The ledger is append-only in the database itself, whoever writes to it. A function's body stands on one line,
-- as a statement here ends where a line ends with a semicolon.

CREATE FUNCTION entry_refuse() RETURNS trigger LANGUAGE plpgsql AS
    $$ BEGIN RAISE EXCEPTION 'the ledger is append-only: an entry is never changed or removed'; END $$;

CREATE TRIGGER entry_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON entry
    FOR EACH STATEMENT EXECUTE FUNCTION entry_refuse();

-- Held up even for a session that calls itself a replica.
ALTER TABLE entry ENABLE ALWAYS TRIGGER entry_never_changes;
