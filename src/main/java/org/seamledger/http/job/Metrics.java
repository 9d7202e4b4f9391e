package org.seamledger.http.job;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.DoubleAdder;
import java.util.concurrent.atomic.LongAdder;

/** Counts for a monitoring system, in the Prometheus text format 0.0.4. */
public final class Metrics {

  public static final String TYPE = "text/plain; version=0.0.4; charset=utf-8";

  private final Map<String, LongAdder> requests = new ConcurrentSkipListMap<>();
  private final Map<String, LongAdder> analyses = new ConcurrentSkipListMap<>();
  private final DoubleAdder requestSeconds = new DoubleAdder();
  private final DoubleAdder analysisSeconds = new DoubleAdder();

  /** One answered request; the route is a pattern of the program, never a path that somebody typed. */
  public void request(String method, String route, int status, double seconds) {
    String labels = "method=\"" + method + "\",route=\"" + route + "\",status=\"" + status + "\"";
    requests.computeIfAbsent(labels, k -> new LongAdder()).increment();
    requestSeconds.add(seconds);
  }

  void analysis(String state, double seconds) {
    analyses.computeIfAbsent("state=\"" + state + "\"", k -> new LongAdder()).increment();
    analysisSeconds.add(seconds);
  }

  /**
   * All of them.
   *
   * @param oldest since when the oldest analysis waits that waits, in seconds; 0 where none does
   */
  public String text(Jobs jobs, double oldest, int faults, Map<String, Long> stored) {
    StringBuilder s = new StringBuilder();
    head(s, "seamledger_requests_total", "counter", "Answered requests.");
    requests.forEach((labels, n) -> line(s, "seamledger_requests_total", labels, n.sum()));
    head(s, "seamledger_request_seconds_sum", "counter", "Time spent answering.");
    line(s, "seamledger_request_seconds_sum", "", requestSeconds.sum());
    head(s, "seamledger_analyses_ended_total", "counter", "Analyses that ended since the start.");
    analyses.forEach((labels, n) -> line(s, "seamledger_analyses_ended_total", labels, n.sum()));
    head(s, "seamledger_analysis_seconds_sum", "counter", "Time spent on analyses.");
    line(s, "seamledger_analysis_seconds_sum", "", analysisSeconds.sum());
    head(s, "seamledger_analyses_running", "gauge", "Analyses at work now.");
    line(s, "seamledger_analyses_running", "", jobs.running());
    head(s, "seamledger_analyses_waiting", "gauge", "Analyses in the queue now.");
    line(s, "seamledger_analyses_waiting", "", jobs.waiting());
    head(s, "seamledger_analyses_oldest_waiting_seconds", "gauge", "Since when the oldest analysis in the queue waits.");
    line(s, "seamledger_analyses_oldest_waiting_seconds", "", oldest);
    head(s, "seamledger_workers", "gauge", "Processes that run analyses.");
    line(s, "seamledger_workers", "", jobs.workers());
    head(s, "seamledger_parts_failed", "gauge", "Parts of the service that do not work now; /api/health names them.");
    line(s, "seamledger_parts_failed", "", faults);
    head(s, "seamledger_analyses_stored", "gauge", "Analyses in storage.");
    new TreeMap<>(stored).forEach((state, n) -> line(s, "seamledger_analyses_stored", "state=\"" + state + "\"", n));
    head(s, "seamledger_heap_used_bytes", "gauge", "Java heap in use.");
    Runtime r = Runtime.getRuntime();
    line(s, "seamledger_heap_used_bytes", "", r.totalMemory() - r.freeMemory());
    return s.toString();
  }

  private static void head(StringBuilder s, String name, String type, String help) {
    s.append("# HELP ").append(name).append(' ').append(help).append("\n# TYPE ").append(name).append(' ').append(type).append('\n');
  }

  private static void line(StringBuilder s, String name, String labels, Number value) {
    s.append(name);
    if (!labels.isEmpty()) {
      s.append('{').append(labels).append('}');
    }
    s.append(' ');
    s.append(value instanceof Double d ? String.format(Locale.ROOT, "%.6f", d) : value.toString()).append('\n');
  }
}
