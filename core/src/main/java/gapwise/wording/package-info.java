/**
 * Records told in words and small drawings: missing bone, values as reported, what happened to
 * whom. Pages and figures share it, so the same number never reads two ways.
 *
 * <p>Start at {@link gapwise.wording.Defects} and {@link gapwise.wording.Values}. It words what is
 * there and decides nothing.
 */
package gapwise.wording;
