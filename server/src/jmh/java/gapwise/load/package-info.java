/**
 * How fast searches and the map answer on large invented evidence bases, one user and many, beside
 * the same searches on the index alone. Run by a person, never among tests.
 *
 * <p>Start at {@link gapwise.load.LoadBenchmark}; {@link gapwise.load.SharedDatabase} has people write
 * and read at two servers that share one database.
 */
package gapwise.load;
