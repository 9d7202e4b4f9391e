package org.seamledger.shacl;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
 * The packaged rules as the build read and checked them: terms once each, then triples of their numbers, then the places of these. To read
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
      return in != null && read(ByteBuffer.wrap(in.readAllBytes()), files, hash, graph, places);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own " + NAME, e);
    }
  }

  private static boolean read(ByteBuffer in, RuleFiles files, String hash, Graph graph, Places places) {
    if (!text(in).equals(hash)) {
      return false;
    }
    Node[] terms = new Node[in.getInt()];
    for (int i = 0; i < terms.length; i++) {
      terms[i] = term(in);
    }
    Triple[] triples = new Triple[in.getInt()];
    for (int i = 0; i < triples.length; i++) {
      triples[i] = Triple.create(terms[in.getInt()], terms[in.getInt()], terms[in.getInt()]);
      graph.add(triples[i]);
    }
    List<String> names = files.all().stream().map(RuleFile::place).toList();
    places.fillBy(() -> {
      for (Triple triple : triples) {
        places.add(triple, new Places.Place(names.get(in.getInt()), in.getInt(), in.getInt()));
      }
    });
    return true;
  }

  private static String text(ByteBuffer in) {
    int length = in.getInt();
    in.position(in.position() + length);
    return new String(in.array(), in.position() - length, length, StandardCharsets.UTF_8);
  }

  private static Node term(ByteBuffer in) {
    return switch (Sort.values()[in.get()]) {
      case IRI -> NodeFactory.createURI(text(in));
      case BLANK -> NodeFactory.createBlankNode();
      case LITERAL -> literal(text(in), text(in), text(in));
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
    store(RuleFiles.packaged(), Path.of(words[0]).resolve(StoredRules.class.getPackageName().replace('.', '/')).resolve(NAME));
  }

  /** Where one of them is wrong nothing is stored, and the build goes on: the program says what is wrong when it reads them itself. */
  static void store(RuleFiles files, Path to) throws IOException {
    Files.deleteIfExists(to);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    if (write(files, out)) {
      Files.write(to, out.toByteArray());
    }
  }

  /** @return whether the files are right: only then something is written */
  static boolean write(RuleFiles files, OutputStream to) throws IOException {
    Places places = new Places();
    try {
      Rules.read(files, GraphMemFactory.createDefaultGraph(), places);
    } catch (BrokenRulesException e) {
      return false;
    }
    Map<Node, Integer> terms = new LinkedHashMap<>();
    List<int[]> triples = new ArrayList<>();
    List<int[]> written = new ArrayList<>();
    List<String> names = files.all().stream().map(RuleFile::place).toList();
    places.forEach((t, place) -> {
      triples.add(new int[] {number(t.getSubject(), terms), number(t.getPredicate(), terms), number(t.getObject(), terms)});
      written.add(new int[] {names.indexOf(place.file()), (int) place.line(), (int) place.column()});
    });
    DataOutputStream out = new DataOutputStream(to);
    write(files.hash(), out);
    out.writeInt(terms.size());
    for (Node term : terms.keySet()) {
      write(term, out);
    }
    out.writeInt(triples.size());
    triples.addAll(written);
    for (int[] three : triples) {
      for (int number : three) {
        out.writeInt(number);
      }
    }
    out.flush();
    return true;
  }

  private static void write(String text, DataOutputStream out) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    out.writeInt(bytes.length);
    out.write(bytes);
  }

  private static int number(Node term, Map<Node, Integer> terms) {
    return terms.computeIfAbsent(term, t -> terms.size());
  }

  private static void write(Node term, DataOutputStream out) throws IOException {
    if (term.isBlank()) {
      out.writeByte(Sort.BLANK.ordinal());
    } else if (term.isURI()) {
      out.writeByte(Sort.IRI.ordinal());
      write(term.getURI(), out);
    } else {
      out.writeByte(Sort.LITERAL.ordinal());
      write(term.getLiteralLexicalForm(), out);
      write(term.getLiteralLanguage(), out);
      write(term.getLiteralDatatypeURI(), out);
    }
  }
}
