package org.seamledger.step;

import java.util.Optional;

/** Finds instances by their ids, and remembers those decoded lately. For one thread at a time. */
public final class InstanceLookup {

  private static final int CACHED = 4096;
  private static final int CACHED_LENGTH = 2048;

  private final StepFile file;
  private final RecordIndex records;
  private final RecordBytes reading;
  /** Instances decoded lately, each in the one place that its id allows. */
  private final Instance[] lately = new Instance[CACHED];

  InstanceLookup(StepFile file, RecordIndex records, RecordBytes reading) {
    this.file = file;
    this.records = records;
    this.reading = reading;
  }

  /**
   * The instance with an id, or empty where the file has none.
   *
   * @throws org.seamledger.finding.UnreadableModelException where it is broken
   */
  public Optional<Instance> find(long id) {
    int place = (int) (id ^ id >>> 20) & CACHED - 1;
    Instance cached = lately[place];
    if (cached != null && cached.id() == id) {
      return Optional.of(cached);
    }
    int handle = records.find(id);
    if (handle < 0) {
      return Optional.empty();
    }
    Instance instance = file.decode(handle, reading);
    if (records.endBefore(handle) - records.offset(handle) <= CACHED_LENGTH) {
      lately[place] = instance;
    }
    return Optional.of(instance);
  }
}
