package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import javax.activation.DataHandler;
import javax.activation.FileDataSource;
import org.bimserver.client.BimServerClient;
import org.bimserver.client.json.JsonBimServerClientFactory;
import org.bimserver.emf.MetaDataManager;
import org.bimserver.interfaces.objects.SActionState;
import org.bimserver.interfaces.objects.SDeserializerPluginConfiguration;
import org.bimserver.interfaces.objects.SLongCheckinActionState;
import org.bimserver.interfaces.objects.SRenderEnginePluginConfiguration;
import org.bimserver.interfaces.objects.SUserType;
import org.bimserver.shared.UsernamePasswordAuthenticationInfo;
import org.junit.jupiter.api.Assumptions;

/**
 * A real BIMserver on the loopback address, as a process of its own (see {@code src/test/bimserver/Starter.java}). The build unpacks it to
 * {@code target/bimserver}. The first start there sets a home up; every later one begins with a copy of it, so that tests never see each
 * other's models. It ends with the process that started it, however that ends.
 */
public final class RealBimServer implements AutoCloseable {

  private static final Path ROOT = Path.of("target", "bimserver").toAbsolutePath();
  private static final Path PROGRAM = ROOT.resolve("program");
  private static final Path TEMPLATE = ROOT.resolve("template");
  private static final Path HOME = ROOT.resolve("home");
  private static final Path PASSWORD = ROOT.resolve("password");
  private static final Path STARTER = Path.of("src", "test", "bimserver", "Starter.java").toAbsolutePath();
  private static final String USER = "admin@seamledger.test";
  private static final int PATIENCE_SECONDS = 240;

  private static RealBimServer shared;

  private final String password;
  private final Process process;
  private final Writer orders;
  private final FileChannel lock;
  private final String url;

  private RealBimServer(Path home, String password, FileChannel lock) throws IOException {
    this.password = password;
    this.lock = lock;
    Path log = ROOT.resolve(home.getFileName() + ".log");
    this.process = new ProcessBuilder(command(home)).directory(PROGRAM.toFile()).redirectError(log.toFile()).start();
    this.orders = process.outputWriter(StandardCharsets.UTF_8);
    orders.write(password + "\n");
    orders.flush();
    this.url = "http://127.0.0.1:" + port(log);
  }

