package org.seamledger.cluster;

import java.io.Serializable;

/**
 * A model as it is sent to a machine of the cluster.
 *
 * @param place a path that every machine has, or an address in a file system that Spark knows
 * @param bytes roughly
 * @param known hash of the file that there is an entry of already, or the empty string
 */
record SparkModel(String place, String name, long bytes, String known) implements Serializable {
}
