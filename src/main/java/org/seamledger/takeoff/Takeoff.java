package org.seamledger.takeoff;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.seamledger.detail.Advice;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Finding;
import org.seamledger.finding.TopicAnswer;
import org.seamledger.finding.TopicId;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Modelled;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKind;
import org.seamledger.quantity.Quantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.roof.ElementCoverage;
import org.seamledger.roof.RoofFace;
import org.seamledger.roof.SurfaceLimits;
import org.seamledger.sequence.JobSequence;

/**
 * The result of one analysis. The same models, system and shapes give an equal takeoff.
 *
 * @param version of this program
 * @param shapes hash of the rules that were used
 * @param offset world coordinates of the local origin, metres: world = local + offset
 * @param tolerance how exact the models were taken to be
 * @param limits by which the roof's surface was told from slack
 * @param elements what faces, junctions and findings refer to, by GlobalId
 * @param faces in the order of their ids' numbers
 * @param detailed junctions with their kinds and details, ordered by id
 * @param joints lines within faces at which panels are divided, with their kinds and details, ordered by id; they end no face
 * @param findings the worst first
 * @param advice why a finding of the design matters and what to do, by code
 * @param kinds the kinds that lines can have, in the order in which they are listed
 * @param detailTitles what the details are called that can be chosen, by id
 * @param modelled flashings and gutters of the model along junctions, by the junction's id; no entry where there are none
 * @param coverage where the upward area of each roof element went, in the building's order
 * @param nodes where lines end and meet, ordered by id
 * @param nodeKinds the kinds that nodes can have, in the order in which they are listed
 * @param drainage where the water goes
 * @param sequence all work in its order
 * @param surroundings bodies of what is round the junctions, for pictures
 */
public record Takeoff(String version, String shapes, List<ModelInfo> models, Vec3 offset, Tolerance tolerance, SurfaceLimits limits,
    SortedMap<String, ElementLabel> elements, List<RoofFace> faces, List<DetailedJunction> detailed,
    List<DetailedJunction> joints, Quantities quantities,
    List<Finding> findings, SortedMap<String, Advice> advice, List<Kind> kinds, SortedMap<String, String> detailTitles,
    SortedMap<String, Modelled> modelled, List<ElementCoverage> coverage, List<KindedNode> nodes, List<NodeKind> nodeKinds,
    DrainageTrace drainage, JobSequence sequence, Surroundings surroundings) {

  public Takeoff {
    coverage = List.copyOf(coverage);
    nodes = nodes.stream().sorted(Comparator.comparing(KindedNode::id)).toList();
    nodeKinds = List.copyOf(nodeKinds);
    models = List.copyOf(models);
    elements = Collections.unmodifiableSortedMap(new TreeMap<>(elements));
    faces = List.copyOf(faces);
    detailed = detailed.stream().sorted(Comparator.comparing(j -> j.junction().junction().id())).toList();
    joints = joints.stream().sorted(Comparator.comparing(j -> j.junction().junction().id())).toList();
    findings = findings.stream().sorted().distinct().toList();
    advice = Collections.unmodifiableSortedMap(new TreeMap<>(advice));
    kinds = List.copyOf(kinds);
    modelled = Collections.unmodifiableSortedMap(new TreeMap<>(modelled));
    detailTitles = Collections.unmodifiableSortedMap(new TreeMap<>(detailTitles));
  }

  /** The same result, with findings accepted. */
  public Takeoff withAccepted(List<AcceptedFinding> accepted) {
    return accepted.isEmpty() ? this : withFindings(AcceptedFinding.mark(findings, accepted));
  }

  /** The same result, with what people answered where its findings were handed on. */
  public Takeoff withAnswers(List<TopicAnswer> answers) {
    return answers.isEmpty() ? this : withFindings(TopicAnswer.mark(findings, topicIds(), answers));
  }

  /** The same result, with other findings. */
  public Takeoff withFindings(List<Finding> others) {
    return new Takeoff(version, shapes, models, offset, tolerance, limits, elements, faces, detailed, joints, quantities, others, advice,
        kinds,
        detailTitles, modelled, coverage, nodes, nodeKinds, drainage, sequence, surroundings);
  }

  /** The same result with a line made otherwise: its own quantities follow, those of the project and the findings stay. For drawings. */
  Takeoff withLine(DetailedJunction line) {
    String id = line.junction().junction().id();
    return new Takeoff(version, shapes, models, offset, tolerance, limits, elements, faces,
        detailed.stream().map(j -> j.junction().junction().id().equals(id) ? line : j).toList(), joints, quantities.withLine(line),
        findings,
        advice, kinds, detailTitles, modelled, coverage, nodes, nodeKinds, drainage, sequence, surroundings);
  }

  /** What each finding is called where it is handed on, in their order. */
  public List<UUID> topicIds() {
    return TopicId.all(findings.stream().map(TopicId.Subject::of).toList(), models.stream().map(ModelInfo::file).toList());
  }

  /** The junctions with their kinds, ordered by id. */
  public List<KindedJunction> junctions() {
    return detailed.stream().map(DetailedJunction::junction).toList();
  }

  /** All lines that are counted: the junctions, then the joints within faces. */
  public List<DetailedJunction> lines() {
    return Stream.concat(detailed.stream(), joints.stream()).toList();
  }

  /** The junctions where a decision of a person is in force, ordered by id. */
  public List<DetailedJunction> decided() {
    return detailed.stream().filter(j -> j.decided().isPresent()).toList();
  }

  /** What the model holds along a junction. */
  public Modelled modelledAt(String junction) {
    return modelled.getOrDefault(junction, Modelled.NOTHING);
  }

  /** The roof system in force. */
  public RoofSystem system() {
    return quantities.system();
  }

  /** A point of the result in the model's own coordinates, metres. */
  public Vec3 world(Vec3 local) {
    return local.plus(offset);
  }

  /** Codes of the findings that concern each junction, sorted, each once; no entry where there are none. */
  public SortedMap<String, SortedSet<String>> codesByJunction() {
    SortedMap<String, SortedSet<String>> codes = new TreeMap<>();
    for (Finding f : findings) {
      f.junctions().forEach(j -> codes.computeIfAbsent(j, id -> new TreeSet<>()).add(f.code()));
    }
    return codes;
  }
}
