package org.seamledger.graph;

import java.io.IOException;
import java.io.OutputStream;
import org.apache.jena.graph.Graph;
import org.apache.jena.riot.Lang;
import org.apache.jena.riot.RDFFormat;
import org.apache.jena.riot.RDFWriter;
import org.apache.jena.riot.system.StreamRDF;
import org.apache.jena.riot.system.StreamRDFWriter;
import org.seamledger.takeoff.Takeoff;

/** Texts of a takeoff's graph. The same takeoff gives the same text. */
public enum GraphForm {
  TURTLE {
    @Override
    public void write(Takeoff takeoff, OutputStream out) throws IOException {
      StreamRDF turtle = StreamRDFWriter.getWriterStream(out, RDFFormat.TURTLE_BLOCKS);
      turtle.start();
      TakeoffGraph.prefixes(takeoff).forEach(turtle::prefix);
      TakeoffGraph.triples(takeoff).forEach(turtle::triple);
      turtle.finish();
      out.flush();
    }
  },
  JSON_LD {
    @Override
    public void write(Takeoff takeoff, OutputStream out) throws IOException {
      Graph graph = TakeoffGraph.of(takeoff);
      RDFWriter.source(graph).lang(Lang.JSONLD11).output(out);
      out.write('\n');
      out.flush();
    }
  };

  /** Writes the graph and flushes; leaves {@code out} open. */
  public abstract void write(Takeoff takeoff, OutputStream out) throws IOException;
}
