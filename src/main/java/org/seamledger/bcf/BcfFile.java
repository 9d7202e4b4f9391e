package org.seamledger.bcf;

import java.util.List;
import org.seamledger.finding.TopicAnswer;

/**
 * What a file holds of topics.
 *
 * @param version as {@code bcf.version} has it
 * @param topics in the order of the package
 */
public record BcfFile(String version, List<TopicAnswer> topics) {
  public BcfFile {
    topics = List.copyOf(topics);
  }
}