  /** No way out of this machine: a server that looks something up elsewhere fails at once, and tests see it. */
  private static List<String> command(Path home) throws IOException {
    Path user = Files.createDirectories(ROOT.resolve("user"));
    return List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx512m", "-XX:+UseSerialGC",
        "-XX:TieredStopAtLevel=1", "-Duser.home=" + user, "-Djava.io.tmpdir=" + Files.createDirectories(ROOT.resolve("tmp")),
        "-Dhttp.proxyHost=127.0.0.1", "-Dhttp.proxyPort=9", "-Dhttps.proxyHost=127.0.0.1", "-Dhttps.proxyPort=9",
        "-cp", PROGRAM + ":" + PROGRAM.resolve("lib") + "/*", STARTER.toString(), PROGRAM.toString(), home.toString());
  }

  private int port(Path log) throws IOException {
    BufferedReader answers = process.inputReader(StandardCharsets.UTF_8);
    CompletableFuture<String> ready = CompletableFuture.supplyAsync(() -> {
      try {
        return String.valueOf(answers.readLine());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    });
    try {
      String line = ready.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
      assertThat(line).as("what the server said, see %s", log).startsWith("ready ");
      return Integer.parseInt(line.substring(6));
    } catch (TimeoutException e) {
      process.destroyForcibly();
      throw new AssertionError("the server did not start in " + PATIENCE_SECONDS + " s; see " + log, e);
    } catch (InterruptedException | ExecutionException e) {
      throw new AssertionError(e);
    }
  }

  /**
   * The one that all tests of a class share, which {@link #release() release} it in the end, since another process that tests may wait for
   * it. Skips the test where the build did not unpack a server.
   */
  public static synchronized RealBimServer shared() {
    if (shared == null || !shared.process.isAlive()) {
      shared = start();
      Runtime.getRuntime().addShutdownHook(new Thread(shared::close, "stop BIMserver"));
    }
    return shared;
  }

  /** Ends the shared one, if it runs. */
  public static synchronized void release() {
    if (shared != null) {
      shared.close();
      shared = null;
    }
  }

  /** Waits for the end of any other that runs in this folder. */
  private static RealBimServer start() {
    Assumptions.assumeTrue(Files.isDirectory(PROGRAM) && Files.isDirectory(ROOT.resolve("plugins")),
        "BIMserver is not in " + ROOT + ": the build was told to do without it (-Dbimserver.skip)");
    try {
      FileChannel lock = FileChannel.open(ROOT.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      lock.lock();
      if (!Files.exists(PASSWORD)) {
        setUp();
      }
      clear(HOME);
      copy(TEMPLATE, HOME);
      return new RealBimServer(HOME, Files.readString(PASSWORD), lock);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The plug-ins remember where their home is, so it is set up in place and then put by. The password is written last: with it all is done.
   */
  private static void setUp() throws IOException {
    clear(HOME);
    clear(TEMPLATE);
    byte[] random = new byte[16];
    new SecureRandom().nextBytes(random);
    String password = HexFormat.of().formatHex(random);
    try (RealBimServer fresh = new RealBimServer(HOME, password, null)) {
      fresh.installPlugins();
      fresh.stop();
    }
    copy(HOME, TEMPLATE);
    Path file =
        Files.createFile(ROOT.resolve("password.new"), PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    Files.writeString(file, password);
    Files.move(file, PASSWORD);
  }

  private void installPlugins() throws IOException {
    withClient(client -> {
      try (Stream<Path> bundles = Files.list(ROOT.resolve("plugins"))) {
        for (Path bundle : bundles.toList()) {
          client.getPluginInterface().installPluginBundleFromFile(
              new DataHandler(new FileDataSource(bundle.toFile())), true, true);
        }
      }
      // Check-ins ask for geometry, and the native engine for it is not part of the server.
      SRenderEnginePluginConfiguration none = client.getPluginInterface().getAllRenderEngines(true).stream()
          .filter(engine -> engine.getName().toLowerCase(Locale.ROOT).startsWith("nop")).findFirst().orElseThrow();
      client.getPluginInterface().setDefaultRenderEngine(none.getOid());
      return none;
    });
  }

  /** A question to the client library as it comes, with its own transport. */
  @FunctionalInterface
  public interface Work<R> {
    R with(BimServerClient client) throws Exception;
  }

  public <R> R withClient(Work<R> work) {
    return withClient(USER, password, work);
  }

  @SuppressWarnings("try") // its close() may be interrupted, which no test does
  public <R> R withClient(String user, String secret, Work<R> work) {
    try {
      Path folder = Files.createTempDirectory("bimserver-client");
      try (JsonBimServerClientFactory factory = new JsonBimServerClientFactory(new MetaDataManager(folder), url);
          BimServerClient client = factory.create(new UsernamePasswordAuthenticationInfo(user, secret))) {
        return work.with(client);
      } finally {
        clear(folder);
      }
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  public String url() {
    return url;
  }

  public String user() {
    return USER;
  }

  public String password() {
    return password;
  }

  /** A list of servers that has this one under a name; its password stands in the file, which only its owner can read. */
  public Path list(Path folder, String name) {
    return list(folder, name, USER, password);
  }

  public Path list(Path folder, String name, String user, String secret) {
    try {
      Path file = Files.createTempFile(folder, "servers", ".properties",
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
      return Files.writeString(file, name + ".url=" + url + "\n" + name + ".user=" + user + "\n" + name + ".password=" + secret + "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Adds a project.
   *
   * @param schema {@code ifc2x3tc1} or {@code ifc4}
   * @return its number
   */
  public long addProject(String name, String schema) {
    return withClient(client -> client.getServiceInterface().addProject(name, schema).getOid());
  }

  /**
   * Checks a model in as the next revision, and waits until it is there. A model that the server can't read gives no revision, only a
   * state.
   */
  public void checkIn(long project, Path model, String comment) {
    SLongCheckinActionState state = withClient(client -> {
      SDeserializerPluginConfiguration reader = client.getServiceInterface().getSuggestedDeserializerForExtension("ifc", project);
      return client.checkinSync(project, comment, reader.getOid(), false, model);
    });
    assertThat(state.getErrors()).as("check-in of %s", model).isEmpty();
    assertThat(state.getState()).as("check-in of %s", model).isNotEqualTo(SActionState.AS_ERROR);
  }

  /** Adds a user who may do nothing but log in. */
  public void addUser(String name, String secret) {
    withClient(client -> client.getServiceInterface().addUserWithPassword(name, secret, name, SUserType.USER, false, ""));
  }

  /** Ends it as a loss of power would; the next {@link #shared()} starts another one, with none of its models. */
  public void kill() {
    process.destroyForcibly().onExit().join();
    close();
  }

  /** Ends it in good order. */
  private void stop() throws IOException {
    orders.write("stop\n");
    orders.flush();
    try {
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("the server stops").isTrue();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  @Override
  public void close() {
    try {
      orders.close();
    } catch (IOException e) {
      // It is no more.
    }
    process.destroyForcibly().onExit().join();
    try {
      if (lock != null) {
        lock.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void clear(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path path : all.toList()) {
        Files.copy(path, to.resolve(from.relativize(path).toString()));
      }
    }
  }
}
