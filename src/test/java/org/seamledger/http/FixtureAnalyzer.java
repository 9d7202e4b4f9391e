package org.seamledger.http;

import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Inputs;
import org.seamledger.source.ModelFile;
import org.seamledger.run.Result;
import org.seamledger.run.Analyzer;
import org.seamledger.order.PriceList;
import org.seamledger.order.Subtotals;
import org.seamledger.progress.Progress;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.seamledger.finding.UnreadableModelException;

/**
 * Stands where the analysis will be: a "model" is one line of words that says which made-up result to answer, such as
 * {@code house pitch=0.5 width=14 pipe=yes} or {@code many count=20000} or {@code slow millis=5000} or {@code unreadable} or {@code fault}.
 */
final class FixtureAnalyzer implements Analyzer<Result> {

  @Override
  public Result analyze(Inputs inputs, Progress progress) throws IOException {
    String text = Files.readString(model(inputs).path(), StandardCharsets.UTF_8).strip();
    Map<String, String> words = new HashMap<>();
    for (String w : text.split("\\s+")) {
      int at = w.indexOf('=');
      words.put(at < 0 ? "what" : w.substring(0, at), w.substring(at + 1));
    }
    progress.at("reading the model", 0.1);
    wait(Integer.parseInt(words.getOrDefault("millis", "0")), progress);
    deaf(Integer.parseInt(words.getOrDefault("deaf", "0")));
    hoard("hoard".equals(words.get("what")), progress);
    byte[] out;
    switch (words.getOrDefault("what", "")) {
      case "many" -> out = json(LedgerFixtures.many(Integer.parseInt(words.get("count"))));
      case "unreadable" -> throw new UnreadableModelException(model(inputs).name(), 7, 12, "a semicolon", "the end of the file");
      case "deadly" -> {
        Runtime.getRuntime().halt(9);
        throw new AssertionError();
      }
      case "fault" -> throw new IllegalStateException("a fault with a secret in it");
      case "nonsense" -> out = "[1, 2".getBytes(StandardCharsets.UTF_8);
      default -> out = json(
          LedgerFixtures.decided(inputs.decisions(), LedgerFixtures.house(Double.parseDouble(words.getOrDefault("pitch", "0.5")),
              Double.parseDouble(words.getOrDefault("width", "14")), !"no".equals(words.get("pipe")),
              words.getOrDefault("chimney", "Chimney").replace('_', ' '),
              inputs.system().isPresent() ? Files.readString(inputs.system().get().path()) : "")));
    }
    return new FixtureResult(text, out);
  }

  /** The first of the models. */
  static ModelFile model(Inputs inputs) {
    return (ModelFile) inputs.models().get(0);
  }

  private static byte[] json(Object ledger) throws IOException {
    return LedgerFixtures.MAPPER.writeValueAsBytes(ledger);
  }

  /** Sheets that say which made-up model they are of; what looks like the id of a junction has a section. */
  private record FixtureResult(String words, byte[] ledger) implements Result {

    @Override
    public void writeLedger(OutputStream out) throws IOException {
      out.write(ledger);
    }

    @Override
    public Optional<String> plan(SheetSetup setup, int sheet) {
      return Optional.of(sheet("plan"));
    }

    @Override
    public Optional<String> profiles(SheetSetup setup, int sheet) {
      return Optional.of(sheet("profiles"));
    }

    @Override
    public String planDocument(SheetSetup setup) {
      return sheet("plan");
    }

    @Override
    public Optional<String> section(String junction, SheetSetup setup) {
      return junction.startsWith("J") && junction.length() == 8 ? Optional.of(sheet(junction)) : Optional.empty();
    }

    @Override
    public String cutList() {
      return "part\r\n" + words + "\r\n";
    }

    @Override
    public String order(Optional<PriceList> prices) {
      return "id\r\n" + words + "\r\n";
    }

    @Override
    public String subtotals(Subtotals.By by, Optional<PriceList> prices) {
      return "by\r\n" + words + "\r\n";
    }

    @Override
    public String junctions() {
      return "id\r\n" + words + "\r\n";
    }

    @Override
    public Optional<String> report() {
      return Optional.of(words + "\n");
    }

    private String sheet(String what) {
      return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 420 297\"><style>.metal { stroke: #14202b; }</style><desc>" + what
          + " " + words.replace("<", "&lt;")
          + "</desc><g class=\"cut\" data-view=\"100 60 200 120\"><polyline class=\"metal\" points=\"110,150 200,70 290,150\"/><g "
          + "class=\"pointed\"><text class=\"label\">tape</text>"
          + "<text class=\"label\">under the cleat</text><circle class=\"dot\" cx=\"200\" cy=\"70\" r=\"0.5\"/></g></g></svg>";
    }
  }

  /** Takes its time and hears nothing meanwhile. */
  private static void deaf(int millis) {
    long end = System.nanoTime() + millis * 1_000_000L;
    while (System.nanoTime() < end) {
      Thread.onSpinWait();
    }
  }

  /** Fills the memory of old things all but wholly, keeps it, and makes work for the collector until it is stopped. */
  private static void hoard(boolean asked, Progress progress) {
    List<byte[]> kept = new ArrayList<>();
    for (int i = 0; asked && i < 6000; i++) {
      boolean full = ManagementFactory.getMemoryPoolMXBeans().stream().filter(p -> p.isCollectionUsageThresholdSupported())
          .map(MemoryPoolMXBean::getUsage).anyMatch(u -> u.getMax() > 0 && u.getUsed() > 0.96 * u.getMax());
      kept.add(new byte[full ? 0 : 1 << 20]);
      wait(full ? 10 : 0, progress);
      progress.at("filling " + new byte[1 << 19].length + kept.size(), 0.5);
    }
  }

  private static void wait(int millis, Progress progress) {
    try {
      for (int i = 0; i < millis; i += 50) {
        Thread.sleep(50);
        progress.at("finding junctions", 0.1 + 0.8 * i / millis);
      }
    } catch (InterruptedException e) {
      throw new CancellationException();
    }
  }

  @Override
  public String version() {
    return "fixture";
  }
}
