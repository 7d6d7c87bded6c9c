/**
 * Studies that may tell of the same patients, with the reasons, and what a person settles of them.
 * Start at {@link gapwise.server.page.overlap.OverlapsPage}.
 */
package gapwise.server.page.overlap;
