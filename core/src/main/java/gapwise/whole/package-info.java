/**
 * A whole evidence base as a Data Package: its studies as the sheets of the template, what stands
 * beside them, and every version of every document with who, when and why; and from such a package
 * back, change by change. Drafts, papers and what else is no part of the history stay. Start at
 * {@link gapwise.whole.WholeWriter} and {@link gapwise.whole.WholePackage}.
 */
package gapwise.whole;
