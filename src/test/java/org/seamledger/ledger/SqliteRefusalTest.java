package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Why a data folder cannot be used, word for word. */
class SqliteRefusalTest {

  @TempDir
  private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("ledger.db");
  }

  private void make(String... statements) throws SQLException {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file); Statement s = c.createStatement()) {
      for (String statement : statements) {
        s.execute(statement);
      }
    }
  }

  private void refused(String text) {
    assertThatThrownBy(() -> Store.open(folder, Optional.empty())).isInstanceOf(LedgerException.class)
        .hasMessage("The data folder " + folder + " " + text);
  }

  @Test
  void aDatabaseOfAnotherProgramStaysAsItIs() throws SQLException, IOException {
    make("CREATE TABLE moz_places(id INTEGER PRIMARY KEY)", "CREATE TABLE project(id TEXT)");
    byte[] before = Files.readAllBytes(file);
    refused("holds tables of another program (moz_places, project); nothing was written to it; name another folder.");
    assertThat(file).hasBinaryContent(before);
  }

  @Test
  void tablesThatAreNamedAsOursAreNotOursForThat() throws SQLException {
    make("CREATE TABLE project(id TEXT, name TEXT, budget TEXT)");
    refused("holds tables of another program (project); nothing was written to it; name another folder.");
  }

  @Test
  void aFileThatIsNoDatabaseStaysAsItIs() throws IOException {
    String text = "Boat house, chapel, school, in this order. ".repeat(50);
    Files.writeString(file, text);
    refused("holds a ledger.db that is no database; nothing was written to it; name another folder.");
    assertThat(file).hasContent(text);
  }

  @Test
  void aFolderInItsPlace() throws IOException {
    Files.createDirectory(file);
    refused("cannot be used: this user may not open ledger.db there, or it is no file; give the right to it.");
  }

  @Test
  void aFileInThePlaceOfTheFolder() throws IOException {
    Files.writeString(file, "");
    assertThatThrownBy(() -> Store.open(file, Optional.empty()))
        .hasMessage("The data folder " + file + " cannot be used: " + file + " is a file and no folder.");
  }

  /** Result codes: sqlite.org/rescode.html. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "5    | IN_USE    | holds a ledger.db that another program keeps locked; end that program.",
      "8    | READ_ONLY | holds a ledger.db that this user may not write; give the right to it.",
      "1032 | READ_ONLY | holds a ledger.db that this user may not write; give the right to it.",
      "11   | STORAGE   | holds a ledger.db that is damaged; restore a backup.",
      "13   | FULL      | has no room left on its disk; make room there, nothing was kept of what was under way.",
      "778  | STORAGE   | cannot be used: its disk fails to read or write; see the machine's log.",
      "1    | STORAGE   | failed (SQLite's result code 1)."})
  void eachResultCodeHasItsWords(int code, LedgerException.Reason reason, String text) {
    StorageFault fault = SqliteFaults.of(new SQLException("INSERT INTO project", "", code));
    assertThat(fault.reason()).isEqualTo(reason);
    assertThat(fault.text()).isEqualTo(text);
  }
}
