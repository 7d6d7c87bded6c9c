/**
 * How often each of several alternatives takes each rank, as bars whose parts add up to all. Start
 * at {@link gapwise.figure.ranks.RankShares}.
 */
package gapwise.figure.ranks;
