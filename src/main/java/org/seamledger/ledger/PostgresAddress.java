package org.seamledger.ledger;

import java.time.Duration;
import java.util.Optional;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.postgresql.Driver;

/** Where a PostgreSQL database is and how to get in. Its text form leaves user, password and other
 * parameters out; no message has the password. */
public final class PostgresAddress {

  private static final String PREFIX = "jdbc:postgresql:";
  /** Whatever the driver has to say it throws as well; kept here, since loggers that nobody holds are forgotten. */
  private static final Logger DRIVER_LOG = Logger.getLogger("org.postgresql");

  static {
    DRIVER_LOG.setLevel(Level.OFF);
  }

  private final String url;
  private final Properties properties;
  private final Duration patience;

  private PostgresAddress(String url, Properties properties, Duration patience) {
    this.url = url;
    this.properties = properties;
    this.patience = patience;
  }

  /**
   * Reads a connection URL as the driver takes it, such as {@code jdbc:postgresql://host:5432/name?sslmode=verify-full}.
   *
   * @param user takes the place of the URL's {@code user} parameter
   * @param password takes the place of the URL's {@code password} parameter
   * @throws IllegalArgumentException where it is none, with one line for people that does not repeat it
   */
  public static PostgresAddress of(String url, Optional<String> user, Optional<String> password) {
    if (!url.startsWith(PREFIX)) {
      throw new IllegalArgumentException("a database is named by a URL that begins with " + PREFIX);
    }
    if (url.replaceFirst("\\?.*", "").contains("@")) {
      throw new IllegalArgumentException("user and password do not stand before the host of a database's URL");
    }
    Properties parsed = Driver.parseURL(url, new Properties());
    if (parsed == null) {
      throw new IllegalArgumentException("the database's URL is not of the form jdbc:postgresql://HOST:PORT/NAME?PARAMETER=VALUE&…");
    }
    user.ifPresent(u -> parsed.setProperty("user", u));
    password.ifPresent(p -> parsed.setProperty("password", p));
    // Bounds for a network that swallows everything, in seconds; and rows do not belong into messages.
    parsed.putIfAbsent("connectTimeout", "5");
    parsed.putIfAbsent("loginTimeout", "10");
    parsed.putIfAbsent("socketTimeout", "30");
    parsed.putIfAbsent("tcpKeepAlive", "true");
    parsed.putIfAbsent("ApplicationName", "seamledger");
    parsed.putIfAbsent("logServerErrorDetail", "false");
    return new PostgresAddress(url.replaceFirst("\\?.*", ""), parsed, Duration.ZERO);
  }

  /** The same database, for which a start waits this long where it isn't up yet. */
  public PostgresAddress patience(Duration longest) {
    return new PostgresAddress(url, properties, longest);
  }

  Duration patience() {
    return patience;
  }

  /** Whether a URL holds a password, which a command line shows to everybody on the machine. */
  public static boolean holdsPassword(String url) {
    return url.matches("(?is).*[?&](ssl)?password=.*");
  }

  /** Without parameters. */
  String url() {
    return url;
  }

  /** Everything else. */
  Properties properties() {
    Properties copy = new Properties();
    copy.putAll(properties);
    return copy;
  }

  @Override
  public String toString() {
    return url;
  }
}
