package org.seamledger.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.order.PriceFormatException;
import org.seamledger.order.PriceList;
import picocli.CommandLine.Option;

/** The price list that a command is told. */
final class PricesChoice {

  private static final long LONGEST = 1 << 20;

  @Option(names = "--prices", paramLabel = "FILE",
      description = "Prices for the order: comma-separated id (or a pattern such as trim:*), unit, price, labourHours, currency, note.")
  private Path prices;

  /** @throws UsageException where the list can't be used, with every mistake's place */
  Optional<PriceList> read() {
    if (prices == null) {
      return Optional.empty();
    }
    String name = String.valueOf(prices.getFileName());
    try {
      if (Files.size(prices) > LONGEST) {
        throw new UsageException(name + ": expected at most " + LONGEST + " bytes, found " + Files.size(prices));
      }
      return Optional.of(PriceList.parse(Files.readString(prices), name));
    } catch (PriceFormatException e) {
      throw new UsageException(e.getMessage());
    } catch (NoSuchFileException e) {
      throw new UsageException(name + ": no such file");
    } catch (CharacterCodingException e) {
      throw new UsageException(name + ": expected text in UTF-8, found other bytes");
    } catch (IOException e) {
      throw new UsageException(name + ": can't be read");
    }
  }
}
