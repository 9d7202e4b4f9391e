package org.seamledger.shacl;

import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.apache.jena.irix.IRIxResolver;
import org.apache.jena.riot.RiotException;
import org.apache.jena.riot.lang.LangTurtle;
import org.apache.jena.riot.system.ErrorHandler;
import org.apache.jena.riot.system.ParserProfileStd;
import org.apache.jena.riot.system.PrefixMapFactory;
import org.apache.jena.riot.system.RiotLib;
import org.apache.jena.riot.system.StreamRDFLib;
import org.apache.jena.riot.tokens.Tokenizer;
import org.apache.jena.riot.tokens.TokenizerText;
import org.apache.jena.sparql.util.Context;

/** Reads Turtle into a graph and notes where each triple stood. */
final class TurtleReader {

  private final Graph graph;
  private final Places places;

  TurtleReader(Graph graph, Places places) {
    this.graph = graph;
    this.places = places;
  }

  /** @throws BrokenRulesException with file, line and column */
  void read(RuleFile file) {
    ErrorHandler strict = new Strict(file.place());
    Tokenizer tokens = TokenizerText.create().fromString(file.text()).errorHandler(strict).build();
    IRIxResolver resolver = IRIxResolver.create("urn:seamledger:rules:" + file.name()).build();
    try {
      new LangTurtle(tokens, new Placing(file.place(), strict, resolver), StreamRDFLib.graph(graph)).parse();
    } catch (StackOverflowError e) {
      throw new BrokenRulesException(file.place(), tokens.getLine(), tokens.getColumn(), "brackets are nested too deeply");
    } catch (RiotException e) {
      throw new BrokenRulesException(file.place(), 0, 0, oneLine(e.getMessage()));
    }
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }

  private final class Placing extends ParserProfileStd {
    private final String file;

    Placing(String file, ErrorHandler errors, IRIxResolver resolver) {
      super(RiotLib.factoryRDF(), errors, resolver, PrefixMapFactory.create(), new Context(), true, false);
      this.file = file;
    }

    @Override
    public Triple createTriple(Node subject, Node predicate, Node object, long line, long column) {
      Triple triple = super.createTriple(subject, predicate, object, line, column);
      places.add(triple, new Places.Place(file, line, column));
      return triple;
    }
  }

  /** In rules, whatever the reader would only warn of is an error too: a bad number would otherwise never match anything. */
  private record Strict(String file) implements ErrorHandler {
    @Override
    public void warning(String message, long line, long column) {
      fatal(message, line, column);
    }

    @Override
    public void error(String message, long line, long column) {
      fatal(message, line, column);
    }

    @Override
    public void fatal(String message, long line, long column) {
      throw new BrokenRulesException(file, Math.max(line, 0), Math.max(column, 0), oneLine(message));
    }
  }
}
