package org.seamledger.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.graph.GraphQuery;
import org.seamledger.graph.QueryLimits;
import org.seamledger.graph.QueryRefusedException;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "query", description = "Ask the graph of a result: SELECT and ASK of SPARQL 1.1. shapes/queries has examples.")
final class QueryCommand implements Task {

  private static final long LONGEST = 1 << 18;

  @Parameters(arity = "1..*", paramLabel = "MODEL",
      description = "IFC file: .ifc, gzipped .ifc.gz, or .ifczip; or server:NAME/PROJECT[@REVISION].")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Option(names = "--sparql", paramLabel = "FILE", required = true, description = "The query.")
  private Path sparql;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "csv", description = "csv or json, as the W3C has them (default: csv).")
  private GraphQuery.AnswerForm format;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the answer to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    String query = text();
    try {
      GraphQuery.check(query, sparql.toString());
      Takeoff takeoff = settings.takeoff(models, servers, session);
      GraphQuery graph = new GraphQuery(takeoff);
      session.print(Optional.ofNullable(output), out -> graph.answer(query, sparql.toString(), format, QueryLimits.OWN, out));
      return ExitStatus.DONE;
    } catch (QueryRefusedException e) {
      throw new UsageException((e.reason() == QueryRefusedException.Reason.TOO_MUCH ? sparql + ": " : "") + e.getMessage());
    }
  }

  private String text() {
    try {
      if (Files.size(sparql) > LONGEST) {
        throw new UsageException("--sparql " + sparql + ": expected a query of at most " + LONGEST + " bytes, found more");
      }
      return Files.readString(sparql);
    } catch (NoSuchFileException e) {
      throw new UsageException("--sparql " + sparql + ": no such file");
    } catch (CharacterCodingException e) {
      throw new UsageException("--sparql " + sparql + ": expected UTF-8, found other bytes");
    } catch (IOException e) {
      throw new UsageException("--sparql " + sparql + " can't be read");
    }
  }
}
