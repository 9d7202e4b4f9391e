package org.seamledger.shacl;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.jena.datatypes.TypeMapper;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.apache.jena.graph.Triple;

/**
 * The packaged rules as the build read and checked them: terms once each, then triples of their numbers with their places. To read
 * Turtle and to check shapes takes a good part of a small model's time, and gives the same each time while nobody changes the files: what
 * is stored serves only files of the very same texts.
 */
public final class StoredRules {

  private static final String NAME = "packaged-rules.bin";

  private StoredRules() {
  }

  /** What a term is, by its number in the file. */
  private enum Sort {
    IRI, BLANK, LITERAL
  }

  /**
   * Fills a graph, and the places of its triples, with what the files say.
   *
   * @param hash of the files
   * @return whether it did: not where the files are others than those of the build
   */
  static boolean read(RuleFiles files, String hash, Graph graph, Places places) {
    try (InputStream in = StoredRules.class.getResourceAsStream(NAME)) {
      return in != null && read(new DataInputStream(new BufferedInputStream(in)), files, hash, graph, places);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own " + NAME, e);
    }
  }

  private static boolean read(DataInputStream in, RuleFiles files, String hash, Graph graph, Places places) throws IOException {
    if (!in.readUTF().equals(hash)) {
      return false;
    }
    Node[] terms = new Node[in.readInt()];
    for (int i = 0; i < terms.length; i++) {
      terms[i] = term(in);
    }
    Triple[] triples = new Triple[in.readInt()];
    int[][] at = new int[triples.length][];
    for (int i = 0; i < triples.length; i++) {
      triples[i] = Triple.create(terms[in.readInt()], terms[in.readInt()], terms[in.readInt()]);
      at[i] = new int[] {in.readInt(), in.readInt(), in.readInt()};
      graph.add(triples[i]);
    }
    List<String> names = files.all().stream().map(RuleFile::place).toList();
    places.fillBy(() -> {
      for (int i = 0; i < triples.length; i++) {
        places.add(triples[i], new Places.Place(names.get(at[i][0]), at[i][1], at[i][2]));
      }
    });
    return true;
  }

  private static Node term(DataInputStream in) throws IOException {
    return switch (Sort.values()[in.readByte()]) {
      case IRI -> NodeFactory.createURI(in.readUTF());
      case BLANK -> NodeFactory.createBlankNode();
      case LITERAL -> literal(in.readUTF(), in.readUTF(), in.readUTF());
    };
  }

  private static Node literal(String form, String language, String type) {
    return language.isEmpty() ? NodeFactory.createLiteralDT(form, TypeMapper.getInstance().getSafeTypeByName(type))
        : NodeFactory.createLiteralLang(form, language);
  }

  /**
   * For the build: reads and checks the packaged rules and stores them beside the class that reads them.
   *
   * @param words the folder of the classes
   */
  public static void main(String[] words) throws IOException {
    Path file = Path.of(words[0]).resolve(StoredRules.class.getPackageName().replace('.', '/')).resolve(NAME);
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
      write(RuleFiles.packaged(), out);
    }
  }

  /** @throws BrokenRulesException where a file is wrong */
  static void write(RuleFiles files, OutputStream to) throws IOException {
    Places places = new Places();
    Rules.read(files, GraphMemFactory.createDefaultGraph(), places);
    DataOutputStream out = new DataOutputStream(to);
    out.writeUTF(files.hash());
    Map<Node, Integer> terms = new LinkedHashMap<>();
    List<int[]> triples = new ArrayList<>();
    List<String> names = files.all().stream().map(RuleFile::place).toList();
    places.forEach((t, place) -> triples.add(new int[] {number(t.getSubject(), terms), number(t.getPredicate(), terms),
        number(t.getObject(), terms), names.indexOf(place.file()), (int) place.line(), (int) place.column()}));
    out.writeInt(terms.size());
    for (Node term : terms.keySet()) {
      write(term, out);
    }
    out.writeInt(triples.size());
    for (int[] triple : triples) {
      for (int number : triple) {
        out.writeInt(number);
      }
    }
    out.flush();
  }

  private static int number(Node term, Map<Node, Integer> terms) {
    return terms.computeIfAbsent(term, t -> terms.size());
  }

  private static void write(Node term, DataOutputStream out) throws IOException {
    if (term.isBlank()) {
      out.writeByte(Sort.BLANK.ordinal());
    } else if (term.isURI()) {
      out.writeByte(Sort.IRI.ordinal());
      out.writeUTF(term.getURI());
    } else {
      out.writeByte(Sort.LITERAL.ordinal());
      out.writeUTF(term.getLiteralLexicalForm());
      out.writeUTF(term.getLiteralLanguage());
      out.writeUTF(term.getLiteralDatatypeURI());
    }
  }
}
