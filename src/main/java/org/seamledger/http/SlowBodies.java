package org.seamledger.http;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpStream;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * Bodies of requests each hold a thread while they arrive. So that slow ones don't take them all, one client has a few under way at a time,
 * all clients together less than there are threads, and one that arrives at less than a least rate is cut off. Requests without a body,
 * such as those of the page and of health, always get through.
 */
final class SlowBodies extends Handler.Wrapper {

  /**
   * @param perClient bodies under way at once from one address
   * @param all bodies under way at once
   * @param graceSeconds before the rate is looked at
   * @param bytesPerSecond least rate, from the start of the body on
   */
  record Limits(int perClient, int all, int graceSeconds, int bytesPerSecond) {
    static final Limits STANDARD = new Limits(24, 96, 10, 1000);
  }

  private record Body(String client, long begun, AtomicLong bytes, Request request) {
  }

  private final Limits limits;
  private final Set<String> proxies;
  private final Set<Body> underWay = ConcurrentHashMap.newKeySet();
  private final Map<String, Integer> byClient = new ConcurrentHashMap<>();

  /** @param proxies addresses whose X-Forwarded-For is believed */
  SlowBodies(Limits limits, List<String> proxies) {
    this.limits = limits;
    this.proxies = Set.copyOf(proxies);
  }

  void install(Server server) {
    server.insertHandler(this);
  }

  @Override
  protected void doStart() throws Exception {
    super.doStart();
    look(getServer().getScheduler());
  }

  /** Looks at all bodies every other second, while the server runs. */
  private void look(Scheduler scheduler) {
    scheduler.schedule(() -> {
      underWay.forEach(this::judge);
      if (isRunning()) {
        look(scheduler);
      }
    }, 2, TimeUnit.SECONDS);
  }

  private void judge(Body b) {
    double seconds = (System.nanoTime() - b.begun) / 1e9;
    if (seconds > limits.graceSeconds && b.bytes.get() < seconds * limits.bytesPerSecond) {
      b.request.getConnectionMetaData().getConnection().getEndPoint().close(new TimeoutException("a body that arrives too slowly"));
    }
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    if (request.getLength() == 0 || request.getLength() < 0 && !request.getHeaders().contains(HttpHeader.TRANSFER_ENCODING)) {
      return super.handle(request, response, callback);
    }
    String client = client(request);
    int own = byClient.merge(client, 1, Integer::sum);
    Body body = new Body(client, System.nanoTime(), new AtomicLong(), request);
    underWay.add(body);
    Request.addCompletionListener(request, failure -> over(body));
    if (own > limits.perClient || underWay.size() > limits.all) {
      response.getHeaders().put(HttpHeader.RETRY_AFTER, "10");
      response.getHeaders().put(HttpHeader.CONNECTION, "close");
      Response.writeError(request, response, callback, own > limits.perClient ? 429 : 503);
      return true;
    }
    request.addHttpStreamWrapper(stream -> new Counted(stream, body));
    return super.handle(request, response, callback);
  }

  private String client(Request request) {
    String remote = Request.getRemoteAddr(request);
    String forwarded = request.getHeaders().get("X-Forwarded-For");
    return proxies.contains(remote) && forwarded != null ? forwarded.substring(forwarded.lastIndexOf(',') + 1).strip() : remote;
  }

  private void over(Body body) {
    if (underWay.remove(body)) {
      byClient.computeIfPresent(body.client, (k, n) -> n <= 1 ? null : n - 1);
    }
  }

  private final class Counted extends HttpStream.Wrapper {
    private final Body body;

    Counted(HttpStream stream, Body body) {
      super(stream);
      this.body = body;
    }

    @Override
    public Content.Chunk read() {
      Content.Chunk chunk = super.read();
      if (chunk != null) {
        body.bytes.addAndGet(chunk.remaining());
        if (chunk.isLast()) {
          // It is here: what the server makes of it is its own time.
          over(body);
        }
      }
      return chunk;
    }
  }
}
