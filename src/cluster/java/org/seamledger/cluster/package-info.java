/**
 * A portfolio on an Apache Spark cluster. In a jar of its own, which {@code spark-submit} starts; the program that ships knows nothing of
 * Spark.
 *
 * <p>Input: a command line, as {@code portfolio} takes it. Output: what that command writes on one machine, to the byte, and the same
 * tables as Parquet.
 *
 * <ol>
 * <li>{@link org.seamledger.cluster.SparkCluster} makes each model a task of its own, so that a death of a machine costs one analysis.
 * <li>{@link org.seamledger.cluster.ModelTask} analyses it where the cluster says, and packs its entry.
 * <li>The entry goes to the process that began, which keeps it at once, as a run on one machine does: whatever dies then, this process
 *     itself included, no finished analysis is made again. There is no shuffle, and machines need no folder to write to in common.
 * </ol>
 */
package org.seamledger.cluster;
