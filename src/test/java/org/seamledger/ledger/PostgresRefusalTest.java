package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.ledger.LedgerException.Reason;

/** Why a database cannot be used, word for word: one line each with the cause and what to do. */
@Tag("slow")
class PostgresRefusalTest {

  private static final String SECRET = "four-words-nobody-guesses";

  @TempDir
  private Path folder;

  private LedgerException refusal(String url, String user) {
    PostgresAddress address = PostgresAddress.of(url, Optional.of(user), Optional.of(SECRET));
    return catchThrowableOfType(LedgerException.class, () -> Store.open(folder, Optional.of(address)).close());
  }

  private void refused(String url, String user, Reason reason, String text) {
    LedgerException e = refusal(url, user);
    assertThat(e).hasMessage("The database " + url.replaceFirst("\\?.*", "") + " " + text).hasMessageNotContaining(SECRET);
    assertThat(e.reason()).isEqualTo(reason);
  }

  private static String bare(String url) {
    return url.replaceFirst("\\?.*", "");
  }

  @Test
  void aHostThatNobodyKnows() {
    // .invalid is reserved to be unknown: RFC 6761, section 6.4.
    refused("jdbc:postgresql://database.invalid/roofs", "ida", Reason.UNREACHABLE,
        "cannot be reached: its host is not known; correct the host's name, or see to the network's name service.");
  }

  @Test
  void aPortWhereNobodyListens() {
    refused("jdbc:postgresql://127.0.0.1:1/roofs", "ida", Reason.UNREACHABLE,
        "cannot be reached: the connection is refused; start PostgreSQL there, or correct host and port.");
  }

  @Test
  void aDatabaseThatDoesNotExist() {
    refused("jdbc:postgresql://localhost:" + TestPostgres.port() + "/no_such_roofs", "postgres", Reason.STORAGE,
        "does not exist; create it, empty and with encoding UTF8, or correct its name.");
  }

  @Test
  void aWrongPasswordAndNone() {
    String url = bare(TestPostgres.newUrl());
    TestPostgres.createRole("with_password", "another", "host all with_password all scram-sha-256");
    refused(url, "with_password", Reason.STORAGE,
        "refuses the password of user with_password; correct SEAMLEDGER_DATABASE_USER, and SEAMLEDGER_DATABASE_PASSWORD or a"
            + " password file.");
    PostgresAddress none = PostgresAddress.of(url, Optional.of("with_password"), Optional.empty());
    assertThatThrownBy(() -> Store.open(folder, Optional.of(none))).hasMessage("The database " + url
        + " asks user with_password for a password and none is set; set SEAMLEDGER_DATABASE_USER, and"
        + " SEAMLEDGER_DATABASE_PASSWORD or a password file.");
  }

  @Test
  void aUserWhoIsNotLetIn() {
    String url = bare(TestPostgres.newUrl());
    TestPostgres.createRole("kept_out", SECRET, "host all kept_out all reject");
    assertThat(refusal(url, "kept_out"))
        .hasMessageMatching("The database \\S+ does not let user kept_out in \\(pg_hba.conf rejects connection for host .*\\);"
            + " create the user, or admit it in pg_hba.conf\\.");
    refused(url, "no_such_role", Reason.STORAGE,
        "does not let user no_such_role in (role \"no_such_role\" does not exist); create the user, or admit it in pg_hba.conf.");
  }

  @Test
  void aServerWithoutTlsWhereItIsAskedFor() {
    refused(bare(TestPostgres.newUrl()) + "?sslmode=require", "postgres", Reason.STORAGE,
        "cannot be used: it offers no TLS, which sslmode in its URL asks for; switch ssl on there, or ask for less.");
  }

  @Test
  void aUserWhoMayNotCreateTables() {
    String url = bare(TestPostgres.newUrl());
    TestPostgres.createRole("onlooker", SECRET, "host all onlooker all trust");
    TestPostgres.executeIn(url, "REVOKE CREATE ON SCHEMA public FROM PUBLIC");
    refused(url, "onlooker", Reason.STORAGE,
        "denies user onlooker a right that is needed (permission denied for schema public); make this user its owner.");
    TestPostgres.execute("REVOKE CONNECT ON DATABASE " + url.replaceFirst(".*/", "") + " FROM PUBLIC");
    refused(url, "onlooker", Reason.STORAGE,
        "denies user onlooker a right that is needed (permission denied for database \"" + url.replaceFirst(".*/", "")
            + "\"); make this user its owner.");
  }

  @Test
  void aDatabaseThatTakesNoChanges() {
    String url = bare(TestPostgres.newUrl());
    TestPostgres.execute("ALTER DATABASE " + url.replaceFirst(".*/", "") + " SET default_transaction_read_only = on");
    refused(url, "postgres", Reason.READ_ONLY,
        "takes no changes (a standby, or set to read only); name the primary server, or let it be written.");
  }

