-- What was noted of a batch, what went in and what its recipe fixed are never changed, whoever writes. A function's body
-- stands on one line, as a statement here ends where a line ends with a semicolon.

CREATE FUNCTION batch_refuse() RETURNS trigger LANGUAGE plpgsql AS
    $$ BEGIN RAISE EXCEPTION 'what is written of a batch is append-only: it is never changed or removed'; END $$;

CREATE TRIGGER batch_part_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON batch_part
    FOR EACH STATEMENT EXECUTE FUNCTION batch_refuse();

ALTER TABLE batch_part ENABLE ALWAYS TRIGGER batch_part_never_changes;

CREATE TRIGGER batch_figure_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON batch_figure
    FOR EACH STATEMENT EXECUTE FUNCTION batch_refuse();

ALTER TABLE batch_figure ENABLE ALWAYS TRIGGER batch_figure_never_changes;

CREATE TRIGGER batch_note_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON batch_note
    FOR EACH STATEMENT EXECUTE FUNCTION batch_refuse();

ALTER TABLE batch_note ENABLE ALWAYS TRIGGER batch_note_never_changes;
