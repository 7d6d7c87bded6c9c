package gapwise.analysis.result;

/**
 * How the studies of a result were read, each counted once.
 *
 * @param agreed by two who read them apart
 * @param checked by a second person
 * @param extractedOnce by one person
 * @param drafts not yet extracted as a whole
 * @param secondHand read in another paper that tells of them
 */
public record ReadCounts(int agreed, int checked, int extractedOnce, int drafts, int secondHand) {}
