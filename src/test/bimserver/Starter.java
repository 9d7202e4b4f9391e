import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.bimserver.BimServer;
import org.bimserver.BimServerConfig;
import org.bimserver.EmbeddedWebServer;
import org.bimserver.Environment;
import org.bimserver.models.log.AccessMethod;
import org.bimserver.models.store.ServerState;
import org.bimserver.resources.JarResourceFetcher;
import org.bimserver.shared.interfaces.AdminInterface;
import org.bimserver.webservices.authorization.SystemAuthorization;
import org.eclipse.jetty.server.ServerConnector;

/**
 * Starts a BIMserver on the loopback address and on any free port. A program of its own, which Java compiles as it starts it
 * ({@code java -cp … Starter.java DIST HOME}), because the server's libraries are other versions than ours.
 *
 * <p>The first line of standard input is the password that the administrator gets where the home is new; standard output then says
 * {@code ready PORT}. The line {@code stop} ends the server in good order. When standard input ends, because whoever started this closed
 * it or is no more, the server ends at once: none is left behind.
 */
final class Starter {

  private static final String LOOPBACK = "127.0.0.1";
  private static final String USER = "admin@seamledger.test";

  private Starter() {
  }

  public static void main(String[] words) {
    try {
      run(words);
    } catch (Exception e) {
      e.printStackTrace();
      Runtime.getRuntime().halt(1);
    }
  }

  private static void run(String[] words) throws Exception {
    PrintStream answers = System.out;
    System.setOut(System.err);
    BufferedReader orders = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    String password = orders.readLine();
    // From here on a watch of its own, for starting may take a minute and may hang.
    BlockingQueue<String> stop = new ArrayBlockingQueue<>(1);
    Thread watch = new Thread(() -> endWith(orders, stop), "parent watch");
    watch.setDaemon(true);
    watch.start();

    Path dist = Path.of(words[0]).toAbsolutePath();
    Path home = Files.createDirectories(Path.of(words[1]).toAbsolutePath());
    BimServerConfig config = new BimServerConfig();
    config.setHomeDir(home);
    config.setResourceFetcher(new JarResourceFetcher(home, dist.resolve("config"), dist));
    config.setStartEmbeddedWebServer(true);
    config.setEnvironment(Environment.JAR);
    config.setPort(0);
    config.setResourceBase(dist.resolve("www").toString());
    config.setClassPath(System.getProperty("java.class.path"));
    BimServer server = new BimServer(config);
    EmbeddedWebServer web = new EmbeddedWebServer(server, config.getResourcebase(), config.isLocalDev());
    ServerConnector connector = (ServerConnector) web.getContext().getServer().getConnectors()[0];
    connector.setHost(LOOPBACK);
    server.setEmbeddedWebServer(web);
    server.start();
    String url = "http://" + LOOPBACK + ":" + connector.getLocalPort();
    if (server.getServerInfo().getServerState() == ServerState.NOT_SETUP) {
      AdminInterface admin = server.getServiceFactory().get(new SystemAuthorization(1, TimeUnit.HOURS), AccessMethod.INTERNAL)
          .get(AdminInterface.class);
      admin.setup(url, "Test server", "For tests", "", "Administrator", USER, password);
    }
    if (server.getServerInfo().getServerState() != ServerState.RUNNING) {
      throw new IllegalStateException("the server is in state " + server.getServerInfo().getServerState());
    }
    answers.println("ready " + connector.getLocalPort());
    answers.flush();
    stop.take();
    server.stop();
    Runtime.getRuntime().halt(0);
  }

  private static void endWith(BufferedReader orders, BlockingQueue<String> stop) {
    try {
      for (String order = orders.readLine(); order != null; order = orders.readLine()) {
        if (order.equals("stop")) {
          stop.offer(order);
        }
      }
    } catch (IOException e) {
      // No more orders, either.
    }
    Runtime.getRuntime().halt(0);
  }
}