  @Test
  void anotherEncodingAndAnOldVersion() {
    TestPostgres.execute("CREATE DATABASE latin ENCODING 'LATIN1' LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0");
    refused("jdbc:postgresql://localhost:" + TestPostgres.port() + "/latin", "postgres", Reason.STORAGE,
        "cannot be used: its encoding is not UTF8; make one with ENCODING 'UTF8'.");
    // Numbers as SHOW server_version_num gives them: PostgreSQL's documentation, "Preset Options".
    PostgresEngine engine = new PostgresEngine(PostgresAddress.of("jdbc:postgresql://h/roofs", Optional.empty(), Optional.empty()));
    assertThatThrownBy(() -> engine.requireVersion("100023", "10.23"))
        .hasMessage("The database jdbc:postgresql://h/roofs cannot be used: it is PostgreSQL 10.23, and version 11 or later is needed.");
    assertThatCode(() -> engine.requireVersion("110000", "11.0")).doesNotThrowAnyException();
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "57P03 | the database system is starting up      | UNREACHABLE | is starting up or shutting down.",
      "53300 | sorry, too many clients already         | UNREACHABLE | has no connection free; see max_connections there, and the"
          + " limits of user and database.",
      "53100 | could not write init file: no space left | FULL       | has no room left on its disk; make room there, nothing was"
          + " kept of what was under way.",
      "XX000 | something new                           | STORAGE     | failed: something new (SQLSTATE XX000)."})
  void whatTheServerSaysItself(String state, String words, Reason reason, String text) throws IOException {
    try (FakePostgres server = FakePostgres.refusing(state, words)) {
      refused(server.url(), "ida", reason, text);
    }
  }

  @Test
  void somethingElseListensThere() throws IOException {
    try (FakePostgres server = FakePostgres.saying("HTTP/1.1 400 Bad Request\r\n\r\n")) {
      refused(server.url(), "ida", Reason.STORAGE, "cannot be used: what answers there is no PostgreSQL server; correct host and port.");
    }
    try (FakePostgres server = FakePostgres.saying("")) {
      refused(server.url(), "ida", Reason.UNREACHABLE, "cannot be reached: the connection breaks off; see its log.");
    }
  }

  @Test
  void tablesOfAnotherProgram() {
    String url = bare(TestPostgres.newUrl());
    TestPostgres.executeIn(url, "CREATE TABLE project(id int)", "CREATE TABLE schema_version(version_rank int)",
        "CREATE VIEW b AS SELECT 1", "CREATE TABLE a(i int)");
    refused(url, "postgres", Reason.STORAGE, "holds tables of another program (a, b, project and 1 more); nothing was written to it;"
        + " name an empty database, or an empty schema of it.");
    assertThat(TestPostgres.rows(url, "SELECT relname::text FROM pg_class WHERE relnamespace = 'public'::regnamespace ORDER BY 1"))
        .containsExactly("a", "b", "project", "schema_version");
  }

  @Test
  void otherSchemasAndExtensionsAreNobodysBusiness() {
    String url = bare(TestPostgres.newUrl());
    TestPostgres.executeIn(url, "CREATE TABLE theirs(id int)", "CREATE SCHEMA roofs");
    PostgresAddress own = PostgresAddress.of(url + "?currentSchema=roofs,public", Optional.of("postgres"), Optional.empty());
    Store.open(folder, Optional.of(own)).close();
    assertThat(TestPostgres.rows(url, "SELECT name FROM roofs.schema_version ORDER BY version")).isEqualTo(StorageSchema.STEPS);
    assertThat(TestPostgres.rows(url, "SELECT count(*) FROM pg_class WHERE relnamespace = 'public'::regnamespace")).containsExactly("1");
    // A table beside ours later on, such as somebody's copy of one, stops nobody.
    TestPostgres.executeIn(url, "CREATE TABLE roofs.review_copy AS SELECT * FROM roofs.review");
    Store.open(folder, Optional.of(own)).close();
  }

  @Test
  void twoFirstStartsAtOnce() throws Exception {
    String url = bare(TestPostgres.newUrl());
    CyclicBarrier together = new CyclicBarrier(2);
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      List<Future<String>> outcomes = two.invokeAll(List.of(start(url, "one", together), start(url, "two", together)));
      assertThat(List.of(outcomes.get(0).get(), outcomes.get(1).get())).containsExactlyInAnyOrder("",
          "The database " + url + " is in use by another running server; stop it, or name another database or schema.");
    } finally {
      two.shutdownNow();
    }
    assertThat(TestPostgres.rows(url, "SELECT name FROM schema_version ORDER BY version")).isEqualTo(StorageSchema.STEPS);
  }

  /** Starts with the others and keeps the database until the others had their turn. */
  private Callable<String> start(String url, String name, CyclicBarrier together) {
    return () -> {
      together.await();
      try (
          Store store = Store.open(folder.resolve(name), Optional.of(PostgresAddress.of(url, Optional.of("postgres"), Optional.empty())))) {
        Thread.sleep(5000);
        return "";
      } catch (LedgerException e) {
        return e.getMessage();
      }
    };
  }

  @Test
  void whatFailsWhileItRuns() {
    String url = bare(TestPostgres.newUrl());
    try (Store store = Store.open(folder, Optional.of(PostgresAddress.of(url, Optional.of("postgres"), Optional.of(SECRET))))) {
      // A real failure of the server with the SQLSTATE of a full disk.
      TestPostgres.executeIn(url, "CREATE FUNCTION full_disk() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN"
          + " RAISE EXCEPTION 'could not extend file: No space left on device' USING ERRCODE = 'disk_full'; END $$",
          "CREATE TRIGGER full_disk BEFORE INSERT ON project FOR EACH ROW EXECUTE FUNCTION full_disk()");
      LedgerException full = catchThrowableOfType(LedgerException.class, () -> store.analyses().addProject("Boat house"));
      assertThat(full)
          .hasMessage("The database " + url + " has no room left on its disk; make room there, nothing was kept of what was under way.");
      assertThat(full.reason()).isEqualTo(Reason.FULL);
      TestPostgres.executeIn(url, "DROP TABLE project CASCADE");
      assertThatThrownBy(() -> store.analyses().projects()).hasMessage("The database " + url
          + " has other tables than this program made (relation \"project\" does not exist); restore a backup.");
    }
  }
}
