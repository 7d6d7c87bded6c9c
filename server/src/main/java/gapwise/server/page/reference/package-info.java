/**
 * Files of references handed in, and what was found in them: problems by record, papers that were
 * retracted or corrected, and pairs proposed as one paper. Start at {@link
 * gapwise.server.page.reference.ReferencesPage}.
 */
package gapwise.server.page.reference;
