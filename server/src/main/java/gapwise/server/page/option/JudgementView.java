package gapwise.server.page.option;

import gapwise.server.page.Site;

/**
 * One number to be judged.
 *
 * @param of what it is of, and how certain as proposed or settled
 * @param number the number in a sentence
 * @param here address of its table
 */
public record JudgementView(Site site, JudgedOutcome of, String number, String here) {}
