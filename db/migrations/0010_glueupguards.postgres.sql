-- The record of a glue-up is written once, whoever writes to it. A function's body stands on one line, as a statement
-- here ends where a line ends with a semicolon.

CREATE FUNCTION glue_up_refuse() RETURNS trigger LANGUAGE plpgsql AS
    $$ BEGIN RAISE EXCEPTION 'the record of a glue-up is never changed or removed'; END $$;

CREATE TRIGGER glue_up_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON glue_up
    FOR EACH STATEMENT EXECUTE FUNCTION glue_up_refuse();

ALTER TABLE glue_up ENABLE ALWAYS TRIGGER glue_up_never_changes;

CREATE TRIGGER glue_up_fact_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON glue_up_fact
    FOR EACH STATEMENT EXECUTE FUNCTION glue_up_refuse();

ALTER TABLE glue_up_fact ENABLE ALWAYS TRIGGER glue_up_fact_never_changes;

CREATE TRIGGER glue_up_gate_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON glue_up_gate
    FOR EACH STATEMENT EXECUTE FUNCTION glue_up_refuse();

ALTER TABLE glue_up_gate ENABLE ALWAYS TRIGGER glue_up_gate_never_changes;

CREATE TRIGGER glue_up_container_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON glue_up_container
    FOR EACH STATEMENT EXECUTE FUNCTION glue_up_refuse();

ALTER TABLE glue_up_container ENABLE ALWAYS TRIGGER glue_up_container_never_changes;

CREATE TRIGGER glue_up_photo_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON glue_up_photo
    FOR EACH STATEMENT EXECUTE FUNCTION glue_up_refuse();

ALTER TABLE glue_up_photo ENABLE ALWAYS TRIGGER glue_up_photo_never_changes;

CREATE TRIGGER glue_up_undone_never_changes BEFORE UPDATE OR DELETE OR TRUNCATE ON glue_up_undone
    FOR EACH STATEMENT EXECUTE FUNCTION glue_up_refuse();

ALTER TABLE glue_up_undone ENABLE ALWAYS TRIGGER glue_up_undone_never_changes;
