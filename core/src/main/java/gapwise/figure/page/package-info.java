/**
 * A page that is one field between its words, for every figure but the forest plot and the
 * timeline, which run over sheets of their own; the strip that tells invented data, and what says
 * which of several sheets one is. A kind gives the field and its key ({@link
 * gapwise.figure.page.FieldPage}).
 */
package gapwise.figure.page;
