-- The record of a glue-up is written once, whoever writes to it. A trigger's body stands on one line, as a statement
-- here ends where a line ends with a semicolon.

CREATE TRIGGER glue_up_never_changes BEFORE UPDATE ON glue_up
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never changed'); END;

CREATE TRIGGER glue_up_never_goes BEFORE DELETE ON glue_up
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never removed'); END;

CREATE TRIGGER glue_up_never_replaced BEFORE INSERT ON glue_up
    WHEN EXISTS (SELECT 1 FROM glue_up WHERE id = NEW.id OR act_id = NEW.act_id OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is written once'); END;

CREATE TRIGGER glue_up_fact_never_changes BEFORE UPDATE ON glue_up_fact
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never changed'); END;

CREATE TRIGGER glue_up_fact_never_goes BEFORE DELETE ON glue_up_fact
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never removed'); END;

CREATE TRIGGER glue_up_fact_never_replaced BEFORE INSERT ON glue_up_fact
    WHEN EXISTS (SELECT 1 FROM glue_up_fact WHERE glue_up_id = NEW.glue_up_id AND fact = NEW.fact OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is written once'); END;

CREATE TRIGGER glue_up_gate_never_changes BEFORE UPDATE ON glue_up_gate
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never changed'); END;

CREATE TRIGGER glue_up_gate_never_goes BEFORE DELETE ON glue_up_gate
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never removed'); END;

CREATE TRIGGER glue_up_gate_never_replaced BEFORE INSERT ON glue_up_gate
    WHEN EXISTS (SELECT 1 FROM glue_up_gate WHERE glue_up_id = NEW.glue_up_id AND step = NEW.step OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is written once'); END;

CREATE TRIGGER glue_up_container_never_changes BEFORE UPDATE ON glue_up_container
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never changed'); END;

CREATE TRIGGER glue_up_container_never_goes BEFORE DELETE ON glue_up_container
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never removed'); END;

CREATE TRIGGER glue_up_container_never_replaced BEFORE INSERT ON glue_up_container
    WHEN EXISTS (SELECT 1 FROM glue_up_container WHERE glue_up_id = NEW.glue_up_id AND container_id = NEW.container_id OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is written once'); END;

CREATE TRIGGER glue_up_photo_never_changes BEFORE UPDATE ON glue_up_photo
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never changed'); END;

CREATE TRIGGER glue_up_photo_never_goes BEFORE DELETE ON glue_up_photo
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never removed'); END;

CREATE TRIGGER glue_up_photo_never_replaced BEFORE INSERT ON glue_up_photo
    WHEN EXISTS (SELECT 1 FROM glue_up_photo WHERE glue_up_id = NEW.glue_up_id AND step = NEW.step OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is written once'); END;

CREATE TRIGGER glue_up_undone_never_changes BEFORE UPDATE ON glue_up_undone
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never changed'); END;

CREATE TRIGGER glue_up_undone_never_goes BEFORE DELETE ON glue_up_undone
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is never removed'); END;

CREATE TRIGGER glue_up_undone_never_replaced BEFORE INSERT ON glue_up_undone
    WHEN EXISTS (SELECT 1 FROM glue_up_undone WHERE glue_up_id = NEW.glue_up_id OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(ABORT, 'the record of a glue-up is written once'); END;
