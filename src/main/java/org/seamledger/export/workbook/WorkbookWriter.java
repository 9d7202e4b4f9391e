package org.seamledger.export.workbook;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.order.OrderList;
import org.seamledger.order.PriceList;
import org.seamledger.order.PricedOrder;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** Writes a result as a workbook (Office Open XML). The same result gives the same bytes. */
public final class WorkbookWriter {

  /** The library states the clock's time; the file of the same result should be the same. */
  private static final String CREATED = "(<dcterms:created[^>]*>)[^<]*(</dcterms:created>)";
  private static final String NO_TIME = "1980-01-01T00:00:00Z";

  private WorkbookWriter() {
  }

  /** Writes all sheets and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, Optional<PriceList> prices, DrawingUnits units, OutputStream out) throws IOException {
    Path made = Files.createTempFile("seamledger", ".xlsx");
    try {
      try (OutputStream to = new BufferedOutputStream(Files.newOutputStream(made));
          Workbook book = new Workbook(to, Program.NAME, null)) {
        sheets(takeoff, prices, units, book);
      }
      timeless(made, out);
    } finally {
      Files.deleteIfExists(made);
    }
  }

  private static void sheets(Takeoff takeoff, Optional<PriceList> prices, DrawingUnits units, Workbook book) {
    OrderList order = OrderList.of(takeoff);
    LedgerSheets ledger = new LedgerSheets(takeoff, units);
    OrderSheets orders = new OrderSheets(order, prices.map(p -> PricedOrder.of(order, p)), ledger.places());
    new SummarySheet(book, takeoff, units).write();
    orders.order(book);
    ledger.junctions(book);
    ledger.nodes(book);
    ledger.faces(book);
    ledger.panels(book);
    ledger.findings(book);
    orders.places(book);
    ledger.assumptions(book);
  }

  /** The same package with no time in it but the first that a zip can state. */
  private static void timeless(Path made, OutputStream out) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(out);
    try (ZipFile in = new ZipFile(made.toFile())) {
      for (ZipEntry entry : Collections.list(in.entries())) {
        byte[] content = in.getInputStream(entry).readAllBytes();
        if (entry.getName().equals("docProps/core.xml")) {
          content = new String(content, StandardCharsets.UTF_8).replaceAll(CREATED, "$1" + NO_TIME + "$2").getBytes(StandardCharsets.UTF_8);
        }
        ZipEntry copy = new ZipEntry(entry.getName());
        copy.setTimeLocal(LocalDateTime.of(1980, 1, 1, 0, 0));
        zip.putNextEntry(copy);
        zip.write(content);
        zip.closeEntry();
      }
    }
    zip.finish();
    out.flush();
  }
}
