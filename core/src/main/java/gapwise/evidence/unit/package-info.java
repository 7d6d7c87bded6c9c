/**
 * Amounts as papers print them: lengths, times, sums of money and dates, each in its own unit.
 * Start at {@link gapwise.evidence.unit.Unit}, which compares them. Whose amount it is does not
 * belong here.
 */
package gapwise.evidence.unit;
