package org.seamledger.ledger;

import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.postgresql.Driver;

/** Connections for the library that hands out tickets; a few that were given back are kept for the next who asks. */
final class PostgresConnections implements DataSource, AutoCloseable {

  private static final int KEPT = 4;
  /** Who was not asked for so long (ms) is asked whether it is still there. */
  private static final long TRUSTED = 5_000;
  private static final int PATIENCE_SECONDS = 5;

  private final PostgresAddress address;
  private final Deque<Idle> idle = new ArrayDeque<>();
  private boolean closed;

  private record Idle(Connection connection, long since) {
  }

  PostgresConnections(PostgresAddress address) {
    this.address = address;
  }

  @Override
  public Connection getConnection() throws SQLException {
    for (Idle found = next(); found != null; found = next()) {
      if (System.nanoTime() / 1_000_000 - found.since < TRUSTED || found.connection.isValid(PATIENCE_SECONDS)) {
        return lent(found.connection);
      }
      found.connection.close();
    }
    return lent(new Driver().connect(address.url(), address.properties()));
  }

  private synchronized Idle next() {
    return idle.pollLast();
  }

  /** One that comes back here when it is closed. */
  private Connection lent(Connection real) {
    return (Connection) Proxy.newProxyInstance(PostgresConnections.class.getClassLoader(), new Class<?>[] {Connection.class},
        (proxy, method, values) -> {
          if (method.getName().equals("close")) {
            takeBack(real);
            return null;
          }
          try {
            return method.invoke(real, values);
          } catch (InvocationTargetException e) {
            throw e.getCause();
          }
        });
  }

  private void takeBack(Connection real) throws SQLException {
    if (!real.isClosed() && !real.getAutoCommit()) {
      real.rollback();
      real.setAutoCommit(true);
    }
    if (real.isClosed() || !isKept(real)) {
      real.close();
    }
  }

  private synchronized boolean isKept(Connection real) {
    if (closed || idle.size() >= KEPT) {
      return false;
    }
    return idle.add(new Idle(real, System.nanoTime() / 1_000_000));
  }

  @Override
  public synchronized void close() {
    closed = true;
    for (Idle i : idle) {
      try {
        i.connection.close();
      } catch (SQLException e) {
        // It is gone already.
      }
    }
    idle.clear();
  }

  @Override
  public Connection getConnection(String user, String password) throws SQLException {
    throw new SQLFeatureNotSupportedException("the address says who asks");
  }

  @Override
  public PrintWriter getLogWriter() {
    return null;
  }

  @Override
  public void setLogWriter(PrintWriter out) {
    // What fails is thrown.
  }

  @Override
  public void setLoginTimeout(int seconds) {
    // The address has one.
  }

  @Override
  public int getLoginTimeout() {
    return 0;
  }

  @Override
  public Logger getParentLogger() throws SQLFeatureNotSupportedException {
    throw new SQLFeatureNotSupportedException();
  }

  @Override
  public <T> T unwrap(Class<T> type) throws SQLException {
    throw new SQLException("no " + type.getName());
  }

  @Override
  public boolean isWrapperFor(Class<?> type) {
    return false;
  }
}
