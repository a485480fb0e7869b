-- What was noted of a batch, what went in and what its recipe fixed are never changed, whoever writes. A trigger's body
-- stands on one line, as a statement here ends where a line ends with a semicolon.

CREATE TRIGGER batch_part_never_changes BEFORE UPDATE ON batch_part
    BEGIN SELECT RAISE(ABORT, 'what went into a batch is written once and never changed'); END;

CREATE TRIGGER batch_part_never_goes BEFORE DELETE ON batch_part
    BEGIN SELECT RAISE(ABORT, 'what went into a batch is written once and never removed'); END;

-- INSERT OR REPLACE removes rows without waking the trigger above.
CREATE TRIGGER batch_part_never_replaced BEFORE INSERT ON batch_part
    WHEN EXISTS (SELECT 1 FROM batch_part WHERE (batch_id = NEW.batch_id AND part = NEW.part) OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(IGNORE); END;

CREATE TRIGGER batch_figure_never_changes BEFORE UPDATE ON batch_figure
    BEGIN SELECT RAISE(ABORT, 'the figures of a batch are written once and never changed'); END;

CREATE TRIGGER batch_figure_never_goes BEFORE DELETE ON batch_figure
    BEGIN SELECT RAISE(ABORT, 'the figures of a batch are written once and never removed'); END;

-- INSERT OR REPLACE removes rows without waking the trigger above.
CREATE TRIGGER batch_figure_never_replaced BEFORE INSERT ON batch_figure
    WHEN EXISTS (SELECT 1 FROM batch_figure WHERE (batch_id = NEW.batch_id AND figure = NEW.figure) OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(IGNORE); END;

CREATE TRIGGER batch_note_never_changes BEFORE UPDATE ON batch_note
    BEGIN SELECT RAISE(ABORT, 'the notes of a batch are append-only: a note is never changed'); END;

CREATE TRIGGER batch_note_never_goes BEFORE DELETE ON batch_note
    BEGIN SELECT RAISE(ABORT, 'the notes of a batch are append-only: a note is never removed'); END;

-- INSERT OR REPLACE removes rows without waking the trigger above.
CREATE TRIGGER batch_note_never_replaced BEFORE INSERT ON batch_note
    WHEN EXISTS (SELECT 1 FROM batch_note WHERE (id = NEW.id) OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(IGNORE); END;

CREATE TRIGGER batch_note_reversed_only_once BEFORE INSERT ON batch_note
    WHEN NEW.reverses IS NOT NULL
        AND EXISTS (SELECT 1 FROM batch_note WHERE reverses = NEW.reverses AND id <> NEW.id)
    BEGIN SELECT RAISE(ABORT, 'batch_note_reversed_once: that note is reversed already'); END;
