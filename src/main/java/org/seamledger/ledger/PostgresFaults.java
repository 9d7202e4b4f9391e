package org.seamledger.ledger;

import static org.seamledger.ledger.LedgerException.Reason.FULL;
import static org.seamledger.ledger.LedgerException.Reason.READ_ONLY;
import static org.seamledger.ledger.LedgerException.Reason.STORAGE;

import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertificateException;
import java.sql.BatchUpdateException;
import java.sql.SQLException;
import java.util.Optional;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;
import org.postgresql.util.GT;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/**
 * What PostgreSQL's failures mean: by their SQLSTATE (PostgreSQL's documentation, appendix A, error codes) and, on the way to it, by what
 * the network or TLS says.
 */
final class PostgresFaults {

  private static final String CREDENTIALS = "SEAMLEDGER_DATABASE_USER, and SEAMLEDGER_DATABASE_PASSWORD or a password file";

  private final PostgresAddress address;

  PostgresFaults(PostgresAddress address) {
    this.address = address;
  }

  StorageFault of(SQLException thrown) {
    SQLException e = thrown instanceof BatchUpdateException && thrown.getNextException() != null ? thrown.getNextException() : thrown;
    String state = e.getSQLState() == null ? "" : e.getSQLState();
    return state.startsWith("08") ? ofConnection(e, state) : ofServer(e, state);
  }

  private StorageFault ofConnection(SQLException e, String state) {
    if (caused(e, UnknownHostException.class)) {
      return StorageFault.passing("cannot be reached: its host is not known; correct the host's name,"
          + " or see to the network's name service.");
    }
    if (caused(e, ConnectException.class)) {
      return StorageFault.passing("cannot be reached: the connection is refused; start PostgreSQL there, or correct host and port.");
    }
    if (caused(e, SSLException.class) || caused(e, CertificateException.class)) {
      return StorageFault.lasting(STORAGE, "cannot be used: its certificate is not trusted, or is not for"
          + " this host; see sslmode and sslrootcert in its URL.");
    }
    if (caused(e, SocketTimeoutException.class) || said(e, "Connection attempt timed out.")) {
      return StorageFault.passing("cannot be reached: no answer in time; see that the host is up and that no firewall is between.");
    }
    return switch (state) {
      case "08004" -> said(e, "The server does not support SSL.")
          ? StorageFault.lasting(STORAGE, "cannot be used: it offers no TLS, which sslmode in its URL asks for;"
              + " switch ssl on there, or ask for less.")
          : StorageFault.lasting(STORAGE, "asks user " + user() + " for a password and none is set; set " + CREDENTIALS + ".");
      case "08P01" -> StorageFault.lasting(STORAGE, "cannot be used: what answers there is no PostgreSQL server; correct host and port.");
      default -> StorageFault.passing("cannot be reached: the connection breaks off; see its log.");
    };
  }

  private StorageFault ofServer(SQLException e, String state) {
    return switch (state) {
      case "28P01" -> StorageFault.lasting(STORAGE, "refuses the password of user " + user() + "; correct " + CREDENTIALS + ".");
      case "28000" -> StorageFault.lasting(STORAGE, "does not let user " + user() + " in (" + words(e)
          + "); create the user, or admit it in pg_hba.conf.");
      case "3D000" -> StorageFault.lasting(STORAGE, "does not exist; create it, empty and with encoding UTF8, or correct its name.");
      case "42501" -> StorageFault.lasting(STORAGE, "denies user " + user() + " a right that is needed (" + words(e)
          + "); make this user its owner.");
      case "25006" -> StorageFault.lasting(READ_ONLY, PostgresEngine.READS_ONLY);
      case "53100" -> StorageFault.lasting(FULL, "has no room left on its disk; make room there, nothing was kept of what was under way.");
      case "53300" -> StorageFault.passing("has no connection free; see max_connections there, and the limits of user and database.");
      case "55000" -> StorageFault.passing("does not accept connections now; see ALLOW_CONNECTIONS there.");
      case "57P01", "57P02", "57P05", "25P03" -> StorageFault.passing("cannot be reached: it ended the connection.");
      case "57P03" -> StorageFault.passing("is starting up or shutting down.");
      case "57014", "55P03", "40P01" ->
          StorageFault.lasting(STORAGE, "did not finish a piece of work in time (" + words(e) + "); see what else works on its tables.");
      case "42P01", "42703", "42P07", "42701" ->
          StorageFault.lasting(STORAGE, "has other tables than this program made (" + words(e) + "); restore a backup.");
      default -> StorageFault.lasting(STORAGE, "failed: " + words(e) + (state.isEmpty() ? "." : " (SQLSTATE " + state + ")."));
    };
  }

  private String user() {
    return Optional.ofNullable(address.properties().getProperty("user")).orElse(System.getProperty("user.name"));
  }

  /** The server's own words without what belongs to them: place, statement and rows stay out. */
  private static String words(SQLException e) {
    ServerErrorMessage fromServer = e instanceof PSQLException p ? p.getServerErrorMessage() : null;
    String text = fromServer != null ? fromServer.getMessage() : e.getMessage();
    return text == null ? "no reason given" : text.lines().findFirst().orElse("no reason given").replaceFirst("\\.$", "");
  }

  private static boolean caused(Throwable e, Class<? extends Throwable> kind) {
    return Stream.iterate(e, t -> t != null, Throwable::getCause).limit(10).anyMatch(kind::isInstance);
  }

  /** Whether the driver said just this, in whatever language it speaks here. */
  private static boolean said(SQLException e, String words) {
    return GT.tr(words).equals(e.getMessage());
  }
}
