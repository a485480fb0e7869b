-- The ledger is append-only in the database itself, whoever writes to it. A trigger's body stands on one line,
-- as a statement here ends where a line ends with a semicolon.

CREATE TRIGGER entry_never_changes BEFORE UPDATE ON entry
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only: an entry is never changed'); END;

CREATE TRIGGER entry_never_goes BEFORE DELETE ON entry
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only: an entry is never removed'); END;

-- INSERT OR REPLACE removes rows without waking the trigger above, so what it would replace is guarded here.
-- An entry of a known id is the same entry and is passed over.
CREATE TRIGGER entry_never_replaced BEFORE INSERT ON entry
    WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id OR rowid = NEW.rowid)
    BEGIN SELECT RAISE(IGNORE); END;

CREATE TRIGGER entry_reversed_only_once BEFORE INSERT ON entry
    WHEN NEW.reverses IS NOT NULL AND EXISTS (SELECT 1 FROM entry WHERE reverses = NEW.reverses AND id <> NEW.id)
    BEGIN SELECT RAISE(ABORT, 'entry_reversed_once: that entry is reversed already'); END;
