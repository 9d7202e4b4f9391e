package org.seamledger.ifc.entity;

import java.util.HashMap;
import java.util.Map;
import org.seamledger.step.InstanceLookup;
import org.seamledger.step.ReferenceVisitor;
import org.seamledger.step.StepFile;

/** An open exchange structure with its schema and units; gives instances by id and collects findings. */
public final class Model {

  private final StepFile file;
  private final String name;
  private final int index;
  private final IfcSchema schema;
  private final Units units;
  private final Findings findings;
  private final InstanceLookup instances;
  private Map<String, Long> mentioned = new HashMap<>();

  public Model(IfcInput input, int index, Findings findings) {
    this.file = input.file();
    this.name = input.name();
    this.index = index;
    this.findings = findings;
    this.instances = file.lookup();
    this.schema = IfcSchema.of(file.header().schemas(), name);
    this.units = Units.of(this);
  }

  private Model(Model other, Findings findings, InstanceLookup instances) {
    this.file = other.file;
    this.name = other.name;
    this.index = other.index;
    this.findings = findings;
    this.instances = instances;
    this.schema = other.schema;
    this.units = other.units;
  }

  /** The same model, whose findings nobody hears: for what a roof can do without. */
  public Model quiet() {
    return new Model(this, new Findings(), instances);
  }

  /** The same model with the same findings for another thread; what is mentioned there stays apart until {@link #mentionAll}. */
  public Model fork() {
    return new Model(this, findings, file.lookup());
  }

  public StepFile file() {
    return file;
  }

  public String name() {
    return name;
  }

  /** Position among the models read together, from 0. */
  public int index() {
    return index;
  }

  public IfcSchema schema() {
    return schema;
  }

  public Units units() {
    return units == null ? Units.BARE : units;
  }

  public Findings findings() {
    return findings;
  }

  /**
   * The instance with this id.
   *
   * @throws EntityProblem if there is none
   */
  public Entity get(long id) {
    return new Entity(this, instances.find(id)
        .orElseThrow(() -> EntityProblem.dangling("#" + id + " is referred to, but the file does not hold it")));
  }

  /** Notes an element that the building holds or a finding names, so that it can be described afterwards. */
  public void mention(Entity element) {
    mentioned.putIfAbsent(element.text(0), element.id());
  }

  /** Notes elements as {@link #mention} does, with their instances. */
  public void mentionAll(Map<String, Long> elements) {
    elements.forEach(mentioned::putIfAbsent);
  }

  /** Gives the elements noted and forgets them. */
  public Map<String, Long> takeMentioned() {
    Map<String, Long> taken = mentioned;
    mentioned = new HashMap<>();
    return taken;
  }

  /** Instances of the elements noted, by GlobalId; the first of several with one. */
  public Map<String, Long> mentioned() {
    return mentioned;
  }

  /** Keyword of an instance without decoding it, or the empty string where there is none. */
  public String keywordOf(long id) {
    return file.keywordOf(id);
  }

  /** Ids of all instances of exactly this class, ascending. */
  public long[] idsOf(String keyword) {
    return file.idsOf(keyword);
  }

  /** Skims the references of all instances of a class. */
  public void eachReferences(String keyword, ReferenceVisitor visitor) {
    file.forEachReferences(keyword, visitor);
  }
}
