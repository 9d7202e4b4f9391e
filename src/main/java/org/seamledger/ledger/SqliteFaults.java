package org.seamledger.ledger;

import static org.seamledger.ledger.LedgerException.Reason.FULL;
import static org.seamledger.ledger.LedgerException.Reason.IN_USE;
import static org.seamledger.ledger.LedgerException.Reason.READ_ONLY;
import static org.seamledger.ledger.LedgerException.Reason.STORAGE;

import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;

/** What SQLite's failures mean, by its primary result codes. */
final class SqliteFaults {

  private static final int PRIMARY = 0xff;

  private SqliteFaults() {
  }

  static StorageFault of(SQLException e) {
    return switch (SQLiteErrorCode.getErrorCode(e.getErrorCode() & PRIMARY)) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          StorageFault.lasting(IN_USE, "holds a ledger.db that another program keeps locked; end that program.");
      case SQLITE_READONLY, SQLITE_PERM ->
          StorageFault.lasting(READ_ONLY, "holds a ledger.db that this user may not write; give the right to it.");
      case SQLITE_CANTOPEN, SQLITE_AUTH ->
          StorageFault.lasting(STORAGE, "cannot be used: this user may not open ledger.db there, or it is no file; give the right to it.");
      case SQLITE_FULL ->
          StorageFault.lasting(FULL, "has no room left on its disk; make room there, nothing was kept of what was under way.");
      case SQLITE_NOTADB ->
          StorageFault.lasting(STORAGE, "holds a ledger.db that is no database; nothing was written to it; name another folder.");
      case SQLITE_CORRUPT -> StorageFault.lasting(STORAGE, "holds a ledger.db that is damaged; restore a backup.");
      case SQLITE_IOERR -> StorageFault.lasting(STORAGE, "cannot be used: its disk fails to read or write; see the machine's log.");
      default -> StorageFault.lasting(STORAGE, "failed (SQLite's result code " + e.getErrorCode() + ").");
    };
  }
}
